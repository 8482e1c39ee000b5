import { beforeEach, describe, expect, it } from 'vitest';
import { SETTINGS_SHEET } from '../../src/inventory/settingsRows.ts';
import { putOnRecord } from '../../taskpane/actions/benchRecords.ts';
import { fillColumns } from '../../taskpane/actions/fillColumns.ts';
import { makePlan } from '../../taskpane/actions/makePlan.ts';
import { readHere } from '../../taskpane/actions/readInventory.ts';
import { giveAndRead } from '../../taskpane/actions/settings.ts';
import { showLife } from '../../taskpane/actions/showLife.ts';
import { writeStoreList } from '../../taskpane/actions/store.ts';
import { writeForecast } from '../../taskpane/actions/writeForecast.ts';
import { directComputing } from '../../taskpane/computing/computing.ts';
import { excelHost } from '../../taskpane/host/excel/excelHost.ts';
import type { Session } from '../../taskpane/session.ts';
import { newSession } from '../../taskpane/session.ts';
import { AS_OF, inventedRows } from '../taskpane/paneSession.ts';
import type { ExcelRig } from './excelRig.ts';
import { startExcel, useGlobals } from './excelRig.ts';
import { stateOf, typeRows } from './modelState.ts';
import { addTable } from './modelTables.ts';
import type { ModelSheet } from './workbookModel.ts';

const HEADS = ['Serial', 'Type', 'Site', 'Installed', 'Removed', 'Cause', 'Status'];
const ROWS = 240;

let rig: ExcelRig;
let session: Session;

/** A workbook with an invented inventory, read by the pane. */
async function open(isTable: boolean): Promise<void> {
  rig = await startExcel(['Batteries']);
  useGlobals(rig);
  const [sheet] = rig.workbook.sheets;
  typeRows(sheet!, [HEADS, ...inventedRows(ROWS).map((row) => row.map((value) => value ?? '') as string[])]);
  sheet!.cells.forEach((row) => row.forEach((value, column) => value === '' && delete row[column]));
  const block = { row: 1, column: 3, rows: ROWS, columns: 2 };
  sheet!.looks.push({ block, property: 'numberFormat', value: 'yyyy-mm-dd' });
  const whole = { row: 0, column: 0, rows: ROWS + 1, columns: HEADS.length };
  if (isTable) addTable(rig.workbook, sheet!, whole).name = 'Units';
  session = newSession({
    ...{ host: excelHost(), computing: directComputing(), madeBy: 'Crankbook 0.0.0', today: AS_OF },
    ...{ timeOfDay: () => 0, saveFile: () => undefined },
  });
  await readHere(session);
  session.home.value = 'here';
  await giveAndRead(session, 'recordsSince', '2020-01-01');
}

const sheetCalled = (name: string): ModelSheet => rig.workbook.sheets.find((each) => each.name === name)!;
const notice = (): unknown => [
  session.notice.value?.kind,
  session.readProblem.value,
  rig.traffic.notModelled,
];
const DONE = ['done', undefined, []];
const CHOICE = { keys: ['monthsInService', 'chance12'], place: 'beside', problems: 'why' } as const;

describe.each([
  ['a table', true],
  ['a block', false],
])("the pane's actions in Excel, the inventory being %s", (_, isTable) => {
  beforeEach(() => open(isTable));

  it('read the inventory, plan, and show how long batteries last', async () => {
    expect(session.where.value).toMatchObject({ sheet: 'Batteries', ...(isTable && { table: 'Units' }) });
    await makePlan(session);
    await showLife(session);
    expect([session.plan.value === undefined, session.life.value === undefined]).toEqual([false, false]);
    expect([session.planProblem.value, rig.traffic.notModelled]).toEqual([undefined, []]);
  });

  it('fill live columns that find their day in the named cell on the sheet of settings', async () => {
    await fillColumns(session, { ...CHOICE, as: 'live' });
    expect(notice()).toEqual(DONE);
    const batteries = sheetCalled('Batteries');
    expect(batteries.cells[0]!.slice(7, 9)).toEqual(['Months in service', 'Chance of failing in 12 months']);
    const formula = batteries.formulas.get('1,7')!;
    expect(formula).toContain('CRANK.MONTHSINSERVICE');
    expect(formula).toContain('CrankAsOf');
    expect(batteries.formulas.get('2,7')).toBe(isTable ? formula : undefined);
    expect(isTable ? batteries.tables[0]!.heads.slice(7, 9) : []).toEqual(
      isTable ? ['Months in service', 'Chance of failing in 12 months'] : [],
    );
    const [name] = rig.workbook.names;
    expect([name!.name, name!.sheet.name]).toEqual(['CrankAsOf', SETTINGS_SHEET]);
    expect(sheetCalled(SETTINGS_SHEET).cells[name!.block.row]![name!.block.column]).toBe(AS_OF);
  });

  it('fill values, which stay as they are', async () => {
    await fillColumns(session, { ...CHOICE, as: 'values' });
    expect(notice()).toEqual(DONE);
    const months = sheetCalled('Batteries')
      .cells.slice(1)
      .map((row) => row[7]);
    expect(months.filter((value) => typeof value === 'number').length).toBeGreaterThan(150);
  });

  it('write the forecast and the list for the store on sheets of their own', async () => {
    await writeForecast(session);
    expect(notice()).toEqual(DONE);
    await writeStoreList(session);
    expect(notice()).toEqual(DONE);
    const names = rig.workbook.sheets.map(({ name }) => name);
    expect(names.slice(0, 3)).toEqual(['Batteries', 'Forecast', 'Forecast units']);
    expect(names).toContain('Store list');
    expect(sheetCalled('Forecast').charts.length).toBeGreaterThan(0);
    expect(sheetCalled('Forecast units').tables[0]!.block.rows).toBeGreaterThan(100);
  });

  it('put tests on record', async () => {
    expect(await putOnRecord(session, 'Tests', 'NF100001', [AS_OF, 'NF100001'])).toBe(true);
    expect(sheetCalled('Tests').cells[1]!.slice(0, 2)).toEqual([AS_OF, 'NF100001']);
  });

  it('leave the workbook as it was where the connection is lost, and say so', async () => {
    const before = stateOf(rig.workbook);
    rig.resetTraffic();
    Object.assign(rig.faults, { lostAt: 6 });
    await writeForecast(session);
    expect(session.notice.value).toMatchObject({
      kind: 'problem',
      text: expect.stringContaining('was lost'),
    });
    expect(stateOf(rig.workbook)).toEqual(before);
  });
});
