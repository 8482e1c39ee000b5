import type { Meaning, Sheet, SheetCell } from '../../src/report/sheet.ts';
import { BOLD, SPACE, textWidth } from './textWidth.ts';

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
  const size = SIZES[cell.meaning] ?? 1;
  return wrappedLines(cell.value, (width - (isWrapped(cell) ? INDENTED : EDGES)) / size);
}

// The faces of these are bold, or smaller than the others.
const SIZES: Partial<Record<Meaning, number>> = { columnHead: BOLD, caution: BOLD, note: 0.9 };

// Both edges of a cell, and with them an indent, in characters.
const EDGES = 1;
const INDENTED = 2;

/** Lines that a text takes when its words are wrapped at a width in characters. */
function wrappedLines(text: string, room: number): number {
  let [lines, used] = [1, 0];
  for (const word of text.slice(0, Math.ceil(room) * MOST_LINES * 4).split(/\s+/)) {
    const wide = textWidth(word);
    const joined = used === 0 ? wide : used + SPACE + wide;
    if (joined > room && used > 0) lines += 1;
    used = joined > room ? wide : joined;
    lines += used > room ? Math.ceil(used / room) - 1 : 0;
    used = used > room ? used % room : used;
  }
  return lines;
}
