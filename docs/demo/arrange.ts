import type { Cells } from './columns.ts';
import { COLUMNS } from './columns.ts';
import type { Row } from './register.ts';
import type { Site } from './service.ts';
import { SITES } from './service.ts';

/** Title, note and two header rows stand above the first row of the register. */
export const ROWS_ABOVE = 4;

const HEADED: readonly string[] = ['Isvarg Pass', 'Kaldmoor', 'Brattmyr', 'Tindvakt', 'Hrimdal'];
const SUBTOTALLED: readonly string[] = ['Norrfell Main', 'Isvarg Pass', 'Kaldmoor', 'Hrimdal'];

/** The rows as they stand on the sheet: numbered, with station headings, subtotals, blank rows and a total. */
export function arrangeRows(rows: readonly Row[]): readonly Row[] {
  const arranged: Row[] = [];
  let number = 0;
  for (const site of SITES) {
    if (HEADED.includes(site.name)) arranged.push(line('heading', { number: site.name.toUpperCase() }));
    const first = arranged.length;
    for (const row of rows.filter((candidate) => candidate.site === site))
      arranged.push(Object.assign(row, { cells: { number: (number += 1), ...row.cells } }));
    if (SUBTOTALLED.includes(site.name)) arranged.push(subtotal(site, arranged, first), line('blank', {}));
  }
  return [...arranged, line('total', { number: `Total ${number} rows`, pricePaid: sumOf(arranged, 0) })];
}

const line = (kind: Row['kind'], cells: Cells): Row => ({ kind, cells });

function subtotal(site: Site, arranged: readonly Row[], first: number): Row {
  return line('subtotal', { number: `Subtotal ${site.name}`, pricePaid: sumOf(arranged, first) });
}

function sumOf(arranged: readonly Row[], first: number): Cells['pricePaid'] {
  const column = columnLetters(COLUMNS.findIndex(({ key }) => key === 'pricePaid'));
  const prices = arranged.slice(first).map(({ kind, cells }) => (kind === 'battery' ? cells.pricePaid : 0));
  const result = prices.reduce<number>((sum, price) => sum + (typeof price === 'number' ? price : 0), 0);
  const range = `${column}${ROWS_ABOVE + first + 1}:${column}${ROWS_ABOVE + arranged.length}`;
  return { formula: `SUBTOTAL(9,${range})`, result: Math.round(result * 100) / 100, format: '#,##0.00' };
}

/** The letters of a column, counted from 0. */
export function columnLetters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : columnLetters(Math.floor(index / 26) - 1) + last;
}
