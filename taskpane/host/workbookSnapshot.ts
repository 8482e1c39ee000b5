import type { ICellData, IWorkbookData, IWorksheetData } from '@univerjs/core';
import type { FileCell, FileSheet } from './workbookSheet.ts';

/** The most rows and columns that spreadsheets have. */
export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

/** Kinds of cell values in the built-in workbook: text, number, truth. */
const TEXT = 1;
const NUMBER = 2;
export const TRUTH = 3;

type Row = Record<number, ICellData>;

/** A formula to stand in a cell of the active sheet; rows and columns count from 0. */
export type PlacedFormula = { readonly formula: string; readonly row: number; readonly column: number };

/** The sheets of a file, and formulas on its active sheet, as the built-in workbook loads them in one go. */
export function snapshotOf(
  sheets: readonly FileSheet[],
  active: string,
  formulas: readonly PlacedFormula[],
): Partial<IWorkbookData> {
  const own = sheets.map((sheet, index) => {
    const rows = sheet.rows.map(rowOf);
    if (sheet.name === active) place(rows, formulas);
    return sheetData(`sheet${index}`, sheet.name, rows);
  });
  // The first sheet is the active one: references without a sheet name then mean it.
  const order = own.map(({ id }) => id!);
  return {
    id: 'workbook',
    name: 'Workbook',
    sheetOrder: order,
    sheets: Object.fromEntries(own.map((each) => [each.id!, each])),
  };
}

function sheetData(id: string, name: string, rows: readonly Row[]): Partial<IWorksheetData> {
  const cellData: Record<number, Row> = {};
  rows.forEach((row, index) => {
    if (row !== undefined && Object.keys(row).length > 0) cellData[index] = row;
  });
  return { id, name, rowCount: MOST_ROWS, columnCount: MOST_COLUMNS, cellData };
}

function rowOf(cells: readonly FileCell[]): Row {
  const row: Row = {};
  for (let column = 0; column < cells.length; column += 1) {
    const cell = cells[column];
    if (cell !== null && cell !== undefined) row[column] = cellOf(cell);
  }
  return row;
}

// Text is marked as text, else 0514 would become a number.
function cellOf(cell: Exclude<FileCell, null>): ICellData {
  if (typeof cell === 'number') return { v: cell, t: NUMBER };
  if (typeof cell === 'boolean') return { v: cell ? 1 : 0, t: TRUTH };
  return { v: typeof cell === 'string' ? cell : cell.error, t: TEXT };
}

function place(rows: Row[], formulas: readonly PlacedFormula[]): void {
  for (const { formula, row, column } of formulas) (rows[row] ??= {})[column] = { f: formula };
}
