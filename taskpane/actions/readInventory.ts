import { batch } from '@preact/signals';
import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import { dayFrom } from '../../src/basics/calendar.ts';
import type { Field } from '../../src/inventory/fields.ts';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import { AS_OF_KEY, jointSettings, SETTINGS_SHEET } from '../../src/inventory/settingsRows.ts';
import { withoutColumn } from '../../src/inventory/unmatchedSettings.ts';
import type { Block } from '../../src/report/sheet.ts';
import type { Reading } from '../computing/readAnswer.ts';
import type { SentSheet } from '../computing/sentSheet.ts';
import type { BlockContents, SheetBlock, SheetInfo, Work, WorkbookInfo } from '../host/sheetHost.ts';
import type { Session, Where } from '../session.ts';
import { settingsInForce } from '../session.ts';
import { underway } from './underway.ts';

/** Sheets of records that are read beside the inventory. */
const TESTS_SHEET = 'Tests';
const CHARGES_SHEET = 'Charges';

/**
 * Looks at what is open anew and reads the inventory where the user stands, or where they said it is.
 * @param brought  settings that come along with another workbook
 */
export async function readHere(session: Session, where?: Where, brought: GivenSettings = {}): Promise<void> {
  await underway(session, 'Reading the inventory', async (work) => {
    const info = await session.host.workbook();
    if (!info.ok) return info;
    if (info.value.fileName !== session.workbook.value?.fileName) forgetWorkbook(session, brought);
    session.workbook.value = info.value;
    const settings = await settingsOfWorkbook(session, info.value, work);
    if (!settings.ok) return settings;
    const at = where ?? placeKept(session, info.value) ?? inventoryPlace(info.value);
    if (at === undefined) return answer(undefined);
    session.where.value = at;
    return readAt(session, info.value, at, work);
  });
}

/** Another workbook: nothing that was said of the one before holds for it. */
function forgetWorkbook(session: Session, brought: GivenSettings): void {
  // What was to be written was meant for the workbook before.
  session.homeAsked.value?.(undefined);
  session.question.value?.answered(0);
  batch(() => {
    session.given.value = brought;
    session.home.value = undefined;
    session.taken.value = undefined;
    session.where.value = undefined;
    session.reading.value = undefined;
    session.readProblem.value = undefined;
    session.plan.value = undefined;
    session.kept.value = undefined;
  });
}

/** Takes the settings of the workbook's own sheet, unless the user keeps them elsewhere. */
async function settingsOfWorkbook(session: Session, info: WorkbookInfo, work: Work): Promise<Outcome<void>> {
  const used = info.sheets.find(({ name }) => name === SETTINGS_SHEET)?.used;
  if (used === undefined || session.home.value === 'own') return answer(undefined);
  const contents = await session.host.readBlock({ sheet: SETTINGS_SHEET, block: used }, work);
  if (!contents.ok) return contents;
  return andThen(jointSettings(undefined, contents.value.rows), (settings) => {
    session.given.value = settings;
    if (session.home.value === undefined) session.taken.value = { from: SETTINGS_SHEET, columns: [] };
    session.home.value ??= 'here';
    const asOf = asOfOn(contents.value.rows);
    if (asOf !== undefined) session.asOf.value = asOf;
    return answer(undefined);
  });
}

function asOfOn(rows: BlockContents['rows']): number | undefined {
  const cell = rows.find(([key]) => key === AS_OF_KEY)?.[1];
  const day = dayFrom(cell, AS_OF_KEY);
  return day.ok ? day.value : undefined;
}

// Where the inventory stood before, as large as it is now; else the sheet that the settings name.
function placeKept(session: Session, { sheets }: WorkbookInfo): Where | undefined {
  const { sheet = settingsInForce(session).tab, table, block } = session.where.value ?? {};
  const now = sheets.find(({ name }) => name === sheet);
  if (now?.used === undefined) return undefined;
  const asTable = now.tables.find(({ name }) => name === table);
  if (asTable !== undefined) return { sheet: now.name, block: asTable.block, table: asTable.name };
  if (block === undefined || session.where.value?.wholeSheet !== false)
    return { sheet: now.name, block: now.used };
  return { sheet: now.name, block, wholeSheet: false };
}

/** The table under the cursor, else the used block of the sheet that is open; never a sheet of ours. */
export function inventoryPlace({ sheets, selected }: WorkbookInfo): Where | undefined {
  const others = sheets.filter(({ name }) => name !== SETTINGS_SHEET);
  const sheet = others.find(({ name }) => name === selected?.sheet) ?? others[0];
  const used = sheet?.used;
  if (sheet === undefined || used === undefined) return undefined;
  const at = selected?.sheet === sheet.name ? selected.block : used;
  const table = sheet.tables.find(({ block }) => touches(block, at));
  return table === undefined
    ? { sheet: sheet.name, block: used }
    : { sheet: sheet.name, block: table.block, table: table.name };
}

const touches = (block: Block, { row, column }: Block): boolean =>
  row >= block.row &&
  row < block.row + block.rows &&
  column >= block.column &&
  column < block.column + block.columns;

async function readAt(
  session: Session,
  info: WorkbookInfo,
  at: SheetBlock,
  work: Work,
): Promise<Outcome<void>> {
  const sheet = await sent(session, info, at, work);
  if (!sheet.ok) return sheet;
  const tests = await sentNamed(session, info, TESTS_SHEET, work);
  const charges = await sentNamed(session, info, CHARGES_SHEET, work);
  if (!tests.ok) return tests;
  if (!charges.ok) return charges;
  const request = {
    sheet: sheet.value,
    ...(tests.value && { tests: tests.value }),
    ...(charges.value && { charges: charges.value }),
    asOf: session.asOf.value,
    settings: settingsInForce(session),
  };
  return keepReading(
    session,
    await withoutMissingColumns(
      session,
      await session.computing.ask('read', request, work.signal),
      work.signal,
    ),
  );
}

async function sent(
  session: Session,
  info: WorkbookInfo,
  at: SheetBlock,
  work: Work,
): Promise<Outcome<SentSheet>> {
  return andThen(await session.host.readBlock(at, work), (contents) =>
    answer({
      ...contents,
      name: at.sheet,
      firstRow: at.block.row + 1,
      firstColumn: at.block.column + 1,
      from1904: info.dates1904,
      fromText: /\.csv$/i.test(info.fileName),
    }),
  );
}

async function sentNamed(
  session: Session,
  info: WorkbookInfo,
  name: string,
  work: Work,
): Promise<Outcome<SentSheet | undefined>> {
  const sheet = info.sheets.find((each: SheetInfo) => each.name.trim().toLowerCase() === name.toLowerCase());
  if (sheet?.used === undefined) return answer(undefined);
  return sent(session, info, { sheet: sheet.name, block: sheet.used }, work);
}

/** Counts anew what was read, after as-of or a setting has changed. */
export async function readAgain(session: Session): Promise<void> {
  const { where, reading, readProblem } = session;
  if (where.value === undefined) return;
  // The first reading was given up on the way: there is nothing yet that could be counted anew.
  if (reading.value === undefined && readProblem.value === undefined) return readHere(session, where.value);
  await underway(session, 'Counting anew', async ({ signal }) => {
    const request = { asOf: session.asOf.value, settings: settingsInForce(session) };
    const again = await session.computing.ask('again', request, signal);
    return keepReading(session, await withoutMissingColumns(session, again, signal));
  });
}

/** Settings of another month may name columns that this sheet does not have: they are put aside and listed. */
async function withoutMissingColumns(
  session: Session,
  reading: Outcome<Reading>,
  signal: AbortSignal,
): Promise<Outcome<Reading>> {
  const taken = session.taken.value;
  if (taken === undefined || reading.ok || reading.problem.because !== 'headerNotFound') return reading;
  const field = reading.problem.argument.replace(/^columns\./, '') as Field;
  const { given, unmatched } = withoutColumn(session.given.value, field);
  session.given.value = given;
  session.taken.value = { ...taken, columns: [...taken.columns, unmatched] };
  const request = { asOf: session.asOf.value, settings: settingsInForce(session) };
  return withoutMissingColumns(session, await session.computing.ask('again', request, signal), signal);
}

function keepReading(session: Session, reading: Outcome<Reading>): Outcome<void> {
  batch(() => {
    session.reading.value = reading.ok ? reading.value : undefined;
    session.readProblem.value = reading.ok ? undefined : reading.problem;
    session.plan.value = undefined;
    session.planProblem.value = undefined;
    session.life.value = undefined;
  });
  return reading.ok ? answer(undefined) : reading;
}
