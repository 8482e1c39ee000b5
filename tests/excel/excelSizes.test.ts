import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { forecastSheets } from '../../src/report/forecastSheets.ts';
import type { Sheet, SheetCell } from '../../src/report/sheet.ts';
import { excelHost } from '../../taskpane/host/excel/excelHost.ts';
import type { SheetHost } from '../../taskpane/host/sheetHost.ts';
import { fleetWithGaps, PRICED, reportFacts } from '../report/reportFacts.ts';
import { cell, followed, valueOf } from '../taskpane/host/contractWorkbook.ts';
import type { ExcelRig } from './excelRig.ts';
import { startExcel, useGlobals } from './excelRig.ts';
import { typeRows } from './modelState.ts';

const MOST_BYTES = 2_000_000;
const HEADS = Array.from({ length: 12 }, (_, column) => `Column ${column + 1}`);

let rig: ExcelRig;
let host: SheetHost;

beforeEach(async () => {
  rig = await startExcel(['Fleet']);
  useGlobals(rig);
  host = excelHost();
});

/** A sheet as large as a fleet's inventory: codes, readings, dates. */
function inventory(name: string, rows: number): Sheet {
  const row = (index: number): SheetCell[] =>
    HEADS.map((_, column) =>
      column % 3 === 0
        ? cell(`6140-99-000-${1_000 + (index % 9_000)}`, { format: 'text' })
        : column % 3 === 1
          ? cell(11 + (index % 200) / 100, { format: 'thousandths' })
          : cell(45_000 + (index % 900), { format: 'date' }),
    );
  return {
    name,
    rows: [
      HEADS.map((head) => cell(head, { meaning: 'columnHead', format: 'text' })),
      ...Array.from({ length: rows }, (_, index) => row(index)),
    ],
    widths: HEADS.map(() => 14),
    frozenRows: 1,
    tables: [{ name: 'Inventory', row: 0, column: 0, rows, heads: HEADS }],
    ...{ names: [], charts: [], pageBreaks: [], spans: [] },
  };
}

async function added(sheet: Sheet): Promise<{ syncs: number; largest: number; bytes: number }> {
  rig.resetTraffic();
  const work = followed();
  valueOf(await host.addSheets([sheet], work));
  expect([work.shares.at(-1), [...work.shares].sort((a, b) => a - b)]).toEqual([1, work.shares]);
  expect(rig.traffic.notModelled).toEqual([]);
  const { syncs, requestBytes } = rig.traffic;
  return { syncs, largest: Math.max(...requestBytes), bytes: requestBytes.reduce((a, b) => a + b, 0) };
}

describe('large inventories', () => {
  it('go over in requests of at most 2 MB, whose number grows with the bytes only', async () => {
    const [small, large] = [
      await added(inventory('Small', 10_000)),
      await added(inventory('Large', 100_000)),
    ];
    expect([small.largest, large.largest]).toEqual([expect.any(Number), expect.any(Number)]);
    expect(Math.max(small.largest, large.largest)).toBeLessThanOrEqual(MOST_BYTES);
    const beside = (each: typeof small): number => each.syncs - Math.ceil(each.bytes / 1_700_000);
    expect(beside(large)).toBeLessThanOrEqual(beside(small));
    expect(large.syncs).toBeLessThanOrEqual(14);
    const block = { row: 0, column: 0, rows: 100_001, columns: 12 };
    const { rows, dateCells } = valueOf(await host.readBlock({ sheet: 'Large', block }));
    expect([rows.length, rows[100_000]![0], rows[100_000]![2]]).toEqual([
      100_001,
      '6140-99-000-1999',
      45_099,
    ]);
    expect([dateCells.size, dateCells.get(2)!.size]).toEqual([4, 100_000]);
    expect(Math.max(...rig.traffic.answerBytes)).toBeLessThan(5_000_000);
  });

  it('take new columns in a table of 20,000 rows in a handful of syncs', async () => {
    await added(inventory('Fleet (2)', 20_000));
    rig.resetTraffic();
    const columns = [{ head: 'Double', format: 'plain', formula: '[@[Column 2]]*2' }] as const;
    const fill = {
      sheet: 'Fleet (2)',
      table: 'Inventory',
      as: 'tableColumn',
      headRow: 0,
      rows: 20_000,
    } as const;
    valueOf(await host.fill({ ...fill, column: 12, columns, overwrite: false }));
    expect(rig.traffic.syncs).toBeLessThanOrEqual(7);
    expect(Math.max(...rig.traffic.requestBytes)).toBeLessThan(10_000);
  });
});

describe('long texts', () => {
  it('are read in smaller pieces where an answer would be too large', async () => {
    const [sheet] = rig.workbook.sheets;
    const long = 'a note that somebody wrote '.repeat(40);
    typeRows(
      sheet!,
      Array.from({ length: 12_000 }, (_, row) => [row, long]),
    );
    const block = { row: 0, column: 0, rows: 12_000, columns: 2 };
    const { rows } = valueOf(await host.readBlock({ sheet: 'Fleet', block }));
    expect([rows.length, rows[0], rows[11_999]]).toEqual([12_000, [0, long], [11_999, long]]);
  });
});

describe('a forecast of a whole fleet', () => {
  let sheets: readonly Sheet[];
  beforeAll(() => {
    sheets = forecastSheets(reportFacts(PRICED, fleetWithGaps()), ['Fleet']);
  });

  it('is written in at most 12 syncs', async () => {
    rig.resetTraffic();
    valueOf(await host.addSheets(sheets));
    expect(rig.traffic.notModelled).toEqual([]);
    expect(rig.traffic.syncs).toBeLessThanOrEqual(12);
    expect(Math.max(...rig.traffic.requestBytes)).toBeLessThanOrEqual(MOST_BYTES);
  });

  it('arrives whole: every value, table, chart, name and width', async () => {
    valueOf(await host.addSheets(sheets));
    for (const sheet of sheets) {
      const model = rig.workbook.sheets.find(({ name }) => name === sheet.name)!;
      const wrong = sheet.rows.flatMap((row, r) =>
        row.flatMap((each, c) => {
          const expected = each === null || each.value === '' ? undefined : (each.value ?? undefined);
          const isSame =
            each?.formula !== undefined ? model.formulas.has(`${r},${c}`) : model.cells[r]?.[c] === expected;
          return isSame ? [] : [[r, c, expected, model.cells[r]?.[c]]];
        }),
      );
      expect(wrong).toEqual([]);
      expect(model.tables.map(({ heads }) => heads)).toEqual(sheet.tables.map(({ heads }) => [...heads]));
      expect(model.charts.map(({ series }) => series.map(({ values }) => values))).toEqual(
        sheet.charts.map(({ series }) => series.map(({ values }) => values)),
      );
      expect(model.names.map(({ name }) => name)).toEqual(sheet.names.map(({ name }) => name));
      expect([model.frozenRows, model.merges.length]).toEqual([sheet.frozenRows, sheet.spans.length]);
    }
  });
});
