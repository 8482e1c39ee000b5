import { SETTINGS_SHEET } from '../../src/inventory/settingsRows.ts';
import { putOnRecord } from '../../taskpane/actions/benchRecords.ts';
import { fillColumns } from '../../taskpane/actions/fillColumns.ts';
import { readHere } from '../../taskpane/actions/readInventory.ts';
import { repairFormulas } from '../../taskpane/actions/repairFormulas.ts';
import { giveAndRead, writeSettingsSheet } from '../../taskpane/actions/settings.ts';
import { writeStoreList } from '../../taskpane/actions/store.ts';
import { underway } from '../../taskpane/actions/underway.ts';
import { writeForecast } from '../../taskpane/actions/writeForecast.ts';
import { excelHost } from '../../taskpane/host/excel/excelHost.ts';
import type { Session } from '../../taskpane/session.ts';
import { newSession } from '../../taskpane/session.ts';
import { AS_OF, inventedRows } from '../taskpane/paneSession.ts';
import { calculate } from './cellEntry.ts';
import type { ExcelRig } from './excelRig.ts';
import { startExcel, useGlobals } from './excelRig.ts';
import type { RequirementSets } from './hostWindow.ts';
import { PROGRAMS } from './hostWindow.ts';
import { typeRows } from './modelState.ts';
import { addTable } from './modelTables.ts';
import { rememberedComputing } from './rememberedComputing.ts';

const HEADS = ['Serial', 'Type', 'Site', 'Installed', 'Removed', 'Cause', 'Status'];
const ROWS = 60;

/** An open workbook, and the pane beside it. */
export type Opened = { readonly rig: ExcelRig; readonly session: Session };

/** A workbook with an invented inventory that the pane has read, and whatever else an action finds there. */
async function open(
  isTable: boolean,
  prepare: (opened: Opened) => void,
  program: RequirementSets,
): Promise<Opened> {
  const rig = await startExcel(['Batteries', 'Notes'], program);
  useGlobals(rig);
  const [sheet, notes] = rig.workbook.sheets;
  typeRows(sheet!, [HEADS, ...inventedRows(ROWS).map((row) => row.map((value) => value ?? '') as string[])]);
  sheet!.cells.forEach((row) => row.forEach((value, column) => value === '' && delete row[column]));
  typeRows(notes!, [['A note'], ['another']]);
  const days = { row: 1, column: 3, rows: ROWS, columns: 2 };
  sheet!.looks.push({ block: days, property: 'numberFormat', value: 'yyyy-mm-dd' });
  // The user has coloured cells to the right, where nothing is written yet.
  const coloured = { row: 0, column: HEADS.length, rows: ROWS + 1, columns: 1 };
  sheet!.looks.push({ block: coloured, property: 'fill/color', value: '#FFFF00' });
  const whole = { row: 0, column: 0, rows: ROWS + 1, columns: HEADS.length };
  if (isTable) addTable(rig.workbook, sheet!, whole).name = 'Units';
  const session = newSession({
    ...{ host: excelHost(), computing: rememberedComputing(), madeBy: 'Crankbook 0.0.0', today: AS_OF },
    ...{ timeOfDay: () => 0, saveFile: () => undefined },
  });
  await readHere(session);
  session.home.value = 'here';
  await giveAndRead(session, 'recordsSince', '2020-01-01');
  prepare({ rig, session });
  rig.resetTraffic();
  return { rig, session };
}

/** One thing that the pane does, with what it finds in the workbook. */
export type Action = {
  readonly isTable?: true;
  readonly prepare?: (opened: Opened) => void;
  readonly act: (session: Session) => Promise<unknown>;
};

const COLUMNS = { keys: ['monthsInService', 'chance12'], place: 'beside', problems: 'why' } as const;

// A sheet as an older version left it, with a name that stands elsewhere.
function oldSettings({ rig: { workbook } }: Opened): void {
  const notes = workbook.sheets[1]!;
  notes.name = SETTINGS_SHEET;
  typeRows(notes, [['as of', 46_000]]);
  workbook.names.push({
    name: 'CrankAsOf',
    sheet: notes,
    block: { row: 0, column: 1, rows: 1, columns: 1 },
  });
}

function unknownFormulas({ rig: { workbook } }: Opened): void {
  workbook.knowsOurFunctions = false;
  const [sheet] = workbook.sheets;
  for (const [cell, formula] of [
    ['1,9', '=_xldudf_CRANK_STATEOFCHARGE(A2)'],
    ['2,9', '=CRANK.STATEOFCHARGE(12.6)'],
  ] as const) {
    const [row, column] = cell.split(',').map(Number) as [number, number];
    sheet!.cells[row]![column] = 0;
    sheet!.formulas.set(cell, formula);
  }
  calculate(workbook);
}

const record = (sheet: 'Tests' | 'Charges') => (session: Session) =>
  putOnRecord(session, sheet, 'NF100001', [AS_OF, 'NF100001']);

/** Everything by which the pane writes into the workbook. */
export const ACTIONS: Readonly<Record<string, Action>> = {
  'fill columns of a table': {
    isTable: true,
    act: (session) => fillColumns(session, { ...COLUMNS, as: 'live' }),
  },
  'fill spilled formulas': { act: (session) => fillColumns(session, { ...COLUMNS, as: 'live' }) },
  'fill spilled formulas where settings are kept already': {
    prepare: oldSettings,
    act: (session) => fillColumns(session, { ...COLUMNS, as: 'live' }),
  },
  'fill values': { act: (session) => fillColumns(session, { ...COLUMNS, as: 'values' }) },
  'fill a sheet of its own': {
    act: (session) => fillColumns(session, { ...COLUMNS, place: 'newSheet', as: 'values' }),
  },
  'write the forecast': { act: writeForecast },
  'write the list for the store': { act: writeStoreList },
  'record a test on a new sheet': { act: record('Tests') },
  'record a test in a table that fills columns': {
    prepare: ({ rig: { workbook } }) => {
      const tests = workbook.sheets[1]!;
      tests.name = 'Tests';
      typeRows(tests, [
        ['Date', 'Serial', 'Double'],
        [46_000, 'NF100000', 92_000],
      ]);
      tests.formulas.set('1,2', '=[@Date]*2');
      const table = addTable(workbook, tests, { row: 0, column: 0, rows: 2, columns: 3 });
      table.name = 'Records';
      table.calculated.set('Double', '=[@Date]*2');
    },
    act: record('Tests'),
  },
  'record a charge under others': {
    prepare: ({ rig }) => {
      rig.workbook.sheets[1]!.name = 'Charges';
      typeRows(rig.workbook.sheets[1]!, [
        ['Date', 'Serial'],
        [46_000, 'NF100000'],
      ]);
    },
    act: record('Charges'),
  },
  'keep the settings': {
    act: (session) => underway(session, 'Keeping', () => writeSettingsSheet(session)),
  },
  'keep the settings over older ones': {
    prepare: oldSettings,
    act: (session) => underway(session, 'Keeping', () => writeSettingsSheet(session)),
  },
  'repair formulas': { prepare: unknownFormulas, act: repairFormulas },
};

/** The workbook as an action finds it. */
export function opened(
  { isTable, prepare }: Action,
  program: RequirementSets = PROGRAMS.current,
): Promise<Opened> {
  return open(isTable === true, (each) => prepare?.(each), program);
}
