import type { Day } from '../basics/calendar.ts';
import { addMonths, dayFromParts, dayParts, FIRST_DAY, LAST_DAY } from '../basics/calendar.ts';
import { isBlank, isError, isPlaceholder } from './cells.ts';
import type { FindingKind } from './findingKinds.ts';
import type { Cell } from './inventory.ts';

/** Which comes first in a text date of figures. */
export type DateOrder = 'dayFirst' | 'monthFirst';

/** A date as read from a cell: its day and the last day that it can mean; no day = the cell counts as empty. */
export type DateReading = { readonly day?: Day; readonly last?: Day; readonly quirk?: FindingKind };

/** What decides how a text date is read. */
export type DateContext = { readonly asOf: Day; readonly order?: DateOrder };

const EMPTY: DateReading = {};
const PLACEHOLDER: DateReading = { quirk: 'placeholder' };
const UNREADABLE: DateReading = { quirk: 'unreadable date' };
const LAST_OF_ALL = 2_958_465;
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const MONTH_NAMES =
  /^(january|february|march|april|may|june|july|august|september|october|november|december|sept)$/;

const ISO = /^(\d{4})-(\d{2})-(\d{2})$/;
const TIME_OF_DAY = /[T ]\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?\s*([ap]m)?\s*(z|[+-]\d{2}:?\d{2})?$/i;

/** The date that a cell holds. Numbers are days of the 1900 system. */
export function readDate(cell: Cell, context: DateContext): DateReading {
  if (typeof cell === 'number') return numberDate(cell);
  if (isBlank(cell)) return EMPTY;
  if (isError(cell)) return { quirk: 'error in the cell' };
  if (typeof cell !== 'string') return UNREADABLE;
  return isPlaceholder(cell) ? PLACEHOLDER : textDate(cell.replaceAll('\u00a0', ' ').trim(), context);
}

function numberDate(value: number): DateReading {
  const day = Math.floor(value);
  if (day >= FIRST_DAY && day <= LAST_DAY) return { day, last: day };
  if ((day >= -1 && day <= 2) || day === LAST_OF_ALL || isPlaceholder(day)) return PLACEHOLDER;
  if (day >= 1970 && day <= 2100) return { quirk: 'year only' };
  return eightFigures(String(value)) ?? UNREADABLE;
}

function eightFigures(text: string): DateReading | undefined {
  const parts = /^(\d{4})(\d{2})(\d{2})$/.exec(text);
  return parts === null ? undefined : dated(parts[1]!, parts[2]!, parts[3]!, 'date written as a number');
}

function dated(year: string, month: string, day: string, quirk?: FindingKind): DateReading {
  const found = dayFromParts(Number(year), Number(month), Number(day));
  if (found === undefined || found < FIRST_DAY || found > LAST_DAY) return UNREADABLE;
  return quirk === undefined ? { day: found, last: found } : { day: found, last: found, quirk };
}

function monthly(year: string, month: string | number): DateReading {
  const day = dayFromParts(Number(year), Number(month), 1);
  if (day === undefined || day < FIRST_DAY || day > LAST_DAY) return UNREADABLE;
  return { day, last: addMonths(day, 1) - 1, quirk: 'text date' };
}

function textDate(given: string, context: DateContext): DateReading {
  const text = given.replace(TIME_OF_DAY, '').trim();
  const iso = ISO.exec(text);
  if (iso !== null) return dated(iso[1]!, iso[2]!, iso[3]!);
  return (
    eightFigures(text) ??
    figureDate(text, context) ??
    namedDate(text.toLowerCase().replace(/\b(\d{1,2})(st|nd|rd|th)\b/, '$1'), context) ??
    (/^(19|20)\d\d$/.test(text) ? { quirk: 'year only' } : UNREADABLE)
  );
}

function figureDate(text: string, context: DateContext): DateReading | undefined {
  const yearFirst = /^(\d{4})[./-](\d{1,2})[./-](\d{1,2})$/.exec(text);
  if (yearFirst !== null) return dated(yearFirst[1]!, yearFirst[2]!, yearFirst[3]!, 'text date');
  const month = /^(\d{4})[./-](\d{1,2})$/.exec(text);
  if (month !== null) return monthly(month[1]!, month[2]!);
  const monthFirst = /^(\d{1,2})[./-](\d{4})$/.exec(text);
  if (monthFirst !== null) return monthly(monthFirst[2]!, monthFirst[1]!);
  const figures = FIGURES.exec(text);
  return figures === null ? undefined : twoWays(figures[1]!, figures[2]!, figures[3]!, context);
}

const FIGURES = /^(\d{1,2})[./-](\d{1,2})[./-](\d{2}|\d{4})$/;

function twoWays(first: string, second: string, year: string, context: DateContext): DateReading {
  const order = orderOf(first, second) ?? context.order;
  const full = fullYear(year, context.asOf);
  if (order === 'dayFirst' || first === second) return dated(full, second, first, 'text date');
  if (order === 'monthFirst') return dated(full, first, second, 'text date');
  return Number(first) > 12 ? UNREADABLE : { quirk: 'text date that reads two ways' };
}

function orderOf(first: string, second: string): DateOrder | undefined {
  if (Number(first) > 12 && Number(second) <= 12) return 'dayFirst';
  return Number(second) > 12 && Number(first) <= 12 ? 'monthFirst' : undefined;
}

// Two figures: the latest such year that is not more than a year after as-of.
function fullYear(year: string, asOf: Day): string {
  if (year.length === 4) return year;
  const latest = dayParts(asOf).year + 1;
  return String(latest - ((((latest - Number(year)) % 100) + 100) % 100));
}

function namedDate(text: string, context: DateContext): DateReading | undefined {
  const dayFirst = /^(\d{1,2})[ ./-]*([a-z]{3,9})[ ./,'-]*(\d{4}|\d{2})$/.exec(text);
  if (dayFirst !== null) return named(dayFirst[3]!, dayFirst[2]!, dayFirst[1]!, context);
  const monthFirst = /^([a-z]{3,9})[ .-]*(\d{1,2})(?:,\s*|[ .-]+)(\d{4})$/.exec(text);
  if (monthFirst !== null) return named(monthFirst[3]!, monthFirst[1]!, monthFirst[2]!, context);
  const month = /^([a-z]{3,9})[ ./,'-]*(\d{4}|\d{2})$/.exec(text);
  return month === null ? undefined : named(month[2]!, month[1]!, undefined, context);
}

function named(
  year: string,
  name: string,
  day: string | undefined,
  context: DateContext,
): DateReading | undefined {
  const month = MONTHS.indexOf(name.slice(0, 3)) + 1;
  if (month === 0 || (name.length > 3 && !MONTH_NAMES.test(name))) return undefined;
  const full = fullYear(year, context.asOf);
  return day === undefined ? monthly(full, month) : dated(full, String(month), day, 'text date');
}

/** The order that the text dates of a column show, and how many dates show it. */
export type ShownOrder = { readonly order: DateOrder; readonly count: number };

/**
 * Which order the text dates of a column show: that of the dates that read one way only, where all of those
 * agree; undefined where there are none or they don't agree.
 */
export function shownOrder(cells: readonly Cell[]): ShownOrder | undefined {
  let [dayFirst, monthFirst] = [0, 0];
  for (const cell of cells) {
    const figures =
      typeof cell === 'string' ? FIGURES.exec(cell.trim().replace(TIME_OF_DAY, '').trim()) : null;
    if (figures === null) continue;
    const order = orderOf(figures[1]!, figures[2]!);
    if (order === 'dayFirst') dayFirst += 1;
    if (order === 'monthFirst') monthFirst += 1;
  }
  if (dayFirst > 0 === monthFirst > 0) return undefined;
  return dayFirst > 0 ? { order: 'dayFirst', count: dayFirst } : { order: 'monthFirst', count: monthFirst };
}
