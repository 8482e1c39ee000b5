import type { CellError } from '../../functions/cell.ts';
import type { Outcome } from '../../src/basics/outcome.ts';
import type { Block, Format, Sheet } from '../../src/report/sheet.ts';

/** What a cell of a workbook holds; a date is its serial in the 1900 system, an empty cell is null. */
export type HostCell = number | string | boolean | null | CellError;

/** A cell of a sheet; rows and columns count from 0. */
export type CellAt = { readonly sheet: string; readonly row: number; readonly column: number };

/** A block of a sheet. */
export type SheetBlock = { readonly sheet: string; readonly block: Block };

/** A table that someone defined: heads included in its block. */
export type HostTable = { readonly name: string; readonly block: Block; readonly heads: readonly string[] };

/** What can be known about a sheet without reading its cells. */
export type SheetInfo = {
  readonly name: string;
  readonly hidden: boolean;
  readonly isProtected: boolean;
  /** The block that holds anything, or undefined where the sheet is empty. */
  readonly used: Block | undefined;
  readonly tables: readonly HostTable[];
};

/** What is open, and where its user stands. */
export type WorkbookInfo = {
  readonly fileName: string;
  readonly sheets: readonly SheetInfo[];
  readonly selected: SheetBlock | undefined;
  /** Whether its dates are counted from 1904; cells with a date format arrive converted. */
  readonly dates1904: boolean;
  /** Sentences about what is not as it seems in the file. */
  readonly warnings: readonly string[];
};

/** The cells of a block; rows and columns of the sets count from the block's own corner. */
export type BlockContents = {
  readonly rows: readonly (readonly HostCell[])[];
  /** For each column that has any, the rows whose number is formatted as a date. */
  readonly dateCells: ReadonlyMap<number, ReadonlySet<number>>;
  /** Rows hidden by hand or by a filter. */
  readonly hiddenRows: ReadonlySet<number>;
};

/** How long work can be followed and given up: `progress` hears shares from 0 to 1; an aborted signal ends it. */
export type Work = { readonly signal: AbortSignal; readonly progress: (share: number) => void };

/** One column to be added beside an inventory. */
export type FilledColumn = {
  readonly head: string;
  readonly format: Format;
  /** Its formula, without "=", for the first row of the data; structured references where it goes into a table. */
  readonly formula?: string;
  /** Its values, one for each row of the data, in place of a formula. */
  readonly values?: readonly HostCell[];
};

/**
 * Where and how columns are added. `tableColumn`: calculated columns of the named table; `spill`: one formula in the
 * first row of the data, which answers for all rows; `values`: no formulas.
 */
export type FillRequest = {
  readonly sheet: string;
  readonly table?: string;
  readonly as: 'tableColumn' | 'spill' | 'values';
  /** Row of the heads and number of data rows under it. */
  readonly headRow: number;
  readonly rows: number;
  /** First column that is written; the others follow to its right. */
  readonly column: number;
  readonly columns: readonly FilledColumn[];
  /** Whether cells that are not empty may be overwritten: the user has said yes. */
  readonly overwrite: boolean;
};

/** A workbook-wide name for one cell. */
export type NamedPlace = { readonly name: string; readonly at: CellAt };

/**
 * What the pane asks of a spreadsheet, whichever it is. Nothing is ever overwritten without `overwrite`; what fails
 * or is given up leaves the workbook as it was; what can't be done is a problem whose sentence says what to do.
 */
export type SheetHost = {
  readonly kind: 'builtIn' | 'excel';
  /** What is open: sheets, tables, used blocks, selection. */
  readonly workbook: () => Promise<Outcome<WorkbookInfo>>;
  readonly readBlock: (at: SheetBlock, work?: Work) => Promise<Outcome<BlockContents>>;
  readonly select: (at: SheetBlock) => Promise<Outcome<void>>;
  /** Tells `listener` where the user goes; the answer ends that. */
  readonly onSelect: (listener: (at: SheetBlock) => void) => () => void;
  /**
   * Adds sheets, all or none. They are built under temporary names and get their own at the end; a sheet that
   * exists is never touched (problem when its name is taken). The first one is shown afterwards.
   */
  readonly addSheets: (sheets: readonly Sheet[], work?: Work) => Promise<Outcome<void>>;
  /** Writes a sheet of our own over the one of the same name, or adds it: for the sheet of settings. */
  readonly replaceSheet: (sheet: Sheet, work?: Work) => Promise<Outcome<void>>;
  /** Makes a workbook of its own from sheets: opened by the host, or given to the user as a file. */
  readonly newWorkbook: (fileName: string, sheets: readonly Sheet[]) => Promise<Outcome<void>>;
  /** Goes on in a copy of what is open, under a name that says so. */
  readonly workInCopy: () => Promise<Outcome<string>>;
  readonly fill: (request: FillRequest, work?: Work) => Promise<Outcome<void>>;
  /**
   * Adds one row under the last of a sheet of records (`Tests`, `Charges`), which is made with these heads where it
   * does not exist. A sheet that has other heads gets each cell under the head of its own name.
   * @returns the row that was written, from 0
   */
  readonly appendRow: (
    sheet: string,
    heads: readonly string[],
    cells: readonly { readonly value: HostCell; readonly format: Format }[],
  ) => Promise<Outcome<number>>;
  /** Names a cell for the whole workbook, in place of what the name meant before. */
  readonly nameCell: (place: NamedPlace) => Promise<Outcome<void>>;
  /** Where a workbook-wide name stands, or undefined. */
  readonly namedCell: (name: string) => Promise<Outcome<CellAt | undefined>>;
  /** Writes our formulas anew where the host shows that it does not know them. @returns how many */
  readonly repairFormulas: (work?: Work) => Promise<Outcome<number>>;
};
