import { beforeEach, describe, expect, it } from 'vitest';
import { openXlsx } from 'hucre/xlsx';
import { problemText } from '../../src/basics/problemText.ts';
import { excelHost } from '../../taskpane/host/excel/excelHost.ts';
import type { SheetBlock, SheetHost } from '../../taskpane/host/sheetHost.ts';
import { becauseOf, reportSheet, valueOf } from '../taskpane/host/contractWorkbook.ts';
import { calculate } from './cellEntry.ts';
import type { ExcelRig } from './excelRig.ts';
import { startExcel, useGlobals } from './excelRig.ts';
import { PROGRAMS } from './hostWindow.ts';
import { typeRows } from './modelState.ts';
import { addTable } from './modelTables.ts';
import type { ModelSheet } from './workbookModel.ts';
import { ErrorValue } from './workbookModel.ts';

let rig: ExcelRig;
let host: SheetHost;
let fleet: ModelSheet;

async function open(program: Parameters<typeof startExcel>[1] = PROGRAMS.current): Promise<void> {
  rig = await startExcel(['Fleet', 'Other'], program);
  useGlobals(rig);
  host = excelHost();
  fleet = rig.workbook.sheets[0]!;
}

beforeEach(() => open());

const block = (rows: number, columns: number): SheetBlock['block'] => ({ row: 0, column: 0, rows, columns });
const one = (row: number, column: number): SheetBlock['block'] => ({ row, column, rows: 1, columns: 1 });

describe('dates', () => {
  it('of a workbook that counts from 1904 arrive counted from 1900, numbers as they are', async () => {
    rig.workbook.dates1904 = true;
    typeRows(fleet, [[43_538, 43_538]]);
    fleet.looks.push({ block: one(0, 0), property: 'numberFormat', value: 'dd.mm.yyyy' });
    expect(valueOf(await host.workbook()).dates1904).toBe(true);
    const { rows } = valueOf(await host.readBlock({ sheet: 'Fleet', block: block(1, 2) }));
    expect(rows).toEqual([[45_000, 43_538]]);
  });

  it('are written into such a workbook in its own way, and live formulas are refused', async () => {
    rig.workbook.dates1904 = true;
    const at = { sheet: 'Fleet', headRow: 0, rows: 1, column: 0, overwrite: false } as const;
    const columns = [{ head: 'Day', format: 'date', values: [45_000] }] as const;
    valueOf(await host.fill({ ...at, as: 'values', columns }));
    valueOf(await host.addSheets([reportSheet('Forecast')]));
    valueOf(await host.appendRow('Tests', ['Day'], [{ value: 45_000, format: 'date' }]));
    const [forecast, tests] = rig.workbook.sheets.slice(2);
    expect([fleet.cells[1]![0], forecast!.cells[4]![0], tests!.cells[1]![0]]).toEqual([
      43_538, 43_538, 43_538,
    ]);
    const { rows } = valueOf(await host.readBlock({ sheet: 'Forecast', block: block(5, 1) }));
    expect(rows[4]).toEqual([45_000]);
    const live = [{ head: 'Due', format: 'date', formula: 'A2+30' }] as const;
    const refused = host.fill({ ...at, column: 3, as: 'spill', columns: live });
    expect(becauseOf(await refused)).toBe('formulasIn1904');
  });
});

describe('cells', () => {
  it('with an error are told from texts that look like one', async () => {
    fleet.cells[0] = [new ErrorValue('#N/A'), '#N/A'];
    const { rows } = valueOf(await host.readBlock({ sheet: 'Fleet', block: block(1, 2) }));
    expect(rows).toEqual([[{ error: '#N/A', message: '' }, '#N/A']]);
  });

  it('of rows that are all hidden are read, and the rows known as hidden', async () => {
    typeRows(fleet, [['a'], ['b'], ['c']]);
    [0, 1, 2].forEach((row) => fleet.hiddenRows.add(row));
    const { rows, hiddenRows } = valueOf(await host.readBlock({ sheet: 'Fleet', block: block(3, 1) }));
    expect([rows.length, [...hiddenRows]]).toEqual([3, [0, 1, 2]]);
  });
});

describe('places', () => {
  it('are no place where a chart is selected, and hidden sheets are not shown', async () => {
    rig.userSelects('Other', undefined);
    expect(valueOf(await host.workbook()).selected).toBeUndefined();
    fleet.visibility = 'Hidden';
    expect(becauseOf(await host.select({ sheet: 'Fleet', block: one(0, 0) }))).toBe('sheetHidden');
    expect(valueOf(await host.workbook()).sheets.map(({ hidden }) => hidden)).toEqual([true, false]);
  });

  it('are told once each, whichever way the user came there, until the listening ends', async () => {
    const told: SheetBlock[] = [];
    const end = host.onSelect((at) => told.push(at));
    const settle = (): Promise<void> => new Promise((done) => setTimeout(done, 60));
    await settle();
    rig.userSelects('Other', one(4, 2));
    await settle();
    rig.userSelects('Other', undefined);
    await settle();
    expect(told).toEqual([{ sheet: 'Other', block: one(4, 2) }]);
    end();
    await settle();
    rig.userSelects('Fleet', one(1, 1));
    await settle();
    expect(told).toHaveLength(1);
  });
});

describe('repairing formulas', () => {
  const broken = [
    '=_xldudf_CRANK_STATEOFCHARGE(A1,25)',
    "='C:\\Add-ins\\other.xlam'!_xldudf_CRANK_STATEOFCHARGE(A2,25)",
    '=SUM([2]!_xldudf_CRANK_STATEOFCHARGE(A3,25),1)',
    '=CRANK.STATEOFCHARGE(A4,25)',
    '=SUM(A1:A4)',
  ];

  it('writes ours anew where Excel does not know them, and nothing else', async () => {
    typeRows(fleet, [[12.6], [12.5], [12.4], [12.3], [0]]);
    rig.workbook.knowsOurFunctions = false;
    broken.forEach((formula, row) => fleet.formulas.set(`${row},1`, formula));
    calculate(rig.workbook);
    rig.workbook.knowsOurFunctions = true;
    expect(valueOf(await host.repairFormulas())).toBe(4);
    expect([0, 1, 2, 3, 4].map((row) => fleet.formulas.get(`${row},1`))).toEqual([
      '=CRANK.STATEOFCHARGE(A1,25)',
      '=CRANK.STATEOFCHARGE(A2,25)',
      '=SUM(CRANK.STATEOFCHARGE(A3,25),1)',
      '=CRANK.STATEOFCHARGE(A4,25)',
      '=SUM(A1:A4)',
    ]);
    expect(valueOf(await host.repairFormulas())).toBe(0);
  });

  it.each(['A1', '$A1', 'A$1', 'SUM(A1:A4)'])(
    'leaves references where they point in equal formulas under each other: %s',
    async (reference) => {
      typeRows(fleet, [[12.6], [12.5], [12.4], [12.3]]);
      const formula = `=CRANK.STATEOFCHARGE(${reference},25)`;
      for (const row of [0, 1, 2]) {
        fleet.formulas.set(`${row},1`, formula);
        fleet.cells[row]![1] = new ErrorValue('#NAME?');
      }
      expect(valueOf(await host.repairFormulas())).toBe(3);
      expect([0, 1, 2].map((row) => fleet.formulas.get(`${row},1`))).toEqual([formula, formula, formula]);
    },
  );

  it('refuses where a protected sheet holds one, and leaves the others', async () => {
    fleet.formulas.set('0,0', broken[0]!);
    fleet.cells[0] = [new ErrorValue('#NAME?')];
    fleet.isProtected = true;
    expect(becauseOf(await host.repairFormulas())).toBe('sheetProtected');
    expect(fleet.formulas.get('0,0')).toBe(broken[0]);
  });
});

describe('workbooks of their own', () => {
  it('open with the sheets in them', async () => {
    valueOf(await host.newWorkbook('forecast.xlsx', [reportSheet('Forecast')]));
    const bytes = Buffer.from(rig.workbook.opened[0]!, 'base64');
    const { sheets } = await openXlsx(new Uint8Array(bytes));
    expect([sheets.map(({ name }) => name), sheets[0]!.rows[0]![0]]).toEqual([['Forecast'], 'Forecast']);
  });

  it('are not made of what is open: the user is told how to copy it', async () => {
    const outcome = await host.workInCopy();
    expect(outcome.ok ? '' : problemText(outcome.problem)).toContain('Save a Copy');
  });
});

describe('tables', () => {
  beforeEach(() => {
    typeRows(fleet, [
      ['Serial', 'Volts'],
      ['A', 12.6],
    ]);
    addTable(rig.workbook, fleet, block(2, 2)).name = 'Units';
  });

  it('get their columns in programs that cannot make a table larger', async () => {
    await open({ ...PROGRAMS.current, ExcelApi: '1.12' });
    typeRows(fleet, [
      ['Serial', 'Volts'],
      ['A', 12.6],
    ]);
    addTable(rig.workbook, fleet, block(2, 2)).name = 'Units';
    const columns = [{ head: 'Double', format: 'plain', formula: '[@Volts]*2' }] as const;
    const fill = {
      sheet: 'Fleet',
      table: 'Units',
      as: 'tableColumn',
      headRow: 0,
      rows: 1,
      column: 2,
    } as const;
    valueOf(await host.fill({ ...fill, columns, overwrite: false }));
    expect(fleet.tables[0]!.heads).toEqual(['Serial', 'Volts', 'Double']);
    expect(fleet.cells[1]![2]).toBe(25.2);
  });

  it('become calculated columns, and grow with a new record', async () => {
    const columns = [{ head: 'Double', format: 'plain', formula: '[@Volts]*2' }] as const;
    const fill = {
      sheet: 'Fleet',
      table: 'Units',
      as: 'tableColumn',
      headRow: 0,
      rows: 1,
      column: 2,
    } as const;
    valueOf(await host.fill({ ...fill, columns, overwrite: false }));
    expect([...fleet.tables[0]!.calculated]).toEqual([['Double', '=[@Volts]*2']]);
    const record = [
      { value: 'B', format: 'text' },
      { value: 12.4, format: 'plain' },
    ] as const;
    expect(valueOf(await host.appendRow('Fleet', ['Serial', 'Volts'], record))).toBe(2);
    expect(fleet.tables[0]!.block.rows).toBe(3);
    expect(fleet.cells[2]).toEqual(['B', 12.4, 24.8]);
  });
});
