import { batch } from '@preact/signals';
import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import type { Block } from '../../src/report/sheet.ts';
import type { Reading } from '../computing/readAnswer.ts';
import type { SentSheet } from '../computing/sentSheet.ts';
import type { SheetBlock, SheetInfo, Work, WorkbookInfo } from '../host/sheetHost.ts';
import type { Session, Where } from '../session.ts';
import { settingsInForce } from '../session.ts';
import { underway } from './underway.ts';

/** Sheets of records that are read beside the inventory. */
const TESTS_SHEET = 'Tests';
const CHARGES_SHEET = 'Charges';

/** Looks at what is open anew and reads the inventory where the user stands, or where they said it is. */
export async function readHere(session: Session, where?: Where): Promise<void> {
  await underway(session, 'Reading the inventory', async (work) => {
    const info = await session.host.workbook();
    if (!info.ok) return info;
    session.workbook.value = info.value;
    const at = where ?? inventoryPlace(info.value);
    if (at === undefined) return answer(undefined);
    session.where.value = at;
    return readAt(session, info.value, at, work);
  });
}

/** The table under the cursor, else the used block of the sheet that is open; never a sheet of ours. */
export function inventoryPlace({ sheets, selected }: WorkbookInfo): Where | undefined {
  const sheet = sheets.find(({ name }) => name === selected?.sheet) ?? sheets[0];
  const used = sheet?.used;
  if (sheet === undefined || used === undefined) return undefined;
  const table = sheet.tables.find(({ block }) => selected !== undefined && touches(block, selected.block));
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
  return keepReading(session, await session.computing.ask('read', request, work.signal));
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
  if (session.where.value === undefined) return;
  await underway(session, 'Counting anew', async ({ signal }) => {
    const request = { asOf: session.asOf.value, settings: settingsInForce(session) };
    return keepReading(session, await session.computing.ask('again', request, signal));
  });
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
