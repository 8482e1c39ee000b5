import type { ICellData, IWorkbookData, IWorksheetData } from '@univerjs/core';
import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer } from '../../../src/basics/outcome.ts';
import type { WorkbookFile } from '../xlsx/workbookFile.ts';
import { readWorkbookFile } from '../xlsx/workbookFile.ts';
import type { OpenedFile } from './fileWork.ts';
import type { FileSheet } from '../xlsx/fileSheet.ts';
import { NUMBER_CODES } from '../sheetLooks.ts';
import { snapshotOf } from './snapshot.ts';

/** Rows and columns that an opened sheet has beside its own, and the least that it has. */
const SPARE_ROWS = 200;
const SPARE_COLUMNS = 20;
const LEAST_COLUMNS = 26;

/** Reads the bytes of a file into what the grid loads, looks and formulas included. */
export async function readForGrid(
  bytes: Uint8Array,
  fileName: string,
  id: string,
): Promise<Outcome<OpenedFile>> {
  const read = await readWorkbookFile(bytes, fileName, 'everything');
  if (!read.ok) return read;
  const { sheets, dates1904, isText, warnings } = read.value;
  return answer({
    data: shownSnapshot(read.value, id),
    sheets: sheets.map(({ name, tables, rows }) => ({ name, tables, filled: filledStretches(rows) })),
    dates1904,
    isText,
    warnings,
  });
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

function filledStretches(rows: FileSheet['rows']): Uint32Array {
  const stretches: number[] = [];
  rows.forEach((cells, row) => {
    let from = -1;
    for (let column = 0; column <= cells.length; column += 1) {
      const isFilled = (cells[column] ?? null) !== null;
      if (isFilled && from < 0) from = column;
      if (isFilled || from < 0) continue;
      stretches.push(row, from, column - 1);
      from = -1;
    }
  });
  return new Uint32Array(stretches);
}
