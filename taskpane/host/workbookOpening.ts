import type { ICellData, IWorkbookData, IWorksheetData } from '@univerjs/core';
import type { Outcome } from '../../src/basics/outcome.ts';
import { answer } from '../../src/basics/outcome.ts';
import { calculated } from './workbookCalculation.ts';
import type { StartedWorkbook } from './workbookEngine.ts';
import type { WorkbookFile } from './workbookFile.ts';
import { readWorkbookFile } from './workbookFile.ts';
import type { FileSheet } from './workbookSheet.ts';
import { NUMBER_CODES } from './workbookSheetLooks.ts';
import { snapshotOf } from './workbookSnapshot.ts';
import { forgetParsed } from './workbookSyntax.ts';

const SPARE_ROWS = 200;
const SPARE_COLUMNS = 20;
const LEAST_COLUMNS = 26;

let opened = 0;

/** A new empty workbook, in place of what was open. */
export function openEmpty(started: StartedWorkbook): void {
  closeOpen(started);
  opened += 1;
  const sheet = { id: 'sheet0', name: 'Sheet1', rowCount: SPARE_ROWS, columnCount: LEAST_COLUMNS };
  started.api.createWorkbook({ id: `book${opened}`, sheetOrder: ['sheet0'], sheets: { sheet0: sheet } });
}

/** Opens the bytes of a file in place of what was open; a file that can't be read leaves that open. */
export async function openFile(
  started: StartedWorkbook,
  bytes: Uint8Array,
  fileName: string,
): Promise<Outcome<WorkbookFile>> {
  const read = await readWorkbookFile(bytes, fileName, 'everything');
  if (!read.ok) return read;
  closeOpen(started);
  // The engine keeps formulas that it has prepared under the workbook's id: each workbook gets one of its own.
  opened += 1;
  const data = shownSnapshot(read.value, `book${opened}`);
  await calculated(started, () => void started.api.createWorkbook(data));
  return answer(read.value);
}

function closeOpen({ api, engine, sentences }: StartedWorkbook): void {
  const open = api.getActiveWorkbook();
  if (open !== null) api.disposeUnit(open.getId());
  sentences.clear();
  forgetParsed(new engine.LexerTreeBuilder());
}

function shownSnapshot(file: WorkbookFile, id: string): Partial<IWorkbookData> {
  const { sheets, names, base } = file;
  const active = sheets.find(({ hidden }) => !hidden)?.name ?? sheets[0]?.name ?? '';
  const contents = { sheets, names, active, formulas: [], rowCount: SPARE_ROWS };
  const data = snapshotOf(base === undefined ? contents : { ...contents, base }, id);
  data.sheetOrder!.forEach((sheetId, index) => complete(data.sheets![sheetId]!, sheets[index]!));
  return data;
}

/** What a reader of the sheet sees beside its cells. */
function complete(data: Partial<IWorksheetData>, sheet: FileSheet): void {
  const width = sheet.rows.reduce((most, row) => Math.max(most, row.length), 0);
  data.rowCount = sheet.rows.length + SPARE_ROWS;
  data.columnCount = Math.max(LEAST_COLUMNS, width + SPARE_COLUMNS);
  if (sheet.isProtected === true) data.custom = { ...data.custom, isProtected: true };
  showDates(data, sheet);
}

// A date without a look of its own would be shown as a number.
function showDates({ cellData }: Partial<IWorksheetData>, { dateCells }: FileSheet): void {
  const rows = cellData as Record<number, Record<number, ICellData> | undefined> | undefined;
  for (const [column, dated] of dateCells) {
    for (const row of dated) {
      const cell = rows?.[row]?.[column];
      if (cell !== undefined) cell.s ??= { n: { pattern: NUMBER_CODES.date! } };
    }
  }
}
