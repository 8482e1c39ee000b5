import type { Day } from '../basics/calendar.ts';
import { dayFrom, dayParts } from '../basics/calendar.ts';
import type { RecordStart } from './inventory.ts';

/** What the record start is told from. */
export type RecordFacts = {
  /** The setting: a date as text, `never`, `unknown`, or undefined. */
  readonly said: string | undefined;
  /** The earliest day in the column that says since when a row was watched, if there is one. */
  readonly earliestWatched: Day | undefined;
  /** Share of the rows that say since when they were watched, 0 to 1. */
  readonly watchedShare: number;
  /** The earliest removal on record, if there is one. */
  readonly earliestRemoval: Day | undefined;
  /** Whether any row was removed, with or without a date. */
  readonly anyRemoved: boolean;
};

/** A column answers for the whole sheet only where it is filled in at least so many of its rows; else it speaks for its own rows. */
const COLUMN_SHARE = 0.9;

/**
 * Since when every removal is on record: what the user said; else the column that tells it for nearly every row; else,
 * and marked as assumed, the month of the earliest removal. Without any removed row the sheet shows survivors only,
 * whatever was said: they enter at today's age.
 */
export function recordStart({
  said,
  earliestWatched,
  watchedShare,
  earliestRemoval,
  anyRemoved,
}: RecordFacts): RecordStart {
  if (said === 'never' || !anyRemoved) return { date: undefined, from: 'never' };
  const date = said === undefined || said === 'unknown' ? undefined : dayFrom(said, 'recordsSince');
  if (date?.ok === true) return { date: date.value, from: 'option' };
  if (earliestWatched !== undefined && watchedShare >= COLUMN_SHARE)
    return { date: earliestWatched, from: 'column' };
  if (earliestRemoval === undefined) return { date: undefined, from: 'never' };
  return { date: earliestRemoval - dayParts(earliestRemoval).day + 1, from: 'assumed' };
}
