import { DateTime } from 'luxon';
import type { Outcome } from './outcome.ts';
import { answer, problem } from './outcome.ts';

/**
 * A calendar day as spreadsheets count them in the 1900 system: whole days since 1899-12-30.
 * Right from 61 (1900-03-01) on; below it the spreadsheets' own count has a day that never was.
 */
export type Day = number;

/** A day taken apart: year, month 1 to 12, day of the month 1 to 31. */
export type DayParts = { readonly year: number; readonly month: number; readonly day: number };

const MILLISECONDS_PER_DAY = 86_400_000;
const DAYS_BEFORE_1970 = 25_569;
const ISO_DATE = /^(\d{4})-(\d{2})-(\d{2})(?:[T ].*)?$/;
const NUMERIC_DATE = /^\d{1,4}[./-]\d{1,2}[./-]\d{1,4}$/;

/** The first and last day that are taken for dates: 1970-01-01 to 2100-12-31. */
export const FIRST_DAY: Day = 25_569;
export const LAST_DAY: Day = 73_415;

/** The months of a year by name, from January. */
export const MONTH_NAMES = [
  ...['January', 'February', 'March', 'April', 'May', 'June'],
  ...['July', 'August', 'September', 'October', 'November', 'December'],
] as const;

/** The day of a Luxon moment in UTC. */
export function dayOfMoment(moment: DateTime): Day {
  return Math.floor(moment.toMillis() / MILLISECONDS_PER_DAY) + DAYS_BEFORE_1970;
}

/** The Luxon moment at which a day begins in UTC. */
export function momentOfDay(day: Day): DateTime {
  return DateTime.fromMillis((Math.floor(day) - DAYS_BEFORE_1970) * MILLISECONDS_PER_DAY, { zone: 'utc' });
}

// A fleet has a few thousand distinct days however many rows: each is put together and taken apart once.
const daysSeen = new Map<number, Day | undefined>();
const partsSeen = new Map<Day, DayParts>();
const MOST_PARTS_KEPT = 20_000;

/** The day of a year, month and day of month, or undefined where the calendar has no such day. */
export function dayFromParts(year: number, month: number, day: number): Day | undefined {
  const key = (year * 100 + month) * 100 + day;
  const plain = month >= 1 && month <= 12 && day >= 1 && day <= 31;
  if (plain && daysSeen.has(key)) return daysSeen.get(key);
  const moment = DateTime.utc(year, month, day);
  const found = moment.isValid ? dayOfMoment(moment) : undefined;
  if (daysSeen.size >= MOST_PARTS_KEPT) daysSeen.clear();
  if (plain) daysSeen.set(key, found);
  return found;
}

/** Year, month and day of month of a day. */
export function dayParts(day: Day): DayParts {
  const known = partsSeen.get(day);
  if (known !== undefined) return known;
  const { year, month, day: dayOfMonth } = momentOfDay(day);
  if (partsSeen.size >= MOST_PARTS_KEPT) partsSeen.clear();
  const parts = { year, month, day: dayOfMonth };
  partsSeen.set(day, parts);
  return parts;
}

/** The day as text such as 2026-03-15. */
export function isoDay(day: Day): string {
  const { year, month, day: dayOfMonth } = dayParts(day);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${year}-${two(month)}-${two(dayOfMonth)}`;
}

/** The day some whole months later; a missing day of the month is that month's last. */
export function addMonths(day: Day, months: number): Day {
  return dayOfMoment(momentOfDay(day).plus({ months }));
}

/**
 * A day from what a cell holds: a spreadsheet date (1900 system; a time of day is cut off) or text such as
 * 2026-03-15. Text whose day and month could change places is refused, never guessed.
 * @problem badInput  when it is no date, lies outside 1970 to 2100, or reads two ways
 */
export function dayFrom(given: unknown, argument: string): Outcome<Day> {
  if (typeof given === 'number') return withinYears(Math.floor(given), given, argument);
  if (typeof given !== 'string') return problem('badInput', 'notADate', argument, given);
  const text = given.trim();
  const iso = ISO_DATE.exec(text);
  if (iso !== null) {
    const day = dayFromParts(Number(iso[1]), Number(iso[2]), Number(iso[3]));
    return withinYears(day ?? Number.NaN, given, argument);
  }
  return problem('badInput', NUMERIC_DATE.test(text) ? 'ambiguousDate' : 'notADate', argument, given);
}

function withinYears(day: number, given: unknown, argument: string): Outcome<Day> {
  return day >= FIRST_DAY && day <= LAST_DAY ? answer(day) : problem('badInput', 'notADate', argument, given);
}
