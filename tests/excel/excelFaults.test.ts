import { beforeEach, describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';
import { excelHost } from '../../taskpane/host/excel/excelHost.ts';
import type { SheetHost } from '../../taskpane/host/sheetHost.ts';
import { cell, reportSheet } from '../taskpane/host/contractWorkbook.ts';
import type { ExcelRig } from './excelRig.ts';
import { startExcel, useGlobals } from './excelRig.ts';
import { PROGRAMS } from './hostWindow.ts';
import { stateOf, typeRows } from './modelState.ts';
import { addTable } from './modelTables.ts';

const FILL = { sheet: 'Fleet', headRow: 0, rows: 2, overwrite: false } as const;
const formula = '[@Volts]*2';

/** Everything that writes, each so that it touches what is there already where that is allowed. */
const WRITERS: Readonly<Record<string, (host: SheetHost) => Promise<Outcome<unknown>>>> = {
  'adding sheets': (host) => host.addSheets([reportSheet('Forecast'), reportSheet('Units of it')]),
  'replacing a sheet': (host) => host.replaceSheet(reportSheet('Settings')),
  'filling a table': (host) =>
    host.fill({
      ...{ ...FILL, as: 'tableColumn', table: 'Units', column: 2 },
      columns: [{ head: 'Double', format: 'plain', formula }],
    }),
  'overwriting values': (host) =>
    host.fill({
      ...{ ...FILL, as: 'values', column: 1, overwrite: true },
      columns: [{ head: 'Checked', format: 'money', values: [1, 2] }],
    }),
  'adding a record': (host) =>
    host.appendRow(
      'Tests',
      ['Serial', 'Day'],
      [
        { value: 'A', format: 'text' },
        { value: 46_000, format: 'date' },
      ],
    ),
};

const PLAIN = { tables: [], names: [], spans: [] };

let rig: ExcelRig;
let host: SheetHost;

async function open(program: Parameters<typeof startExcel>[1] = PROGRAMS.current): Promise<void> {
  rig = await startExcel(['Fleet', 'Settings', 'Tests'], program);
  useGlobals(rig);
  const [fleet, settings, tests] = rig.workbook.sheets;
  typeRows(fleet!, [
    ['Serial', 'Volts'],
    ['0514', 12.6],
    ['=1+1', 12.4],
  ]);
  addTable(rig.workbook, fleet!, { row: 0, column: 0, rows: 3, columns: 2 }).name = 'Units';
  typeRows(settings!, [
    ['years', 5],
    ['costs', 100],
  ]);
  settings!.formulas.set('1,1', '=50*2');
  typeRows(tests!, [['Serial'], ['T1']]);
  addTable(rig.workbook, tests!, { row: 0, column: 0, rows: 2, columns: 1 }).name = 'TestRecords';
  // Not where the program goes by itself when a sheet is deleted.
  rig.workbook.active = tests!;
  rig.resetTraffic();
  host = excelHost();
}

beforeEach(() => open());

/** How many syncs a writer takes when nothing goes wrong. */
async function syncsOf(write: (host: SheetHost) => Promise<Outcome<unknown>>): Promise<number> {
  expect(await write(host)).toMatchObject({ ok: true });
  return rig.traffic.syncs;
}

const sentence = (outcome: Outcome<unknown>): string => (outcome.ok ? 'done' : problemText(outcome.problem));

describe.each(Object.entries(WRITERS))('%s', (_, write) => {
  it.each([false, true])(
    'leaves the workbook as it was wherever the connection is lost (done all the same: %s)',
    async (isDoneAllTheSame) => {
      const syncs = await syncsOf(write);
      for (let lostAt = 1; lostAt <= syncs; lostAt += 1) {
        await open();
        const before = stateOf(rig.workbook);
        Object.assign(rig.faults, { lostAt, isDoneAllTheSame });
        expect(sentence(await write(host))).toContain('connection to Excel was lost');
        expect([lostAt, stateOf(rig.workbook)]).toEqual([lostAt, before]);
        expect(rig.traffic.notModelled).toEqual([]);
      }
    },
  );

  it('says what may be left behind where the connection stays away', async () => {
    const syncs = await syncsOf(write);
    await open();
    Object.assign(rig.faults, { lostAt: syncs - 1, lostFor: 100 });
    expect(sentence(await write(host))).toMatch(/could not be taken back: look at/);
  });

  it('is refused, and nothing is changed, where the sheet or the workbook is protected', async () => {
    for (const sheet of rig.workbook.sheets) sheet.isProtected = true;
    rig.workbook.isProtected = true;
    const before = stateOf(rig.workbook);
    expect(sentence(await write(host))).toMatch(/protected.*(take the protection off|save a copy)/);
    expect(stateOf(rig.workbook)).toEqual(before);
  });

  it('waits while a cell is being edited', async () => {
    rig.faults.isEditing = true;
    const written = write(host);
    setTimeout(() => rig.userEndsEdit(), 30);
    expect(sentence(await written)).toBe('done');
  });

  it('works in the volume-licensed program of 2021, and is refused by one that is too old', async () => {
    await open(PROGRAMS.ltsc2021);
    expect(sentence(await write(host))).toBe('done');
    await open(PROGRAMS.tooOld);
    const before = stateOf(rig.workbook);
    expect(sentence(await write(host))).toMatch(/too old.*update Excel/);
    expect(stateOf(rig.workbook)).toEqual(before);
  });
});

describe('a program that takes less at once than it should', () => {
  const values = Array.from({ length: 20_000 }, (_, index) => `S${index}`);

  it.each<[string, () => Promise<Outcome<unknown>>]>([
    [
      'adding sheets',
      () => host.addSheets([reportSheet('Long', { rows: values.map((value) => [cell(value)]), ...PLAIN })]),
    ],
    [
      'filling columns',
      () =>
        host.fill({
          ...{ ...FILL, rows: values.length, as: 'values', column: 5 },
          columns: [{ head: 'Checked', format: 'text', values }],
        }),
    ],
  ])('%s is refused with what to do, and nothing is changed', async (_, write) => {
    rig.faults.mostBytes = 100_000;
    const before = stateOf(rig.workbook);
    expect(sentence(await write())).toContain('choose fewer rows');
    expect(stateOf(rig.workbook)).toEqual(before);
  });
});
