import type { CellRange } from '../cellAddress.ts';
import { rangeOf } from '../cellAddress.ts';
import { address } from '../../../src/report/sheet.ts';
import type { HostCell } from '../sheetHost.ts';
import type { CellToWrite } from './cellXml.ts';
import { cellXml, valueOf } from './cellXml.ts';
import { columnStyles } from './columnsXml.ts';
import { attribute, elements, openingTag, prefixOf, withAttribute } from './xml.ts';

/** Cells to be written, by row and column. */
export type CellsToWrite = ReadonlyMap<number, ReadonlyMap<number, CellToWrite>>;

/** A sheet's text in three pieces: what stands before its rows, the rows, what stands after. */
export type SheetText = { readonly before: string; readonly rows: string; readonly after: string };

/** Parts the text of a sheet; the rows come without the element around them. */
export function sheetText(xml: string): SheetText {
  const name = `${prefixOf(xml)}sheetData`;
  const open = new RegExp(`<${name}(?:\\s[^>]*)?(/?)>`).exec(xml);
  if (open === null) throw new Error('The sheet has no rows to write into');
  const start = open.index + open[0].length;
  const before = xml.slice(0, open.index);
  if (open[1] === '/')
    return { before: `${before}<${name}>`, rows: '', after: `</${name}>${xml.slice(start)}` };
  const end = xml.indexOf(`</${name}>`, start);
  return { before: xml.slice(0, start), rows: xml.slice(start, end), after: xml.slice(end) };
}

/**
 * How a value is written into a cell of some style: a file that counts its days from 1904 has dates of its own.
 */
export type ValueInStyle = (value: HostCell, style: number) => HostCell;

type Writing = { readonly prefix: string; readonly style: StyleOf; readonly value: ValueInStyle };

/** The rows of a sheet with cells written into them; every other row stays as it is. */
export function withCells({ before, rows }: SheetText, cells: CellsToWrite, value: ValueInStyle): string {
  const prefix = prefixOf(before);
  const writing = { prefix, style: columnStyles(before), value };
  const pieces: string[] = [];
  const wanted = [...cells.keys()].sort((a, b) => a - b);
  let [next, kept, last] = [0, 0, -1];
  const addNew = (until: number): void => {
    for (; next < wanted.length && wanted[next]! < until; next += 1)
      pieces.push(newRow(writing, wanted[next]!, cells.get(wanted[next]!)!));
  };
  for (const { index, 0: row } of rows.matchAll(elements(`${prefix}row`))) {
    const number = rowNumber(row, last);
    last = number;
    if (next >= wanted.length || number < wanted[next]!) continue;
    pieces.push(rows.slice(kept, index));
    addNew(number);
    const changed = wanted[next] === number;
    pieces.push(changed ? changedRow(writing, row, number, cells.get(number)!) : row);
    if (changed) next += 1;
    kept = index + row.length;
  }
  pieces.push(rows.slice(kept));
  addNew(Infinity);
  return pieces.join('');
}

type StyleOf = (column: number) => number;

// A row may leave its number out: it is the one after the last.
const rowNumber = (row: string, last: number): number =>
  Number(attribute(openingTag(row), 'r') ?? last + 2) - 1;

function newRow(writing: Writing, row: number, cells: ReadonlyMap<number, CellToWrite>): string {
  const { prefix } = writing;
  return changedRow(writing, `<${prefix}row r="${row + 1}"></${prefix}row>`, row, cells);
}

function changedRow(
  writing: Writing,
  row: string,
  number: number,
  cells: ReadonlyMap<number, CellToWrite>,
): string {
  const { prefix, style } = writing;
  // Which columns a row spans is a hint only, and wrong now.
  const tag = withAttribute(openingTag(row), 'spans', undefined).replace(/\/>$/, '>');
  const own = ['1', 'true'].includes(attribute(tag, 'customFormat') ?? '')
    ? Number(attribute(tag, 's') ?? 0)
    : undefined;
  const all = cellsOf(prefix, row);
  for (const [column, cell] of cells) {
    const there = all.get(column);
    const written = writtenCell(writing, { row: number, column }, there, cell, own ?? style(column));
    if (written === '') all.delete(column);
    else all.set(column, written);
  }
  const ordered = [...all].sort(([a], [b]) => a - b).map(([, text]) => text);
  return `${tag}${ordered.join('')}</${prefix}row>`;
}

/** The cells of a row by their columns; a cell may leave its address out. */
export function cellsOf(prefix: string, row: string): Map<number, string> {
  const found = new Map<number, string>();
  let last = -1;
  for (const [cell] of row.matchAll(elements(`${prefix}c`))) {
    const place = rangeOf(attribute(openingTag(cell), 'r') ?? '');
    last = place?.startColumn ?? last + 1;
    found.set(last, cell);
  }
  return found;
}

function writtenCell(
  { prefix, value }: Writing,
  { row, column }: { readonly row: number; readonly column: number },
  there: string | undefined,
  cell: CellToWrite,
  plain: number,
): string {
  const had = there === undefined ? plain : Number(attribute(openingTag(there), 's') ?? 0);
  if (cell.keepsFormula) return there === undefined ? '' : withAnswer(prefix, there, value(cell.value, had));
  const style = typeof cell.style === 'function' ? cell.style(had) : (cell.style ?? had);
  if (cell.value === null && cell.formula === undefined && style === 0) return '';
  return cellXml(prefix, row, column, style, { ...cell, value: value(cell.value, style) });
}

/** A formula's cell with another answer; a cell without a formula stays. */
function withAnswer(prefix: string, there: string, value: HostCell): string {
  const formula = elements(`${prefix}f`).exec(there)?.[0];
  if (formula === undefined) return there;
  const tag = withAttribute(openingTag(there), 't', undefined);
  if (value === null) return `${tag}${formula}</${prefix}c>`;
  const { type, text } = valueOf(value);
  return `${tag.replace(/>$/, `${type}>`)}${formula}<${prefix}v>${text}</${prefix}v></${prefix}c>`;
}

/** What stands before the rows, with the block that the sheet uses widened to hold the cells. */
export function withDimension(before: string, cells: CellsToWrite): string {
  const element = elements(`${prefixOf(before)}dimension`).exec(before)?.[0];
  const range = element && rangeOf(attribute(openingTag(element), 'ref') ?? '');
  if (!element || !range) return before;
  const rows = [...cells.keys(), range.startRow, range.endRow];
  const columns = [...cells.values()].flatMap((row) => [...row.keys()]);
  const wide = extent([...columns, range.startColumn, range.endColumn]);
  const tall = extent(rows);
  const ref = blockAddress({ startRow: tall[0], endRow: tall[1], startColumn: wide[0], endColumn: wide[1] });
  return before.replace(element, withAttribute(element, 'ref', ref));
}

const extent = (numbers: readonly number[]): [number, number] =>
  numbers.reduce<[number, number]>(
    ([low, high], each) => [Math.min(low, each), Math.max(high, each)],
    [Infinity, -Infinity],
  );

/** The address of a block, such as A2:C9. */
export function blockAddress({ startRow, startColumn, endRow, endColumn }: CellRange): string {
  return `${address(startRow, startColumn)}:${address(endRow, endColumn)}`;
}
