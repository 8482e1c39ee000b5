import type { Field } from '../../src/inventory/fields.ts';
import type { Expression } from './expression.ts';
import { columnRange, fitsFormula, formulaText, tableCell } from './expression.ts';

/** Where formulas stand, and what they point at. */
export type FillPlace = {
  /** How the day of the question is written: the name of its cell, or the day itself. */
  readonly asOf: string;
  /** How each field's cell is written: in a table that of the formula's own row, else the column's rows. */
  readonly cells: Readonly<Partial<Record<Field, string>>>;
};

/** Where the columns of an inventory stand on their sheet. Rows and columns count from 0. */
export type ColumnsAt = {
  readonly columns: Readonly<Partial<Record<Field, number>>>;
  readonly firstRow: number;
  readonly rows: number;
};

/** Cells as one spilled formula points at them. */
export function spilledCells({ columns, firstRow, rows }: ColumnsAt): FillPlace['cells'] {
  return mapped(columns, (column) => columnRange(column, firstRow, rows));
}

// The built-in engine reads no signs in a head.
const PLAIN_HEAD = /^[\p{L}\p{N}_][\p{L}\p{N}_ ]*$/u;

/**
 * Cells of the formula's own row, as a calculated column points at them.
 * @param heads  the table's heads by column of the sheet
 * @param allHeads  whether the host takes every head in a formula; else a head with signs is pointed at by its place
 */
export function tableCells(
  at: ColumnsAt,
  heads: ReadonlyMap<number, string>,
  allHeads: boolean,
): FillPlace['cells'] {
  return mapped(at.columns, (column) => {
    const head = heads.get(column);
    if (head !== undefined && (allHeads || PLAIN_HEAD.test(head))) return tableCell(head);
    return `INDEX(${columnRange(column, at.firstRow, at.rows)},ROW()-${at.firstRow})`;
  });
}

function mapped(columns: ColumnsAt['columns'], written: (column: number) => string): FillPlace['cells'] {
  return Object.fromEntries(Object.entries(columns).map(([field, column]) => [field, written(column)]));
}

/**
 * The formula of a column at its place; undefined where a spreadsheet would not take it.
 * @param problems  `why` leaves a cell without an answer empty, `error` lets it show its error
 */
export function placedFormula(
  expression: Expression,
  place: FillPlace,
  problems: 'why' | 'error',
): string | undefined {
  const pointers = { asOf: place.asOf, field: (field: Field) => place.cells[field]! };
  const text = formulaText(expression, pointers);
  const shown = problems === 'why' ? `IFERROR(${text},"")` : text;
  return fitsFormula(shown) ? shown : undefined;
}
