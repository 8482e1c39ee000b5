import { DateTime } from 'luxon';
import type { Day } from '../basics/calendar.ts';
import { addMonths, dayOfMoment, dayParts, FIRST_DAY, isoDay, LAST_DAY } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { DatePiece, Layout } from './layout.ts';
import { MONTH_LETTERS_WITH_I, MONTH_LETTERS_WITHOUT_I, WIDTHS } from './layout.ts';

/** A code may be this many days later than as-of: batteries are labelled ahead (own judgement). */
export const DAYS_AHEAD = 31;

/** A two-digit year further back than this is refused, not believed (own judgement) [years]. */
export const OLDEST_YEARS = 30;

// Far enough back to meet a year that has a 29 February, a day 366 or a week 53.
const YEARS_TRIED = 200;

// What a date says apart from its year, and how to write it with one.
type YearlessDate = {
  readonly dayIn: (year: number) => Day | undefined;
  readonly written: (year: number) => string;
};

// A fleet has a few thousand distinct dates in its codes however many rows: each is worked out once.
const seen = new Map<string, Outcome<Day>>();
const MOST_KEPT = 50_000;

/**
 * The day that the date characters of a code mean in a layout.
 * @param date  characters of the layout's date pieces, without blanks
 * @param layout  from compileLayout
 * @param asOf  day of the question; decides the century or decade
 * @problem badInput  when the calendar has no such day
 * @problem outOfRange  when the date is later than as-of + 31 days, or over 30 years old (two-digit years)
 */
export function codeDay(date: string, layout: Layout, asOf: Day): Outcome<Day> {
  const key = `${asOf} ${date} ${layout.text}`;
  const known = seen.get(key);
  if (known !== undefined) return known;
  const day = workedOut(takenApart(date, layout), layout, asOf);
  if (seen.size >= MOST_KEPT) seen.clear();
  seen.set(key, day);
  return day;
}

type Said = Partial<Record<DatePiece, string>>;

function takenApart(date: string, layout: Layout): Said {
  const said: Said = {};
  let at = 0;
  for (const piece of layout.pieces) {
    if (piece === 'lot') continue;
    said[piece] = date.slice(at, at + WIDTHS[piece]);
    at += WIDTHS[piece];
  }
  return said;
}

function workedOut(said: Said, layout: Layout, asOf: Day): Outcome<Day> {
  const month = monthOf(said);
  if (!month.ok) return month;
  const date = yearless(said, layout, month.value);
  if (said.yyyy !== undefined) return fullYear(date, Number(said.yyyy), asOf);
  const digits = said.yy ?? said.kk ?? said.y ?? '';
  return shortYear(date, Number(digits), digits.length === 1 ? 10 : 100, asOf);
}

function monthOf(said: Said): Outcome<number> {
  const letter = said.A ?? said.a12;
  if (letter === undefined) return monthNumber(said.MM);
  const letters = said.A === undefined ? MONTH_LETTERS_WITH_I : MONTH_LETTERS_WITHOUT_I;
  const month = letters.indexOf(letter) + 1;
  if (month > 0) return answer(month);
  const allowed = said.A === undefined ? 'A to L' : 'A to M without I';
  return problem('badInput', 'codeLetter', 'code', undefined, { more: { letter, allowed } });
}

function monthNumber(text: string | undefined): Outcome<number> {
  const month = Number(text ?? 1);
  if (month >= 1 && month <= 12) return answer(month);
  return problem('badInput', 'codeMonth', 'code', undefined, { more: { month: text ?? '' } });
}

const two = (value: number): string => String(value).padStart(2, '0');

function yearless(said: Said, layout: Layout, month: number): YearlessDate {
  if (layout.calendar === 'ordinal') return ordinalDate(said.ooo ?? '');
  if (layout.calendar === 'week') return weekDate(said.WW ?? '');
  const day = Number(said.dd ?? 1);
  return {
    dayIn: (year) => dayOf(DateTime.fromObject({ year, month, day }, { zone: 'utc' })),
    written: (year) => `${year}-${two(month)}${said.dd === undefined ? '' : `-${two(day)}`}`,
  };
}

function ordinalDate(text: string): YearlessDate {
  const ordinal = Number(text);
  return {
    dayIn: (year) => dayOf(DateTime.fromObject({ year, ordinal }, { zone: 'utc' })),
    written: (year) => `day ${text} of ${year}`,
  };
}

function weekDate(text: string): YearlessDate {
  const week = { weekNumber: Number(text), weekday: 1 as const };
  return {
    dayIn: (year) => dayOf(DateTime.fromObject({ weekYear: year, ...week }, { zone: 'utc' })),
    written: (year) => `week ${text} of ${year}`,
  };
}

const dayOf = (moment: DateTime): Day | undefined => (moment.isValid ? dayOfMoment(moment) : undefined);

// A year in full leaves nothing to choose; it only has to be true of a thing that exists at as-of.
function fullYear(date: YearlessDate, year: number, asOf: Day): Outcome<Day> {
  const day = date.dayIn(year);
  if (day === undefined) return noSuchDay(date.written(year));
  if (day >= FIRST_DAY && day <= latestDay(asOf)) return answer(day);
  const limits = [isoDay(FIRST_DAY), isoDay(latestDay(asOf))] as const;
  return problem('outOfRange', 'codeOutside', 'code', undefined, {
    more: { date: date.written(year) },
    limits,
  });
}

// Years in which the calendar lacks the day (29 February, day 366, week 53) are passed over.
function shortYear(date: YearlessDate, digits: number, period: 10 | 100, asOf: Day): Outcome<Day> {
  const limit = latestDay(asOf);
  const next = dayParts(limit).year + 1;
  const latest = next - ((((next - digits) % period) + period) % period);
  for (let year = latest; year > latest - YEARS_TRIED; year -= period) {
    const day = date.dayIn(year);
    if (day !== undefined && day <= limit) return youngEnough(date, day, year, period, asOf);
  }
  return noSuchDay(date.written(latest));
}

function youngEnough(date: YearlessDate, day: Day, year: number, period: 10 | 100, asOf: Day): Outcome<Day> {
  const oldest = earliestDay(period, asOf);
  if (day >= oldest) return answer(day);
  if (date.dayIn(year + period) === undefined) return noSuchDay(date.written(year + period));
  const more = {
    later: date.written(year + period),
    earlier: date.written(year),
    years: wholeYears(day, asOf),
  };
  const limits = [isoDay(oldest), isoDay(latestDay(asOf))] as const;
  return problem('outOfRange', 'codeTooOld', 'code', undefined, { more, limits });
}

const latestDay = (asOf: Day): Day => Math.min(asOf + DAYS_AHEAD, LAST_DAY);

const earliestDay = (period: 10 | 100, asOf: Day): Day =>
  period === 10 ? FIRST_DAY : Math.max(FIRST_DAY, addMonths(asOf, -12 * OLDEST_YEARS));

function wholeYears(from: Day, to: Day): number {
  const [a, b] = [dayParts(from), dayParts(to)];
  const before = b.month < a.month || (b.month === a.month && b.day < a.day);
  return b.year - a.year - (before ? 1 : 0);
}

const noSuchDay = (date: string): Outcome<Day> =>
  problem('badInput', 'codeNoSuchDay', 'code', undefined, { more: { date } });
