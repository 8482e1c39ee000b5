import type { Day } from '../basics/calendar.ts';
import type { Battery, Construction, Life, RemovalMeaning } from '../service/battery.ts';
import type { Field } from './fields.ts';
import type { FindingKind } from './findingKinds.ts';
import type { Subject } from './subject.ts';
import type { SheetParts } from './sheetParts.ts';

/** What a cell holds; a formula error keeps its code (`#N/A`) and, where there is one, its sentence. */
export type Cell = string | number | boolean | null | undefined | CellError;

/** A cell that shows an error. */
export type CellError = { readonly error: string; readonly message?: string };

/** A sheet as plain rows of cells, with what is known about it besides. Row and column numbers are the sheet's own, from 1. */
export type SheetRows = {
  readonly rows: readonly (readonly Cell[])[];
  readonly name?: string;
  /** The sheet's own number of `rows[0]` (default 1). */
  readonly firstRow?: number;
  /** Tells whether the cell at these indices of `rows` (from 0) is formatted as a date. */
  readonly isDateCell?: (rowIndex: number, columnIndex: number) => boolean;
  /** The sheet's own numbers of rows that are hidden or filtered away. */
  readonly hiddenRows?: ReadonlySet<number>;
  /** A table or range to read instead of the whole: its first row is the header. */
  readonly range?: CellRange;
  /**
   * True where the workbook counts its days from 1904. Cells that `isDateCell` names have been converted to the
   * 1900 system already; other numbers in date columns are converted on reading.
   */
  readonly from1904?: boolean;
  /** True where the sheet was a text file (.csv): numbers that arrive as text are then nothing to report. */
  readonly fromText?: boolean;
};

/** A block of cells, numbers from 1, both ends included. */
export type CellRange = {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
};

/** One thing to check: where it stands, what stands there and what was done with it. */
export type Finding = {
  readonly kind: FindingKind;
  /** The sheet's own row number. */
  readonly row: number;
  /** The header of the column; empty where the whole row is meant. */
  readonly column: string;
  readonly given: string;
  readonly done: string;
  /** What many findings have in common (a maker's codes, a column): they are decided together. */
  readonly group?: string;
  /** What a decision about all findings of the group would be about, where there is one. */
  readonly subject?: Subject;
  /** The key of the settings file that decides it, where one does; a pane has buttons for it. */
  readonly setting?: string;
  /** How many rows it stands for (default 1): a whole column, all codes of a maker. */
  readonly count?: number;
  /** The sheet, where it is another than the inventory. */
  readonly sheet?: string;
};

/** How many rows were read and what became of them; the last four add up to the first. */
export type RowCounts = {
  readonly read: number;
  readonly used: number;
  readonly repaired: number;
  readonly ageUnknown: number;
  readonly leftOut: number;
};

/** One distinct text of the removal-cause column and what it was taken to mean; `guessed` = not from the settings. */
export type RemovalCause = {
  readonly text: string;
  readonly count: number;
  readonly meaning: RemovalMeaning;
  readonly guessed: boolean;
};

/**
 * One distinct text and the construction that it was taken for. `from`: the settings say so, its words do, or nothing
 * does, so AGM was taken.
 */
export type ConstructionText = {
  readonly text: string;
  readonly field: Field;
  readonly count: number;
  readonly construction: Construction;
  readonly from: 'settings' | 'words' | 'assumed';
};

/**
 * Since when every removal is on record. `option`: the user said so; `column`: each row tells since when it was
 * watched; `assumed`: the month of the earliest removal; `never`: survivors only, every row enters at today's age.
 */
export type RecordStart = {
  readonly date: Day | undefined;
  readonly from: 'option' | 'column' | 'assumed' | 'never';
};

/** An inventory as read: batteries, lives, counts and everything that should be looked at. */
export type Inventory = {
  readonly columns: Readonly<Partial<Record<Field, string>>>;
  readonly batteries: readonly Battery[];
  readonly lives: readonly Life[];
  readonly rows: RowCounts;
  readonly leftOutReasons: Readonly<Record<string, number>>;
  readonly toCheck: readonly Finding[];
  readonly causes: readonly RemovalCause[];
  readonly recordStart: RecordStart;
  /** The layout by which each maker's codes were read ("" = rows that name no maker). */
  readonly layouts: Readonly<Record<string, string>>;
  /** What one of each maker's codes means in its layout: "0324-117 is March 2024"; empty where none fits. */
  readonly layoutMeanings: Readonly<Record<string, string>>;
  /** Each distinct text that tells a construction, the most frequent first. */
  readonly constructions: readonly ConstructionText[];
  /** How the sheet was taken apart: titles, header, columns. */
  readonly parts: SheetParts;
  readonly notes: readonly string[];
};
