import type { Cell, SheetRows } from './inventory.ts';
import { isBlank } from './cells.ts';

/** The part of a sheet that is read, with its place on the sheet. Indices count from 0 inside the block. */
export type Block = {
  readonly rows: readonly (readonly Cell[])[];
  readonly width: number;
  /** The sheet's own number of a row of the block. */
  readonly rowNumber: (index: number) => number;
  readonly isDateCell: (row: number, column: number) => boolean;
};

/** The range of a sheet that is to be read, or all of it, without the blank rows at its end. */
export function blockOf(sheet: SheetRows): Block {
  const { range, firstRow = 1, isDateCell } = sheet;
  const top = range === undefined ? 0 : Math.max(0, range.top - firstRow);
  const left = range === undefined ? 0 : range.left - 1;
  const bottom = range === undefined ? sheet.rows.length : range.bottom - firstRow + 1;
  const rows = range === undefined ? sheet.rows : cut(sheet.rows, top, bottom, left, range.right);
  return {
    rows: withoutBlankEnd(rows),
    width: rows.reduce((widest, row) => Math.max(widest, row.length), 0),
    rowNumber: (index) => firstRow + top + index,
    isDateCell: (row, column) => isDateCell?.(row + top, column + left) ?? false,
  };
}

const cut = (
  rows: SheetRows['rows'],
  top: number,
  bottom: number,
  left: number,
  right: number,
): readonly (readonly Cell[])[] => rows.slice(top, bottom).map((row) => row.slice(left, right));

function withoutBlankEnd(rows: readonly (readonly Cell[])[]): readonly (readonly Cell[])[] {
  let end = rows.length;
  while (end > 0 && rows[end - 1]!.every(isBlank)) end -= 1;
  return end === rows.length ? rows : rows.slice(0, end);
}
