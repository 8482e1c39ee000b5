import type { Meaning, Sheet, SheetCell } from '../../src/report/sheet.ts';

/** Points that a line of text takes, and a row of one line. */
const LINE = 13;
const ROW = 15.5;
const TALL: Partial<Record<Meaning, number>> = { title: 30, subtitle: 19, heading: 26 };

// A very long text would fill pages; the cell holds it all, the row shows its beginning.
const MOST_LINES = 8;

/** Rows as high as their longest text needs; spreadsheets differ in whether they would see to it themselves. */
export function rowHeights(sheet: Sheet): Map<number, { height: number }> {
  const across = new Map(sheet.spans.map(({ row, columns }) => [row, columns]));
  const heights = sheet.rows.map((cells, row): [number, { height: number }] => {
    const lines = cells.map((cell, column) => linesOf(sheet, cell, column, across.get(row)));
    const tall = cells.map((cell) => (cell === null ? 0 : (TALL[cell.meaning] ?? 0)));
    const most = Math.min(MOST_LINES, Math.max(1, ...lines));
    return [row, { height: Math.max(ROW, ...tall, ROW + LINE * (most - 1)) }];
  });
  return new Map(heights);
}

/** Whether a cell's text is wrapped in its column. */
function isWrapped({ meaning }: SheetCell): boolean {
  return meaning === 'columnHead' || meaning === 'wrapped';
}

function linesOf({ widths }: Sheet, cell: SheetCell | null, column: number, across = 1): number {
  if (cell === null || typeof cell.value !== 'string' || TALL[cell.meaning] !== undefined) return 1;
  if (across === 1 && !isWrapped(cell)) return 1;
  const width = widths.slice(column, column + across).reduce((sum, each) => sum + each, 0);
  return wrappedLines(cell.value, (width - MARGINS) / (cell.meaning === 'columnHead' ? BOLD : REGULAR));
}

// The measure of a column is a digit; bold letters are wider, those of a face that stands in for ours wider still.
const BOLD = 1.15;
const REGULAR = 0.9;

// Both edges and the indent, in characters.
const MARGINS = 2;

/** Lines that a text takes when its words are wrapped at a width in characters. */
function wrappedLines(text: string, width: number): number {
  const room = Math.max(1, Math.floor(width));
  let [lines, used] = [1, 0];
  for (const word of text.slice(0, room * MOST_LINES * 2).split(/\s+/)) {
    const joined = used === 0 ? word.length : used + 1 + word.length;
    if (joined > room && used > 0) lines += 1;
    used = joined > room ? word.length : joined;
    lines += Math.floor(Math.max(0, used - 1) / room);
    used = used > room ? ((used - 1) % room) + 1 : used;
  }
  return lines;
}
