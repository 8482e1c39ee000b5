/**
 * What a sheet is, as data: every host draws the same sheet from it (an .xlsx writer, the built-in workbook, Excel).
 * Rows and columns count from 0.
 */
export type Sheet = {
  readonly name: string;
  readonly rows: readonly (readonly (SheetCell | null)[])[];
  /** Width of each column in characters. */
  readonly widths: readonly number[];
  /** Rows kept in sight while scrolling, counted from the top. */
  readonly frozenRows: number;
  /** Rows repeated at the top of every printed page, first and last. */
  readonly repeatedRows?: readonly [number, number];
  /** How many columns are printed, counted from the left; all where left out. */
  readonly printedColumns?: number;
  readonly names: readonly NamedCell[];
  readonly tables: readonly Table[];
  readonly charts: readonly Chart[];
  /** Rows before which a printed page ends. */
  readonly pageBreaks: readonly number[];
  /** Cells drawn as one across columns, for headings and long sentences. */
  readonly spans: readonly Span[];
  /** How its dates are shown; default year first. */
  readonly dateShown?: DateShown;
};

/** The order of year, month and day in a date: 2026-06-30, 30/06/2026 or 06/30/2026. */
export type DateShown = 'yearFirst' | 'dayFirst' | 'monthFirst';

/** What a cell means on the page; each host has one look for each meaning. */
export type Meaning =
  | 'title'
  | 'subtitle'
  | 'heading'
  | 'columnHead'
  | 'label'
  | 'body'
  | 'wrapped'
  | 'input'
  | 'total'
  | 'note'
  | 'caution';

/** How a number is shown. */
export type Format =
  | 'text'
  | 'whole'
  | 'oneDecimal'
  | 'thousandths'
  | 'volts'
  | 'months'
  | 'share'
  | 'chance'
  | 'money'
  | 'date'
  | 'plain';

/** One cell: a value, or a formula with the value that it has for today's assumptions. */
export type SheetCell = {
  readonly value: string | number | boolean | null;
  /** Without the leading "="; functions that every spreadsheet has had for twenty years, and `CRANK.` ones on request. */
  readonly formula?: string;
  readonly meaning: Meaning;
  readonly format: Format;
};

/** A cell with a name of its own, known on its sheet only, so that two forecasts can share a workbook. */
export type NamedCell = { readonly name: string; readonly row: number; readonly column: number };

/** A block with a head row that can be sorted and filtered. */
export type Table = {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly heads: readonly string[];
};

/** A chart over cells of its own sheet. */
export type Chart = {
  readonly kind: 'column' | 'line';
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  readonly yFormat: Format;
  readonly categories: Block;
  readonly series: readonly { readonly name: string; readonly values: Block }[];
  readonly at: {
    readonly row: number;
    readonly column: number;
    readonly rows: number;
    readonly columns: number;
  };
};

/** A block of cells: first row and column, and how many of each. */
export type Block = {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
};

/** Cells of one row drawn as one. */
export type Span = { readonly row: number; readonly column: number; readonly columns: number };

/** The letters of a column: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26) - 1;
  return (rest >= 0 ? columnLetters(rest) : '') + String.fromCharCode(65 + (column % 26));
}

/** The address of a cell, such as B7. */
export function address(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** The address of a block with its rows and columns held fast, such as $B$7:$C$9. */
export function fixedBlock(block: Block): string {
  const corner = (row: number, column: number): string => `$${columnLetters(column)}$${row + 1}`;
  const last = corner(block.row + block.rows - 1, block.column + block.columns - 1);
  return `${corner(block.row, block.column)}:${last}`;
}

/** A sheet name as formulas write it. */
export function quotedSheet(name: string): string {
  return `'${name.replace(/'/g, "''")}'`;
}
