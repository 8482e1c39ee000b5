import { dayParts } from '../../src/basics/calendar.ts';
import type { Field } from '../../src/inventory/fields.ts';
import type { SheetParts } from '../../src/inventory/sheetParts.ts';
import { AS_OF_NAME } from '../../src/report/settingsSheet.ts';
import type { ColumnsAt, FillPlace } from '../fill/formulas.ts';
import { spilledCells, tableCells } from '../fill/formulas.ts';
import type { FilledColumn, HostCell, HostTable, SheetHost, SheetInfo } from '../host/sheetHost.ts';
import type { Where } from '../session.ts';

/** Where columns are filled: heads, rows and the table, if it is one. Rows and columns count from 0. */
export type Target = {
  readonly sheet: string;
  readonly table: HostTable | undefined;
  readonly headRow: number;
  readonly rows: number;
  readonly at: ColumnsAt;
  /** The first column at the right of the inventory. */
  readonly beside: number;
  /** The column of each head that is there already. */
  readonly heads: ReadonlyMap<string, number>;
};

/**
 * The place of an inventory on its sheet.
 * @param written  the cells of the head row, from the sheet's first column on, as they stand now
 */
export function targetOf(
  where: Where,
  parts: SheetParts,
  sheet: SheetInfo | undefined,
  written: readonly HostCell[],
): Target {
  const { block } = where;
  const table = sheet?.tables.find(({ name }) => name === where.table);
  const headRow = headRowOf(where, parts, sheet);
  const rows = table === undefined ? parts.dataRows[1] - headRow - 1 : table.block.rows - 1;
  const found = parts.columns.map(({ head, column }) => [head, block.column + column] as const);
  const ofTable = table?.heads.map((head, index) => [head, table.block.column + index] as const) ?? [];
  const columns = Object.fromEntries(
    parts.columns.flatMap(({ field, column }) =>
      field === undefined ? [] : [[field, block.column + column]],
    ),
  ) as Partial<Record<Field, number>>;
  return {
    ...{ sheet: where.sheet, table, headRow, rows },
    at: { columns, firstRow: headRow + 1, rows },
    beside: table === undefined ? besideRows(where, sheet) : table.block.column + table.block.columns,
    heads: new Map([
      ...found,
      ...written.flatMap((head, column) => (typeof head === 'string' ? [[head, column] as const] : [])),
      ...ofTable,
    ]),
  };
}

/** The row of the sheet in which heads of new columns stand. */
export function headRowOf({ table }: Where, { dataRows }: SheetParts, sheet: SheetInfo | undefined): number {
  return sheet?.tables.find(({ name }) => name === table)?.block.row ?? dataRows[0] - 2;
}

// Columns may have come since the inventory was read.
function besideRows({ block, wholeSheet }: Where, sheet: SheetInfo | undefined): number {
  const used = wholeSheet === false ? undefined : sheet?.used;
  return used === undefined ? block.column + block.columns : used.column + used.columns;
}

/** How formulas at that place point at cells and at the day of the question. */
export function formulaPlace(
  { table, at }: Target,
  kind: SheetHost['kind'],
  asOf: number,
  asOfNamed: boolean,
): FillPlace {
  const { year, month, day } = dayParts(asOf);
  const written = asOfNamed ? AS_OF_NAME : `DATE(${year},${month},${day})`;
  if (table === undefined) return { asOf: written, cells: spilledCells(at) };
  const heads = new Map(table.heads.map((head, index) => [table.block.column + index, head]));
  return { asOf: written, cells: tableCells(at, heads, kind === 'excel') };
}

/** Columns that stand side by side from one column on. */
export type Run = { readonly column: number; readonly columns: readonly FilledColumn[] };

/** Puts each column where one of its head stands, where that may be written over, else at the right of all. */
export function runsOf(
  { heads, beside }: Target,
  columns: readonly FilledColumn[],
  over: boolean,
): readonly Run[] {
  let next = beside;
  const placed = columns.map((column) => {
    const there = over ? heads.get(column.head) : undefined;
    return { at: there ?? next++, column: over ? column : named(column, heads) };
  });
  const runs: { column: number; columns: FilledColumn[] }[] = [];
  for (const { at, column } of placed.sort((a, b) => a.at - b.at)) {
    const last = runs.at(-1);
    if (last !== undefined && last.column + last.columns.length === at) last.columns.push(column);
    else runs.push({ column: at, columns: [column] });
  }
  return runs;
}

// A table's heads must differ.
function named(column: FilledColumn, heads: ReadonlyMap<string, number>): FilledColumn {
  let head = column.head;
  for (let number = 2; heads.has(head); number += 1) head = `${column.head} (${number})`;
  return { ...column, head };
}

/** Values for as many rows as are filled: a table may have empty rows at its end. */
export function asLong({ rows, at }: Target, firstRow: number, column: FilledColumn): FilledColumn {
  const { values } = column;
  if (values === undefined) return column;
  const before = firstRow - at.firstRow;
  return { ...column, values: Array.from({ length: rows }, (_, row) => values[row - before] ?? null) };
}
