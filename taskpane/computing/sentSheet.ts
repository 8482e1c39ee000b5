import type { SheetRows } from '../../src/inventory/inventory.ts';
import type { BlockContents, HostCell } from '../host/sheetHost.ts';

/** A block as it crosses to the computing side: plain data, no functions. */
export type SentSheet = {
  readonly name: string;
  readonly rows: readonly (readonly HostCell[])[];
  /** The sheet's own numbers of the block's first row and column, from 1. */
  readonly firstRow: number;
  readonly firstColumn: number;
  readonly dateCells: BlockContents['dateCells'];
  readonly hiddenRows: ReadonlySet<number>;
  readonly from1904: boolean;
  /** Whether the file is text (.csv), in which nothing tells a date from a number. */
  readonly fromText: boolean;
};

/** The same block as the core reads it: rows numbered as the sheet numbers them. */
export function rowsOf({ hiddenRows, firstRow, dateCells, firstColumn, ...sheet }: SentSheet): SheetRows {
  return {
    ...sheet,
    firstRow,
    isDateCell: (row, column) => dateCells.get(column)?.has(row) ?? false,
    hiddenRows: new Set([...hiddenRows].map((row) => row + firstRow)),
  };
}
