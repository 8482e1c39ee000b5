import { calculated } from './calculation.ts';
import type { StartedWorkbook } from './engine.ts';
import type { OpenedFile } from './fileWork.ts';
import { isProtected } from './info.ts';
import { liveSheets } from './live.ts';
import { forgetParsed } from './syntax.ts';

const ROWS = 200;
const COLUMNS = 26;

let opened = 0;

/** A name for the workbook that is opened next: the engine keeps formulas that it has prepared under such names. */
export function nextBookId(): string {
  opened += 1;
  return `book${opened}`;
}

/** A new empty workbook, in place of what was open. */
export function openEmpty(started: StartedWorkbook): void {
  closeOpen(started);
  const sheet = { id: 'sheet0', name: 'Sheet1', rowCount: ROWS, columnCount: COLUMNS };
  started.api.createWorkbook({ id: nextBookId(), sheetOrder: ['sheet0'], sheets: { sheet0: sheet } });
}

/** Puts a file that has been read in place of what was open, and waits until it has been calculated. */
export async function showFile(
  started: StartedWorkbook,
  { data }: OpenedFile,
  progress: (share: number) => void,
): Promise<void> {
  closeOpen(started);
  await calculated(started, () => void started.api.createWorkbook(data), { progress });
  await keepProtected(started);
}

// The grid itself lets everyone type everywhere.
async function keepProtected(started: StartedWorkbook): Promise<void> {
  for (const live of liveSheets(started)) {
    if (!isProtected(live)) continue;
    const permission = live.facade.getWorksheetPermission();
    await permission.protect();
    await permission.setReadOnly();
    for (const point of STILL_ALLOWED) await permission.setPoint(point as never, true);
  }
}

const STILL_ALLOWED = ['WorksheetCopy', 'WorksheetSelectProtectedCells', 'WorksheetSelectUnProtectedCells'];

function closeOpen({ api, engine, sentences }: StartedWorkbook): void {
  const open = api.getActiveWorkbook();
  if (open !== null) api.disposeUnit(open.getId());
  sentences.clear();
  forgetParsed(new engine.LexerTreeBuilder());
}
