import type { CellValue as FileValue, Sheet, TableDefinition } from 'hucre';
import type { CellError } from '../../../functions/cell.ts';
import type { CellRange } from '../cellAddress.ts';
import { rangeOf } from '../cellAddress.ts';

/** What a cell of a file holds; a date is its serial in the 1900 system, an empty cell is null. */
export type FileCell = number | string | boolean | null | CellError;

/** A defined table: its name and its block, heads included. */
export type FileTable = {
  readonly name: string;
  readonly range: CellRange;
  readonly heads: readonly string[];
  readonly totalRow: boolean;
};

/** One sheet of a file. Rows and columns count from 0; rows may be shorter than the widest one. */
export type FileSheet = {
  readonly name: string;
  readonly hidden: boolean;
  /** Whether the file keeps its users from changing it. */
  readonly isProtected?: boolean;
  readonly rows: readonly (readonly FileCell[])[];
  /** For each column that has any, the rows whose number is formatted as a date or time. */
  readonly dateCells: ReadonlyMap<number, ReadonlySet<number>>;
  /** Rows that a reader of the sheet doesn't see, hidden by hand or by a filter. */
  readonly hiddenRows: ReadonlySet<number>;
  readonly hiddenColumns: ReadonlySet<number>;
  /** Whether a filter stands on the sheet and hides rows. */
  readonly filtered: boolean;
  /** Merged blocks: their value stands in the first cell, the others are null. */
  readonly merges: readonly CellRange[];
  readonly tables: readonly FileTable[];
  /** Formula cells saved without a value: they read as empty. */
  readonly formulasWithoutValue: number;
  /** The sheet as the file library read it, where looks and formulas were asked for. */
  readonly source?: Sheet;
};

/** A sheet as the file library read it, in our own terms. `dates1904` tells which date system it was saved in. */
export function readSheet(sheet: Sheet, dates1904: boolean): FileSheet {
  const dateCells = new Map<number, Set<number>>();
  const rows = sheet.rows.map((values, row) =>
    values.map((value, column) => {
      if (!(value instanceof Date)) return value;
      dateCells.set(column, (dateCells.get(column) ?? new Set()).add(row));
      return serialOf(value, dates1904);
    }),
  );
  const hiddenRows = new Set([...(sheet.rowDefs ?? [])].filter(([, def]) => def.hidden).map(([row]) => row));
  return {
    name: sheet.name,
    hidden: sheet.hidden === true || sheet.veryHidden === true,
    isProtected: sheet.protection?.sheet === true,
    rows: withErrors(rows, sheet),
    dateCells,
    hiddenRows,
    hiddenColumns: new Set((sheet.columns ?? []).flatMap((column, index) => (column.hidden ? [index] : []))),
    filtered: filterRanges(sheet).some((range) => hidesRows(range, hiddenRows)),
    merges: (sheet.merges ?? []).map(({ startCol, endCol, startRow, endRow }) => ({
      startRow,
      startColumn: startCol,
      endRow,
      endColumn: endCol,
    })),
    tables: (sheet.tables ?? []).flatMap(tableOf),
    formulasWithoutValue: [...(sheet.cells?.values() ?? [])].filter(isWithoutValue).length,
  };
}

const isWithoutValue = (cell: { formula?: string; value: FileValue }): boolean =>
  cell.formula !== undefined && cell.value === null;

/** A text that only looks like an error stays text; the file says which cells are errors. */
function withErrors(rows: Exclude<FileValue, Date>[][], sheet: Sheet): FileCell[][] {
  const cells: FileCell[][] = rows;
  for (const [key, cell] of sheet.cells ?? []) {
    if (cell.type !== 'error') continue;
    const [row, column] = key.split(',').map(Number) as [number, number];
    cells[row]![column] = { error: String(cell.value), message: '' };
  }
  return cells;
}

const DAY = 86_400_000;
const SERIAL_OF_1970 = 25_569;
// Serial 60 is a day that never was (29 February 1900); the serials under it lie one day off.
const FIRST_SOUND_SERIAL = 61;
const DAYS_1904_AFTER_1900 = 1462;

/** The 1900 serial of a date; a time of day without a date stays under 1. */
function serialOf(date: Date, dates1904: boolean): number {
  const serial = Math.round((date.getTime() / DAY + SERIAL_OF_1970) * 1e10) / 1e10;
  if (dates1904 && serial < DAYS_1904_AFTER_1900 + 1) return serial - DAYS_1904_AFTER_1900;
  return serial < FIRST_SOUND_SERIAL ? serial - 1 : serial;
}

function tableOf(table: TableDefinition): FileTable[] {
  const range = rangeOf(table.range ?? '');
  if (range === undefined) return [];
  const heads = table.columns.map((column) => column.name);
  return [{ name: table.displayName ?? table.name, range, heads, totalRow: table.showTotalRow === true }];
}

function filterRanges(sheet: Sheet): CellRange[] {
  const tables = (sheet.tables ?? []).filter((table) => table.showAutoFilter !== false);
  return [sheet.autoFilter?.range, ...tables.map((table) => table.range)].flatMap((range) => {
    const block = rangeOf(range ?? '');
    return block === undefined ? [] : [block];
  });
}

const hidesRows = (range: CellRange, hidden: ReadonlySet<number>): boolean =>
  [...hidden].some((row) => row >= range.startRow && row <= range.endRow);
