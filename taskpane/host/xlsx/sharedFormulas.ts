import { columnLetters } from '../../../src/report/sheet.ts';
import type { CellRange } from '../cellAddress.ts';
import { rangeOf } from '../cellAddress.ts';
import type { CellToWrite } from './cellXml.ts';
import { outsideQuotes } from './formulaNames.ts';
import type { CellsToWrite } from './sheetPart.ts';
import { attribute, elements, escaped, openingTag, unescaped } from './xml.ts';

/** A cell whose formula other cells live on: shared by them, or an array that fills them. */
type Master = CellRange & {
  readonly kind: 'shared' | 'array';
  readonly number: string;
  readonly block: string;
  readonly formula: string;
};

/**
 * Rows in which no cell lives on a formula that is about to be overwritten: the next cell of a shared formula takes it
 * over; the cells that an array filled are emptied (added to the cells to write).
 */
export function freedRows(
  rows: string,
  prefix: string,
  cells: CellsToWrite,
): { readonly rows: string; readonly cells: CellsToWrite } {
  const lost = mastersIn(rows, prefix).filter(({ startRow, startColumn }) =>
    isOverwritten(cells, startRow, startColumn),
  );
  const shared = lost.filter(({ kind }) => kind === 'shared');
  const arrays = lost.filter(({ kind }) => kind === 'array');
  return {
    rows: shared.reduce((text, master) => handedOn(text, prefix, master, cells), rows),
    cells: arrays.reduce(withEmptied, cells),
  };
}

const isOverwritten = (cells: CellsToWrite, row: number, column: number): boolean => {
  const cell = cells.get(row)?.get(column);
  return cell !== undefined && !cell.keepsFormula;
};

function mastersIn(rows: string, prefix: string): Master[] {
  const pattern = new RegExp(`<${prefix}c\\s[^>]*>\\s*<${prefix}f\\s[^>]*\\bref=[^>]*>[^<]*`, 'g');
  return (rows.match(pattern) ?? []).flatMap((text): Master[] => {
    const formula = text.slice(text.lastIndexOf(`<${prefix}f`));
    const [place, kind] = [rangeOf(attribute(openingTag(text), 'r') ?? ''), attribute(formula, 't')];
    if (place === undefined || (kind !== 'shared' && kind !== 'array')) return [];
    const [number, block] = [attribute(formula, 'si') ?? '', attribute(formula, 'ref') ?? ''];
    return [{ ...place, kind, number, block, formula: unescaped(formula.slice(openingTag(formula).length)) }];
  });
}

function handedOn(rows: string, prefix: string, master: Master, cells: CellsToWrite): string {
  for (const { index, 0: cell } of rows.matchAll(elements(`${prefix}c`))) {
    const formula = elements(`${prefix}f`).exec(cell)?.[0];
    const place = rangeOf(attribute(openingTag(cell), 'r') ?? '');
    if (formula === undefined || place === undefined || attribute(formula, 'si') !== master.number) continue;
    const { startRow: row, startColumn: column } = place;
    if (isOverwritten(cells, row, column)) continue;
    const moved = shifted(master.formula, row - master.startRow, column - master.startColumn);
    const made = `<${prefix}f t="shared" ref="${master.block}" si="${master.number}">${escaped(moved)}</${prefix}f>`;
    return rows.slice(0, index) + cell.replace(formula, () => made) + rows.slice(index + cell.length);
  }
  return rows;
}

function withEmptied(cells: CellsToWrite, master: Master): CellsToWrite {
  const block = rangeOf(master.block);
  if (block === undefined) return cells;
  const all = new Map(cells);
  for (let row = block.startRow; row <= block.endRow; row += 1) {
    const own = new Map(all.get(row));
    for (let column = block.startColumn; column <= block.endColumn; column += 1)
      if (!own.has(column)) own.set(column, EMPTY);
    all.set(row, own);
  }
  return all;
}

const EMPTY: CellToWrite = { value: null };

const REFERENCE =
  /(?<![\w.$])(?:(\$?)([A-Z]{1,3})(\$?)(\d{1,7})|(\$?)([A-Z]{1,3}):(\$?)([A-Z]{1,3})|(\$?)(\d{1,7}):(\$?)(\d{1,7}))(?![\w(.!])/g;

/** A formula as it reads some rows further down and columns further right. */
export function shifted(formula: string, down: number, right: number): string {
  const column = (fixed: string, letters: string): string =>
    fixed + (fixed ? letters : columnLetters(rangeOf(`${letters}1`)!.startColumn + right));
  const row = (fixed: string, digits: string): string => fixed + (fixed ? digits : Number(digits) + down);
  return outsideQuotes(formula, (piece) =>
    piece.replace(REFERENCE, (_, ...found: string[]) => {
      const [a, b, c, d, e, f, g, h, i, j, k, l] = found as [string, string, string, string, ...string[]];
      if (b !== undefined) return column(a, b) + row(c, d);
      return f !== undefined ? `${column(e!, f)}:${column(g!, h!)}` : `${row(i!, j!)}:${row(k!, l!)}`;
    }),
  );
}
