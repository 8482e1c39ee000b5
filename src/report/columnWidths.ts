import type { SheetCell } from './sheet.ts';

type Rows = readonly (readonly (SheetCell | null)[])[];

// Digits are narrower than the letters of a proposal; a little air keeps numbers of neighbours apart.
const AIR = 1.8;

/** Characters that a cell's value takes as it is shown. */
export function shownLength({ value, format }: SheetCell): number {
  if (typeof value === 'string') return value.length;
  if (typeof value !== 'number') return 0;
  if (format === 'date') return 10;
  const digits = String(Math.trunc(Math.abs(value))).length;
  const separators = format === 'plain' || format === 'months' ? 0 : Math.floor((digits - 1) / 3);
  return digits + separators + (value < 0 ? 1 : 0) + DECIMALS[format];
}

const DECIMALS: Readonly<Record<SheetCell['format'], number>> = {
  text: 0,
  whole: 0,
  plain: 0,
  date: 0,
  share: 1,
  chance: 3,
  oneDecimal: 2,
  months: 2,
  volts: 3,
  money: 3,
  thousandths: 4,
};

/**
 * Widths that hold every value of a block and every word of its heads, within limits; sentences and labels are not
 * measured, they may run on.
 */
export function fittedWidths(rows: Rows, limits: readonly (readonly [number, number])[]): number[] {
  return limits.map(([least, most], column) => {
    const longest = rows.reduce((width, row) => Math.max(width, neededWidth(row[column])), 0);
    return Math.min(most, Math.max(least, longest));
  });
}

function neededWidth(cell: SheetCell | null | undefined): number {
  if (cell === null || cell === undefined) return 0;
  if (cell.meaning === 'columnHead') return longestWord(String(cell.value)) * BOLD + AIR;
  return MEASURED.includes(cell.meaning) ? shownLength(cell) + AIR : 0;
}

const MEASURED: readonly SheetCell['meaning'][] = ['body', 'wrapped', 'total', 'input'];

const BOLD = 1.15;

const longestWord = (text: string): number => Math.max(...text.split(' ').map((word) => word.length));
