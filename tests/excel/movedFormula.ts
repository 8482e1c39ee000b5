import { address } from '../../src/report/sheet.ts';
import { rangeOf } from '../../taskpane/host/cellAddress.ts';

// What is no reference of its own: texts, names of sheets in quotes, columns of tables, names of functions.
const PIECES = /"[^"]*"|'[^']*'|\[[^\]]*\]|\$?[A-Z]{1,3}\$?\d{1,7}(?![\w.(])|[\w.]+/gi;

/** A formula as the program writes it further down or to the right, where one is given for many cells. */
export function movedFormula(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return formula.replace(PIECES, (piece) => {
    const [, fixedColumn, letters, fixedRow, digits] = /^(\$?)([A-Z]{1,3})(\$?)(\d+)$/i.exec(piece) ?? [];
    const at = letters === undefined ? undefined : rangeOf(`${letters}${digits!}`);
    if (at === undefined) return piece;
    const row = at.startRow + (fixedRow === '$' ? 0 : rows);
    const column = at.startColumn + (fixedColumn === '$' ? 0 : columns);
    const [, movedLetters, movedDigits] = /^([A-Z]+)(\d+)$/.exec(address(row, column))!;
    return `${fixedColumn!}${movedLetters!}${fixedRow!}${movedDigits!}`;
  });
}
