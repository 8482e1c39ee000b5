import type { Outcome, Problem } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';
import type { FillAnswer } from '../computing/fillAnswer.ts';
import type { FillKey } from '../fill/columns.ts';
import { FILL_SPECS, WHY_HEAD } from '../fill/columns.ts';
import type { HostCell, SheetInfo, Work } from '../host/sheetHost.ts';
import type { Session } from '../session.ts';
import { FILL } from '../text/inventoryText.ts';
import { ask } from './ask.ts';
import type { Target } from './fillPlace.ts';
import { asLong, formulaPlace, headRowOf, runsOf, targetOf } from './fillPlace.ts';
import { homeChosen } from './home.ts';
import { SETTINGS_NAMED, writeSettingsSheet } from './settings.ts';
import { goneOn, stillThere } from './stillThere.ts';
import { underway } from './underway.ts';
import { writeSheet } from './writeSheets.ts';

/** What the user chose to have filled, and how. */
export type FillChoice = {
  readonly keys: readonly FillKey[];
  readonly as: 'live' | 'values';
  readonly place: 'beside' | 'newSheet';
  readonly problems: 'why' | 'error';
};

/** Fills the chosen columns; what is there already is written over only after a yes. */
export async function fillColumns(session: Session, choice: FillChoice): Promise<void> {
  const home = await homeChosen(session);
  if (home === undefined) return;
  if (choice.place === 'newSheet' || home === 'own') return fillSheet(session, choice);
  const ready = await underway(session, FILL.preparing, (work) => prepared(session, choice, work));
  if (ready === undefined) return;
  const as = await liveAllTheSame(session, ready);
  if (as === undefined) return;
  if (as === 'values') return fillColumns(session, { ...choice, as });
  const over = await mayOverwrite(session, ready);
  if (over !== undefined) await write(session, ready, over);
}

function fillSheet(session: Session, { keys, problems }: FillChoice): Promise<void> {
  const tab = session.where.value?.sheet ?? '';
  return writeSheet(session, FILL.filling, FILL.sheetName, (name, { signal }) =>
    session.computing.ask('fillSheet', { keys, problems, name, tab }, signal),
  );
}

type Ready = { readonly target: Target; readonly filled: FillAnswer };

async function prepared(session: Session, choice: FillChoice, work: Work): Promise<Outcome<Ready>> {
  const { host, asOf, reading, where } = session;
  const info = await host.workbook();
  if (!info.ok) return info;
  const parts = reading.value!.parts;
  const sheet = info.value.sheets.find(({ name }) => name === where.value!.sheet);
  const heads = await headsNow(session, headRowOf(where.value!, parts, sheet), sheet, work);
  if (!heads.ok) return heads;
  const target = targetOf(where.value!, parts, sheet, heads.value);
  const live = choice.as === 'live' ? formulaPlace(target, host.kind, asOf.value, true) : undefined;
  const { keys, problems } = choice;
  const filled = await session.computing.ask('fill', { keys, live, problems }, work.signal);
  if (!filled.ok) return filled;
  const columns = filled.value.columns.map((column) => asLong(target, parts.dataRows[0] - 1, column));
  return answer({ target, filled: { ...filled.value, columns } });
}

async function headsNow(
  { host }: Session,
  row: number,
  sheet: SheetInfo | undefined,
  work: Work,
): Promise<Outcome<readonly HostCell[]>> {
  if (sheet?.used === undefined) return answer([]);
  const block = { row, column: 0, rows: 1, columns: sheet.used.column + sheet.used.columns };
  return andThen(await host.readBlock({ sheet: sheet.name, block }, work), ({ rows }) =>
    answer(rows[0] ?? []),
  );
}

/** From this share of rows on that live formulas leave empty, the user is asked before they are filled. */
const MANY_EMPTY = 0.1;

/** Whether live formulas are filled where values would answer many more rows; undefined where nothing is to be done. */
async function liveAllTheSame(
  session: Session,
  { filled: { onlyAsValues } }: Ready,
): Promise<'live' | 'values' | undefined> {
  const all = session.reading.value?.batteryCount ?? 0;
  const many = onlyAsValues.filter(({ rows }) => rows > MANY_EMPTY * all);
  if (many.length === 0) return 'live';
  const said = await ask(session, FILL.manyEmpty(many, all), FILL.manyEmptyAnswers);
  return ([undefined, 'values', 'live'] as const)[said];
}

/** Whether columns of the same heads are written over; undefined where nothing is to be done. */
async function mayOverwrite(session: Session, { target, filled }: Ready): Promise<boolean | undefined> {
  const there = filled.columns.map(({ head }) => head).filter((head) => target.heads.has(head));
  if (there.length === 0) return false;
  const said = await ask(session, FILL.overwrite(there), FILL.overwriteAnswers);
  return said === 0 ? undefined : said === 1;
}

async function write(session: Session, ready: Ready, over: boolean): Promise<void> {
  let refused: Problem | undefined;
  const done = await underway(session, FILL.filling, async (work) => {
    const written = await writeRuns(session, ready, over, over, work);
    if (!written.ok && written.problem.because === 'cellsNotEmpty') refused = written.problem;
    return written;
  });
  if (refused !== undefined) return writeOverCells(session, ready, over, refused);
  if (done !== undefined) await finished(session, ready);
}

async function writeOverCells(
  session: Session,
  ready: Ready,
  over: boolean,
  refused: Problem,
): Promise<void> {
  session.notice.value = undefined;
  const said = await ask(session, problemText(refused), FILL.cellsAnswers);
  if (said === 0) return;
  const done = await underway(session, FILL.filling, (work) => writeRuns(session, ready, over, true, work));
  if (done !== undefined) await finished(session, ready);
}

async function writeRuns(
  session: Session,
  { target, filled }: Ready,
  over: boolean,
  overwrite: boolean,
  work: Work,
): Promise<Outcome<boolean>> {
  const { sheet, table, headRow, rows } = target;
  const isLive = filled.columns.some(({ formula }) => formula !== undefined);
  // Formulas take as-of from its cell.
  const kept = isLive ? await writeSettingsSheet(session) : answer(undefined);
  if (!kept.ok) return kept;
  const there = isLive ? [SETTINGS_NAMED] : [];
  const as = table !== undefined ? 'tableColumn' : isLive ? 'spill' : 'values';
  for (const run of runsOf(target, filled.columns, over)) {
    const place = { sheet, as, headRow, rows, overwrite, ...(table && { table: table.name }) } as const;
    const written = await goneOn(work, there, () => session.host.fill({ ...place, ...run }, work));
    if (!written.ok)
      return written.problem.because === 'cellsNotEmpty' ? written : stillThere(written.problem, there);
    there.push(...run.columns.map(({ head }) => FILL.column(head)));
  }
  return answer(true);
}

async function finished(session: Session, { target, filled }: Ready): Promise<void> {
  const info = await session.host.workbook();
  if (info.ok) session.workbook.value = info.value;
  const first = { row: target.headRow, column: target.beside, rows: 1, columns: 1 };
  await session.host.select({ sheet: target.sheet, block: first });
  const heads = filled.columns.map(({ head }) => head);
  const valued = filled.asValues.map((key) => FILL_SPECS[key].head);
  const why = emptyRows(filled);
  const asValues = valued.length === 0 ? [] : [FILL.asValues(valued)];
  session.notice.value = { kind: 'done', text: [FILL.filled(heads), ...asValues, ...why].join(' ') };
}

/** In how many rows cells are empty, and what would fill more of them. */
function emptyRows({ columns }: FillAnswer): readonly string[] {
  const reasons = columns.find(({ head }) => head === WHY_HEAD)?.values ?? [];
  const rows = reasons.filter((reason) => reason !== '').length;
  const isLive = columns.some(({ formula }) => formula !== undefined);
  return rows === 0 ? [] : [FILL.seeWhy(rows, isLive)];
}
