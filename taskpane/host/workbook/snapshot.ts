import type { ICellData, IWorkbookData, IWorksheetData } from '@univerjs/core';
import type { FileName, LooksBase } from '../xlsx/workbookFile.ts';
import type { LookTable } from './looks.ts';
import { lookForGrid, newLookTable } from './looks.ts';
import { markOfText } from './sentences.ts';
import type { FileCell, FileSheet, FileTable } from '../xlsx/fileSheet.ts';
import { putCells, sheetLooks } from './sheetSnapshot.ts';

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

/** The sheets and names of a workbook, and formulas on one of its sheets. */
export type Contents = {
  readonly sheets: readonly FileSheet[];
  readonly names: readonly FileName[];
  /** The sheet on which the formulas stand: references without a sheet name mean it. */
  readonly active: string;
  readonly formulas: readonly PlacedFormula[];
  /** How many rows each sheet has. */
  readonly rowCount: number;
  /** What the looks of the sheets start from; without it values alone are loaded. */
  readonly base?: LooksBase;
};

/** Contents as the built-in workbook loads them in one go, tables and names included. */
export function snapshotOf(contents: Contents, id: string): Partial<IWorkbookData> {
  const { sheets, names, active, formulas, rowCount, base } = contents;
  const looks = newLookTable(base?.theme ?? []);
  const own = sheets.map((sheet, index) => {
    const rows = rowsOf(sheet, looks);
    if (sheet.name === active) place(rows, formulas);
    return {
      ...sheetData(sheetId(index), sheet.name, rows, rowCount),
      ...(sheet.source && sheetLooks(sheet.source)),
    };
  });
  const resources = [
    { name: 'SHEET_TABLE_PLUGIN', data: JSON.stringify(tablesOf(sheets)) },
    { name: 'SHEET_DEFINED_NAME_PLUGIN', data: JSON.stringify(namesOf(names, sheets)) },
  ];
  const sheetOrder = sheets.map((_, index) => sheetId(index));
  return {
    id,
    name: 'Workbook',
    sheetOrder,
    sheets: Object.fromEntries(own.map((each) => [each.id, each])),
    styles: looks.styles,
    ...(base?.font && { defaultStyle: lookForGrid({ font: base.font }, base.theme) }),
    resources,
  };
}

function rowsOf({ rows, source }: FileSheet, looks: LookTable): Row[] {
  const made = rows.map(rowOf);
  if (source !== undefined) putCells(made, source, looks);
  return made;
}

const sheetId = (index: number): string => `sheet${index}`;

function sheetData(
  id: string,
  name: string,
  rows: readonly Row[],
  rowCount: number,
): Partial<IWorksheetData> & { readonly id: string } {
  const cellData: Record<number, Row> = {};
  rows.forEach((row, index) => {
    if (row !== undefined && Object.keys(row).length > 0) cellData[index] = row;
  });
  return { id, name, rowCount, columnCount: MOST_COLUMNS, cellData };
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
  if (typeof cell === 'string') return { v: cell, t: TEXT, ...markOfText(cell) };
  return { v: cell.error, t: TEXT };
}

function place(rows: Row[], formulas: readonly PlacedFormula[]): void {
  for (const { formula, row, column } of formulas) (rows[row] ??= {})[column] = { f: formula };
}

function tablesOf(sheets: readonly FileSheet[]): Record<string, { readonly tables: object[] }> {
  const filled = sheets.map(
    ({ tables }, index) => [sheetId(index), { tables: tables.map(tableOf) }] as const,
  );
  return Object.fromEntries(filled.filter(([, { tables }]) => tables.length > 0));
}

const tableOf = ({ name, range, totalRow }: FileTable): object => ({
  id: name,
  name,
  // The engine's tables have no total row: structured references mean the rows above it.
  range: { ...range, endRow: range.endRow - (totalRow ? 1 : 0) },
  columns: [],
  options: { showHeader: true },
  meta: {},
});

const WHOLE_WORKBOOK = 'AllDefaultWorkbook';

function namesOf(names: readonly FileName[], sheets: readonly FileSheet[]): Record<string, object> {
  // Spreadsheet programs keep print areas and filters under names of their own.
  const shown = names.filter(
    ({ name, refersTo }) => !name.startsWith('_xlnm') && !refersTo.includes('#REF!'),
  );
  const described = shown.map(({ name, refersTo, scope }, index) => {
    const sheet = sheets.findIndex((each) => each.name === scope);
    const localSheetId = sheet < 0 ? WHOLE_WORKBOOK : sheetId(sheet);
    return { id: `name${index}`, name, formulaOrRefString: refersTo, localSheetId };
  });
  return Object.fromEntries(described.map((each) => [each.id, each]));
}
