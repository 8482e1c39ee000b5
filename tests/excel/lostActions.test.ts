import { describe, expect, it } from 'vitest';
import { SETTINGS_SHEET } from '../../src/inventory/settingsRows.ts';
import { putOnRecord } from '../../taskpane/actions/benchRecords.ts';
import { fillColumns } from '../../taskpane/actions/fillColumns.ts';
import { readHere } from '../../taskpane/actions/readInventory.ts';
import { repairFormulas } from '../../taskpane/actions/repairFormulas.ts';
import { giveAndRead, writeSettingsSheet } from '../../taskpane/actions/settings.ts';
import { writeStoreList } from '../../taskpane/actions/store.ts';
import { underway } from '../../taskpane/actions/underway.ts';
import { writeForecast } from '../../taskpane/actions/writeForecast.ts';
import { directComputing } from '../../taskpane/computing/computing.ts';
import { excelHost } from '../../taskpane/host/excelHost.ts';
import type { Session } from '../../taskpane/session.ts';
import { newSession } from '../../taskpane/session.ts';
import { AS_OF, inventedRows } from '../taskpane/paneSession.ts';
import { calculate } from './cellEntry.ts';
import type { ExcelRig } from './excelRig.ts';
import { startExcel, useGlobals } from './excelRig.ts';
import type { WorkbookState } from './modelState.ts';
import { stateOf, typeRows } from './modelState.ts';
import { addTable } from './modelTables.ts';

const HEADS = ['Serial', 'Type', 'Site', 'Installed', 'Removed', 'Cause', 'Status'];
const ROWS = 60;

type Opened = { readonly rig: ExcelRig; readonly session: Session };

/** A workbook with an invented inventory that the pane has read, and whatever else an action finds there. */
async function open(isTable: boolean, prepare: (opened: Opened) => void): Promise<Opened> {
  const rig = await startExcel(['Batteries', 'Notes']);
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
    ...{ host: excelHost(), computing: directComputing(), madeBy: 'Crankbook 0.0.0', today: AS_OF },
    ...{ timeOfDay: () => 0, saveFile: () => undefined },
  });
  await readHere(session);
  session.home.value = 'here';
  await giveAndRead(session, 'recordsSince', '2020-01-01');
  prepare({ rig, session });
  rig.resetTraffic();
  return { rig, session };
}

type Action = {
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
const ACTIONS: Readonly<Record<string, Action>> = {
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

const opened = ({ isTable, prepare }: Action): Promise<Opened> =>
  open(isTable === true, (each) => prepare?.(each));

type State = WorkbookState;
const isSame = (a: State, b: State): boolean => JSON.stringify(a) === JSON.stringify(b);

// Which sheet is shown may differ: going back there is asked for last, and losing that loses nothing.
const contents = ({ active: _, ...rest }: State): object => rest;

/** Whether there is nothing but what was there before, and what a sentence says is still there. */
function expectPart([at, now]: [string, State], before: State, after: State, still: string): void {
  const isTold = (name: string): boolean => still.includes(`“${name}”`);
  const told = after.sheets.filter(({ name }) => isTold(name));
  const kept = before.sheets.filter(({ name }) => !isTold(name));
  expect([at, [...now.sheets].sort(byName)]).toEqual([at, [...kept, ...told].sort(byName)]);
  expect([before.names, after.names]).toContainEqual(now.names);
  expect(now.events).toBe(true);
}

const byName = (a: { readonly name: string }, b: { readonly name: string }): number =>
  a.name < b.name ? -1 : 1;

/** What the workbook is before and after an action without faults, and in how many syncs. */
async function untroubled(action: Action): Promise<{ before: State; after: State; syncs: number }> {
  const { rig, session } = await opened(action);
  const before = stateOf(rig.workbook);
  await action.act(session);
  expect([session.notice.value?.kind, rig.traffic.notModelled]).not.toContain('problem');
  const after = stateOf(rig.workbook);
  expect(after).not.toEqual(before);
  return { before, after, syncs: rig.traffic.syncs };
}

describe.each(Object.entries(ACTIONS))('%s', (_, action) => {
  it.each([false, true])(
    'is done whole or not at all at whichever sync the connection is lost (done all the same: %s)',
    async (isDoneAllTheSame) => {
      const { before, after, syncs } = await untroubled(action);
      expect(syncs).toBeGreaterThan(1);
      let { rig, session } = await opened(action);
      let refusals = 0;
      for (let lostAt = 1; lostAt <= syncs; lostAt += 1) {
        rig.resetTraffic();
        session.notice.value = undefined;
        Object.assign(rig.faults, { lostAt, isDoneAllTheSame });
        await action.act(session);
        const { kind, text } = session.notice.value ?? { kind: 'done', text: '' };
        const at = `lost at ${lostAt} of ${syncs}: ${text}`;
        expect(rig.traffic.notModelled).toEqual([]);
        const now = stateOf(rig.workbook);
        if (kind === 'done') expect([at, contents(now)]).toEqual([at, contents(after)]);
        else {
          expect(text).toMatch(/connection to Excel was lost.*do it again/);
          const [, still] = text.split('still there: ');
          if (still === undefined) expect([at, contents(now)]).toEqual([at, contents(before)]);
          else expectPart([at, now], before, after, still);
        }
        if (!isSame(now, before)) ({ rig, session } = await opened(action));
        refusals += kind === 'done' ? 0 : 1;
      }
      expect(refusals).toBeGreaterThan(0);
    },
    60_000,
  );

  it('tells what may remain where the connection stays away', async () => {
    const { before, after, syncs } = await untroubled(action);
    for (let lostAt = 1; lostAt <= syncs; lostAt += 1) {
      const { rig, session } = await opened(action);
      Object.assign(rig.faults, { lostAt, lostFor: 1_000 });
      await action.act(session);
      const { kind, text } = session.notice.value ?? { kind: 'done', text: '' };
      rig.faults.lostAt = undefined;
      // What is asked next switches the events on again.
      await session.host.workbook();
      const now = stateOf(rig.workbook);
      const at = `lost from ${lostAt} of ${syncs} on: ${text}`;
      if (kind === 'done') expect([at, contents(now)]).toEqual([at, contents(after)]);
      else if (isSame(now, before)) expect(text).toMatch(/connection to Excel was lost|look at \S/);
      else expect([at, text]).toEqual([at, expect.stringMatching(/(look at|still there:) \S/)]);
      expect(now.events).toBe(true);
    }
  }, 60_000);
});
