import type { Day } from '../basics/calendar.ts';
import type { Block } from './block.ts';
import type { Field } from './fields.ts';
import { FIELD_SPECS } from './fields.ts';
import type { Findings } from './findings.ts';
import type { Cell } from './inventory.ts';

/** A column of dates: the first and the last day that each cell can mean; NaN = empty. */
export type DateColumn = { readonly first: Float64Array; readonly last: Float64Array };

/** The rows that are batteries, column by column, each as long as there are rows. */
export type Lines = {
  readonly count: number;
  /** The sheet's own row numbers. */
  readonly rows: Int32Array;
  readonly at: ReadonlyMap<Field, number>;
  /** The header text of a field's column; empty where no column holds it. */
  readonly head: (field: Field) => string;
  readonly text: (field: Field) => readonly string[];
  readonly date: (field: Field) => DateColumn;
  readonly number: (field: Field) => Float64Array;
  readonly cell: (line: number, field: Field) => Cell;
  readonly isDateCell: (line: number, field: Field) => boolean;
};

/** What the reading of columns needs besides the rows. */
export type ReadContext = {
  readonly asOf: Day;
  readonly findings: Findings;
  readonly block: Block;
  /** Block indices of the rows that are read. */
  readonly kept: readonly number[];
  readonly at: ReadonlyMap<Field, number>;
  readonly heads: readonly string[];
  readonly from1904: boolean;
  /** Whether `isDateCell` was told, so that plain numbers can be told from dates. */
  readonly knowsDateCells: boolean;
  readonly fromText: boolean;
  readonly dateOrder: 'dayFirst' | 'monthFirst' | undefined;
  readonly temperatureUnit: 'C' | 'F' | undefined;
};

/** The header text of a field's column. */
export function headOf(context: ReadContext, field: Field): string {
  const column = context.at.get(field);
  return column === undefined ? '' : context.heads[column] || FIELD_SPECS[field].label;
}
