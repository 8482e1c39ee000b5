import type { CellStyle } from 'hucre/xlsx';
import type { Sheet } from '../../../src/report/sheet.ts';
import type { CellRange } from '../cellAddress.ts';
import type { HostCell, NamedPlace } from '../sheetHost.ts';

/**
 * What has become of a workbook since it was opened, as plain data: what a saved file is made from, beside the bytes of
 * the original. What is not mentioned is kept as the original has it. Rows and columns count from 0.
 */
export type WorkbookState = {
  /** Every sheet that there is now, in order. A sheet of the original that none of them names is deleted. */
  readonly sheets: readonly SheetState[];
  /** Names defined or moved since; other names are kept. */
  readonly names?: readonly NamedPlace[];
};

/** One sheet of now. */
export type SheetState = {
  readonly name: string;
  /** Its name in the original file; left out for a new sheet. */
  readonly original?: string;
  /** A new sheet that was drawn from our own data, charts included; `cells` are the changes on top. */
  readonly drawn?: Sheet;
  /** Whether it is hidden now; left out where that has not been changed. */
  readonly hidden?: boolean;
  /** The cells that were changed since; every filled cell of a new sheet that is not drawn. */
  readonly cells: readonly ChangedCell[];
  /** Formula cells of the original that were not changed themselves but have another answer now. */
  readonly recalculated?: readonly Answer[];
  /** Tables as they are now that were added or have grown: matched by name with those of the original. */
  readonly tables?: readonly ChangedTable[];
  /** Widths in characters of columns that were added or changed. */
  readonly widths?: ReadonlyMap<number, number>;
  /** Merged blocks, all of them, where they were changed. */
  readonly merges?: readonly CellRange[];
  /** Whether rows or columns were inserted or deleted: what hangs on places does not move with them, and is said. */
  readonly shifted?: boolean;
};

/** A cell as it is now. */
export type ChangedCell = {
  readonly row: number;
  readonly column: number;
  /** Its value; of a formula the answer that is shown, of one that spills the first cell's. Null empties the cell. */
  readonly value: HostCell;
  /** Without "=", as the grid writes it: `CRANK.MANUFACTUREDATE(A2:A9)`. */
  readonly formula?: string;
  /** The answers of a formula that spills, row by row, its own first: those cells are not listed again. */
  readonly spill?: readonly (readonly HostCell[])[];
  /** Code of its number format, such as `yyyy-mm-dd`, where that was changed. */
  readonly numberCode?: string;
  /** Its look, where that was changed; takes the place of all it had. */
  readonly look?: CellStyle;
};

/** The answer that a formula of the original has now. */
export type Answer = { readonly row: number; readonly column: number; readonly value: HostCell };

/** A table that was added, or one of the original that has more columns or rows now. */
export type ChangedTable = {
  readonly name: string;
  /** Heads and data rows; a total row is not counted in. */
  readonly block: CellRange;
  readonly heads: readonly string[];
  /** Formula of a calculated column, by its head, without "=". */
  readonly formulas?: ReadonlyMap<string, string>;
};

/** A file to be saved, and in plain words what of the original it does not have any more. */
export type SavedWorkbook = { readonly bytes: Uint8Array; readonly lost: readonly string[] };
