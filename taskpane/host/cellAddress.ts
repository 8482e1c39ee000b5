/** A block of cells; rows and columns count from 0, the ends belong to it. */
export type CellRange = {
  readonly startRow: number;
  readonly startColumn: number;
  readonly endRow: number;
  readonly endColumn: number;
};

/** The block that an address such as `A1:D10` or `$C$3` names, or undefined for anything else. */
export function rangeOf(address: string): CellRange | undefined {
  const match = /^\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/i.exec(address);
  if (match === null) return undefined;
  const [, firstColumn, firstRow, lastColumn = firstColumn, lastRow = firstRow] = match;
  return {
    startRow: Number(firstRow) - 1,
    startColumn: columnNumber(firstColumn!),
    endRow: Number(lastRow) - 1,
    endColumn: columnNumber(lastColumn!),
  };
}

const columnNumber = (letters: string): number =>
  [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
