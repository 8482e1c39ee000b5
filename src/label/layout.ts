import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';

/** A piece of a layout that says part of a date. */
export type DatePiece = 'yyyy' | 'yy' | 'y' | 'MM' | 'dd' | 'ooo' | 'kk' | 'WW' | 'A' | 'a12';

/** How the pieces of a layout name a day: by month, by the day of the year, or by the week. */
export type CalendarKind = 'month' | 'ordinal' | 'week';

/** How a maker writes manufacture codes, ready to read many of them. */
export type Layout = {
  readonly text: string;
  /** Takes a code apart; its groups follow `pieces`. */
  readonly pattern: RegExp;
  readonly pieces: readonly (DatePiece | 'lot')[];
  readonly calendar: CalendarKind;
  /** Digits of a code without its lot; a number with one fewer has lost a leading zero. */
  readonly digits: number;
  /** A code that fits, for sentences. */
  readonly example: string;
};

/** The layout that is meant where none is named: month, year, lot. */
export const DEFAULT_LAYOUT = 'MMyy-lot';

/** Letters that stand for January to December where the maker leaves out the I. */
export const MONTH_LETTERS_WITHOUT_I = 'ABCDEFGHJKLM';

/** Letters that stand for January to December where the maker counts the I. */
export const MONTH_LETTERS_WITH_I = 'ABCDEFGHIJKL';

const PIECES = /yyyy|yy|y|ooo|a12|lot|MM|dd|kk|WW|A|[^]/g;
const PIECE_LIST = 'yyyy yy y MM dd ooo kk WW A a12 lot';
const LONGEST_LAYOUT = 40;

const EXAMPLES: Readonly<Record<DatePiece | 'lot', string>> = {
  ...{ yyyy: '2024', yy: '24', y: '4', MM: '03', dd: '15', ooo: '075' },
  ...{ kk: '24', WW: '11', A: 'C', a12: 'C', lot: '117' },
};

/** How many characters of a code a piece takes; a lot takes any number. */
export const WIDTHS: Readonly<Record<DatePiece | 'lot', number>> = {
  ...{ yyyy: 4, yy: 2, y: 1, MM: 2, dd: 2, ooo: 3, kk: 2, WW: 2, A: 1, a12: 1, lot: 0 },
};

// What a set of date pieces must be, each piece once: a year with a month (and a day), with the day of the
// year, or the year of the week with the week.
const CALENDARS: readonly (readonly [RegExp, CalendarKind])[] = [
  [/^(A|MM|a12) (dd )?(y|yy|yyyy)$/, 'month'],
  [/^ooo (y|yy|yyyy)$/, 'ordinal'],
  [/^WW kk$/, 'week'],
];

const compiled = new Map<string, Outcome<Layout>>();
const MOST_LAYOUTS_KEPT = 500;

/**
 * A layout ready to read codes, from its text. Read left to right, the longest piece first: `yyyy yy y` year,
 * `MM` month, `dd` day, `ooo` day of the year, `kk WW` ISO year and week, `A` month letter A to M without I,
 * `a12` month letter A to L with I, `lot`; anything else stands for itself, and `-` also for an en dash,
 * a slash or a blank. The lot may be missing in a code, and what stands between it and the date with it.
 * @param text  layout, up to 40 characters; the pieces' upper and lower case matter
 * @returns the layout
 * @problem badInput  when it does not name, each piece once, a year with a month, a year with ooo, or kk with WW
 * @example compileLayout('MMyy-lot').value.example // "0324-117"
 */
export function compileLayout(text: string): Outcome<Layout> {
  const known = compiled.get(text);
  if (known !== undefined) return known;
  const layout = newLayout(text);
  if (compiled.size >= MOST_LAYOUTS_KEPT) compiled.clear();
  compiled.set(text, layout);
  return layout;
}

function newLayout(text: string): Outcome<Layout> {
  const tokens: readonly string[] = text.trim().match(PIECES) ?? [];
  const pieces = tokens.filter(isPiece);
  const calendar = calendarOf(pieces);
  if (calendar === undefined || text.length > LONGEST_LAYOUT) {
    return problem('badInput', 'notALayout', 'layout', text, { more: { allowed: PIECE_LIST } });
  }
  const example = tokens.map((token) => (isPiece(token) ? EXAMPLES[token] : token)).join('');
  const digits = tokens.reduce((sum, token) => sum + digitsOf(token), 0);
  return answer({ text: text.trim(), pattern: patternOf(tokens), pieces, calendar, digits, example });
}

function calendarOf(pieces: readonly (DatePiece | 'lot')[]): CalendarKind | undefined {
  const lots = pieces.filter((piece) => piece === 'lot').length;
  const dates = pieces.filter((piece) => piece !== 'lot').sort();
  return lots > 1 ? undefined : CALENDARS.find(([allowed]) => allowed.test(dates.join(' ')))?.[1];
}

const isPiece = (token: string): token is DatePiece | 'lot' => Object.hasOwn(EXAMPLES, token);

function digitsOf(token: string): number {
  if (!isPiece(token)) return /\d/.test(token) ? 1 : 0;
  return token === 'A' || token === 'a12' ? 0 : WIDTHS[token];
}

// Blanks may stand anywhere in a code, so the parts are joined by "any blanks".
function patternOf(tokens: readonly string[]): RegExp {
  const at = tokens.indexOf('lot');
  if (at < 0) return new RegExp(`^${tokens.map(partOf).join('\\s*')}$`, 'i');
  const [first, last] = aroundLot(tokens, at);
  const optional = `(?:${tokens.slice(first, last).map(partOf).join('\\s*')})?`;
  const before = tokens.slice(0, first).map(partOf);
  const after = tokens.slice(last).map(partOf);
  return new RegExp(`^${[...before, optional, ...after].join('\\s*')}$`, 'i');
}

// The literals that go missing together with the lot: those before it, or, where it stands first, after it.
function aroundLot(tokens: readonly string[], at: number): readonly [number, number] {
  let [first, last] = [at, at + 1];
  while (first > 0 && !isPiece(tokens[first - 1]!)) first -= 1;
  if (first > 0) return [first, last];
  while (last < tokens.length && !isPiece(tokens[last]!)) last += 1;
  return [first, last];
}

function partOf(token: string): string {
  if (token === 'lot') return '([A-Z0-9].*?)';
  if (token === 'A' || token === 'a12') return '([A-Z])';
  if (isPiece(token)) return `(${Array(WIDTHS[token]).fill('\\d').join('\\s*')})`;
  if (token === '-') return '(?:[-\u2010\u2011\u2013/]|\\s)';
  return /\s/.test(token) ? '\\s*' : token.replace(/[\\^$.*+?()[\]{}|/]/, '\\$&');
}
