import type { Day } from '../basics/calendar.ts';
import { isoDay } from '../basics/calendar.ts';
import type { BenchAnswer } from '../cranking/benchAnswer.ts';
import type { BenchEntry } from '../cranking/benchEntry.ts';
import { chargeByOf } from './condition.ts';

/** What the line on the case is made from. */
export type CaseLineFacts = {
  readonly made?: Day;
  readonly testedOn: Day;
  readonly entry: BenchEntry;
  readonly answer: BenchAnswer;
  /** Average temperature of the store [C], where it is known. */
  readonly average?: number;
};

/**
 * The one line to chalk on a battery's case after the bench: made, tested, volts, reading, verdict, and by when to
 * charge it again. Only a serviceable battery gets a date for its next charge, from its last full one on record.
 * @param facts  dates, what was read, the answer, the store's average temperature
 * @returns the line
 * @example caseLine({ testedOn: 46203, entry: { look: {} }, answer: answerInSet() }) // "made ?, tested 2026-06-30, Not judged"
 */
export function caseLine({ made, testedOn, entry, answer, average }: CaseLineFacts): string {
  const read = answer.readingsCount ? readText(entry) : [];
  const next = nextCharge(entry, answer, average);
  const age = `made ${made === undefined ? '?' : isoDay(made).slice(0, 7)}`;
  return [age, `tested ${isoDay(testedOn)}`, ...read, answer.word, ...next].join(', ');
}

function readText({ restVolts, reading, loadVolts }: BenchEntry): string[] {
  return [
    ...(restVolts === undefined ? [] : [`${restVolts.toFixed(2)} V`]),
    ...(reading === undefined ? [] : [`${Math.round(reading)} A`]),
    ...(loadVolts === undefined ? [] : [`${loadVolts.toFixed(1)} V under load`]),
  ];
}

function nextCharge(
  { chargedOn, construction = 'AGM' }: BenchEntry,
  { word }: BenchAnswer,
  average: number | undefined,
): string[] {
  if (word === 'Awaiting charge') return ['charge now'];
  if (word !== 'Serviceable') return [];
  const by = chargeByOf(chargedOn, average, construction);
  return [by === undefined ? 'last charge not known' : `charge again by ${isoDay(by)}`];
}
