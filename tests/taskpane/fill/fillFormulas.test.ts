import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dayFrom } from '../../../src/basics/calendar.ts';
import type { Field } from '../../../src/inventory/fields.ts';
import { settingsFrom } from '../../../src/inventory/settings.ts';
import type { FillAnswer } from '../../../taskpane/computing/fillAnswer.ts';
import { fillAnswer } from '../../../taskpane/computing/fillAnswer.ts';
import type { Memory } from '../../../taskpane/computing/memory.ts';
import { readAnswer } from '../../../taskpane/computing/readAnswer.ts';
import { expressionFor } from '../../../taskpane/fill/expressions.ts';
import { FILL_KEYS } from '../../../taskpane/fill/columns.ts';
import type { ColumnsAt, FillPlace } from '../../../taskpane/fill/formulas.ts';
import { placedFormula, spilledCells, tableCells } from '../../../taskpane/fill/formulas.ts';
import type { HeadlessWorkbook } from '../../../taskpane/host/workbook/headlessWorkbook.ts';
import { startHeadless, stopHeadless } from '../../../taskpane/host/workbook/headlessWorkbook.ts';
import { evaluateFormulas } from '../../../taskpane/host/workbook/formulas.ts';
import { sheetOf } from '../../functions/askedSheet.ts';

const day = (text: string): number => {
  const read = dayFrom(text, 'day');
  if (!read.ok) throw new Error(text);
  return read.value;
};
const asOf = day('2026-06-30');

const HEADS = [
  ...['Serial', 'Type', 'Maker', 'Code', 'Site', 'Installed', 'Removed', 'Reason'],
  ...['OCV', 'Temp (F)', 'CCA read', 'Least [A]', 'Tested', 'Charged', 'Status'],
];
const date = (text: string): number | null => (text === '' ? null : day(text));
const status = (installed: string, removed: string): string =>
  removed !== '' ? 'removed' : installed === '' ? 'in stock' : 'in service';
/** Serial, type, maker, code, site, installed, removed, volts, Fahrenheit, reading, tested, charged. */
const row = (text: string): (string | number | null)[] => {
  const [serial, type, maker, code, site, installed, removed, volts, heat, reading, tested, charged] = text
    .split('|')
    .map((word) => word.trim());
  const number = (word: string): number | null => (word === '' ? null : Number(word));
  return [
    ...[
      serial!,
      type!,
      maker!,
      code!,
      site!,
      date(installed!),
      date(removed!),
      removed === '' ? null : 'failed',
    ],
    ...[
      number(volts!),
      number(heat!),
      number(reading!),
      900,
      date(tested!),
      date(charged!),
      status(installed!, removed!),
    ],
  ];
};
const ROWS = [
  'N1|6T AGM|9ZZ98|2403-17|Kaldmoor|2024-05-01||12.8|60|1100|2026-05-04|',
  'N2|6T AGM|9ZZ98|2440-2|Kaldmoor|2024-12-03||12.4|20|700|2026-05-04|',
  'N3|6T wet|8ZZ11|0324-5|Isvarg|2024-04-01|2025-06-01|12.6|40|1000|2025-05-30|',
  'N4|6T wet|8ZZ11|0525-6|Isvarg|2025-07-09||12.5|50|950|2026-06-01|',
  'N5|6T AGM|9ZZ98|2430-7|Isvarg||||50|||2026-03-02',
  'N6|6T wet|8ZZ11|1125-1|Kaldmoor||||50|||2026-04-20',
  'N7|6T AGM|9ZZ98|junk|Kaldmoor|2024-02-01||12.8|60|1100|2024-05-04|',
].map(row);

const settings = settingsFrom({
  layouts: { '9ZZ98': 'kkWW-lot', '8ZZ11': 'MMyy-lot' },
  recordsSince: '2022-01-01',
  sites: { Kaldmoor: { average: 21 }, Isvarg: { average: -2 } },
});

function readMemory(): Memory {
  if (!settings.ok) throw new Error(JSON.stringify(settings.problem));
  const memory: Memory = {};
  const dates = new Set(ROWS.map((_, index) => index + 1));
  const reading = readAnswer(memory, {
    sheet: {
      ...{
        name: 'Fleet',
        rows: [HEADS, ...ROWS],
        firstRow: 1,
        firstColumn: 1,
        from1904: false,
        fromText: false,
      },
      dateCells: new Map([5, 6, 12, 13].map((column) => [column, dates])),
      hiddenRows: new Set<number>(),
    },
    asOf,
    settings: settings.value,
  });
  if (!reading.ok) throw new Error(reading.problem.because);
  return memory;
}

function fill(memory: Memory, live: FillPlace | undefined, problems: 'why' | 'error' = 'why'): FillAnswer {
  const filled = fillAnswer(memory, { keys: FILL_KEYS, live, problems });
  if (!filled.ok) throw new Error(filled.problem.because);
  return filled.value;
}

const memory = readMemory();
const fields = memory.inventory!.parts.columns.flatMap(({ field, column }) =>
  field === undefined ? [] : [[field, column] as const],
);
const at: ColumnsAt = {
  columns: Object.fromEntries(fields) as Partial<Record<Field, number>>,
  firstRow: 1,
  rows: ROWS.length,
};
const heads = new Map(HEADS.map((head, column) => [column, head]));
const PLACES: Readonly<Record<string, FillPlace>> = {
  'one spilled cell': { asOf: 'DATE(2026,6,30)', cells: spilledCells(at) },
  'a table': { asOf: 'CrankAsOf', cells: tableCells(at, heads, false) },
};

/** A table's formula for all its rows at once. */
const forWholeTable = (formula: string): string =>
  formula.replace(/\[@\[([^[\]]*)\]\]/g, 'Units[$1]').replace(/INDEX\(([^,]*),ROW\(\)-1\)/g, '$1');

let workbook: HeadlessWorkbook;
beforeAll(() => {
  workbook = startHeadless();
});
afterAll(() => stopHeadless(workbook));

const range = { startRow: 0, startColumn: 0, endRow: ROWS.length, endColumn: HEADS.length - 1 };
const TABLE = { name: 'Units', range, heads: HEADS, totalRow: false };

async function answersOf(place: FillPlace, problems: 'why' | 'error' = 'why') {
  const { columns } = fill(memory, place, problems);
  const formulas = columns.flatMap(({ formula }) => formula ?? []).map((text) => `=${forWholeTable(text)}`);
  const sheets = [sheetOf('Fleet', [HEADS, ...ROWS], [TABLE])];
  const names = [{ name: 'CrankAsOf', refersTo: 'Settings!$B$2' }];
  const settingsRows = sheetOf('Settings', [['key'], ['asOf', asOf]]);
  return evaluateFormulas(workbook, [...sheets, settingsRows], 'Fleet', formulas, names);
}

describe.each(Object.entries(PLACES))('live formulas in %s', (_, place) => {
  it('give what the inventory itself knows, row by row', async () => {
    const live = await answersOf(place);
    const { columns } = fill(memory, undefined);
    expect(live).toHaveLength(FILL_KEYS.length);
    FILL_KEYS.forEach((key, index) => {
      const values = columns[index]!.values!;
      const answers = (live[index] as unknown[][]).map(([cell]) => (cell === '' ? null : cell));
      values.forEach((value, line) => {
        const given = answers[line];
        const name = `${key} of ${ROWS[line]![0]}`;
        if (typeof value === 'number') expect(given, name).toBeCloseTo(value, 9);
        else expect(given, name).toBe(value);
      });
    });
  });

  it('show their errors where that is asked for, and no column of reasons', async () => {
    const made = (await answersOf(place, 'error'))[0] as unknown as { error: string }[][];
    expect(made[6]![0]).toMatchObject({ error: '#VALUE!' });
    expect(fill(memory, place, 'error').columns).toHaveLength(FILL_KEYS.length);
  });
});

describe('a row without an answer', () => {
  const why = (answer: FillAnswer): string => String(answer.columns.at(-1)!.values![6]);

  it('says why, beside values and beside live formulas', () => {
    expect(why(fill(memory, undefined))).toContain('Date made: unreadable code (junk)');
    expect(why(fill(memory, undefined))).toContain('State of charge: test too old to count');
    expect(why(fill(memory, PLACES['one spilled cell']))).toMatch(/^Date made: .*junk/);
  });

  it('or holds an error with the same sentence', () => {
    const [made] = fill(memory, undefined, 'error').columns;
    expect(made!.values![6]).toEqual({ error: '#N/A', message: 'Date made: unreadable code (junk)' });
  });

  it('is no fault where the battery has nothing to tell: stock has no months in service', () => {
    const answer = fill(memory, undefined);
    expect(String(answer.columns.at(-1)!.values![4])).not.toContain('Months in service');
  });
});

describe('makers that share a layout', () => {
  it('are asked for together, so that each layout is read once', () => {
    const layouts = { a: 'MMyy-lot', b: 'yyMM-lot', c: 'MMyy-lot', d: 'yyMM-lot', e: 'MMyy-lot' };
    const facts = { columns: { code: 'Code', maker: 'Maker' }, layouts, constructions: [], life: undefined };
    if (!settings.ok) throw new Error('refused');
    const expression = expressionFor('lot', { ...facts, settings: settings.value })!;
    const cells = { code: 'D2', maker: 'C2' };
    expect(placedFormula(expression, { asOf: 'B1', cells }, 'error')).toBe(
      'IF((C2="b")+(C2="d"),CRANK.LOTNUMBER(D2,"yyMM-lot"),CRANK.LOTNUMBER(D2))',
    );
  });
});

describe('a head in a table', () => {
  it('is written so that spreadsheets read it as it stands', () => {
    const cells = tableCells(at, heads, true);
    expect([cells.serial, cells.least, cells.temperature]).toEqual([
      '[@[Serial]]',
      "[@[Least '[A']]]",
      '[@[Temp (F)]]',
    ]);
    expect(tableCells(at, heads, false).least).toBe('INDEX($L$2:$L$8,ROW()-1)');
  });
});
