import type { DatedReading } from '../cranking/crankingTrend.ts';
import { crankingTrend } from '../cranking/crankingTrend.ts';
import { COLD_READING_CELSIUS, judge } from '../cranking/verdict.ts';
import type { Construction, TestTrend } from '../service/battery.ts';
import type { RawReadings, ReadingsJob } from './readings.ts';
import { isTooOld, readingsOf } from './readings.ts';
import { batteryTestOf } from './voltFindings.ts';

type Held = DatedReading & { readonly least: number };

/**
 * Trend of a battery's tests in the Tests sheet against the least of the last of them; nothing where there are too few
 * in amperes or the last is too old to count. A reading known to be cold, not charged or not rested tells of that
 * and not of the battery's age: it is no part of the trend.
 */
export function testTrendOf(
  serial: string,
  latest: RawReadings,
  construction: Construction,
  job: ReadingsJob,
): TestTrend | undefined {
  const tests = serial === '' ? [] : (job.tests?.of.get(serial) ?? []);
  const held = tests.flatMap((test) => heldReading(test, latest, construction, job));
  const last = held.at(-1);
  if (last === undefined || isTooOld(last.day, job.asOf, job.testMonths)) return undefined;
  const trend = crankingTrend(held, last.least, job.asOf);
  if (!trend.ok) return undefined;
  const { crossing: crossingMonths, chanceWithin } = trend.value;
  const chances = { chance12: chanceWithin(12), chance24: chanceWithin(24) };
  return crossingMonths === undefined ? chances : { crossingMonths, ...chances };
}

function heldReading(
  test: number,
  latest: RawReadings,
  construction: Construction,
  { tests }: ReadingsJob,
): Held[] {
  const raw = readingsOf(test, latest, 0, tests!);
  const entries = batteryTestOf(raw, construction, true);
  const judged = judge(entries);
  const both = judged.ok ? judged.value.compared : undefined;
  const isCold = entries.celsius !== undefined && entries.celsius < COLD_READING_CELSIUS;
  if (both?.unit !== 'A' || isCold) return [];
  return [{ day: raw.testedOn!, amps: both.reading, least: both.least }];
}
