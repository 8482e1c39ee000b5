import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';
import { checkedTest, compared, READINGS_ARE_AMPS_FROM } from './batteryTest.ts';
import { studentTChance, studentTLimit } from './studentT.ts';

/** Fewest tests that show a trend: two always lie on a line and tell nothing of the scatter. Own judgement. */
export const LEAST_TREND_TESTS = 3;

/** Fewest days between the first and the last test of a trend: half a year. Own judgement. */
export const LEAST_TREND_DAYS = 180;

/** One cranking test of a battery. */
export type DatedReading = { readonly day: Day; readonly amps: number };

/** When a battery's line reaches the least accepted [months from as-of, negative = before it]; a 90 % band. */
export type TrendCrossing = { readonly best: number; readonly low: number; readonly high: number };

/** Where a battery's cranking readings are going. */
export type CrankingTrend = {
  /** Amperes gained a month; negative = falling. */
  readonly slopeAmpsPerMonth: number;
  /** Undefined = not reached: the line does not surely fall. */
  readonly crossing?: TrendCrossing;
  /** Chance that one test taken so many months after as-of reads under the least. */
  readonly chanceWithin: (months: number) => number;
};

/**
 * Trend of a battery's cranking readings against the least accepted: slope, month of crossing with a 90 % band, and the
 * chance that a test so many months after as-of reads under the least. A straight line by least squares, with equal,
 * independent, normal scatter: the tests are of one battery, charged, rested, and read alike. The band is that of the
 * battery's own line and comes by inverse regression (Fieller); the chance holds a new reading's own scatter too.
 * A fall that steepens late in life is not seen ahead, and the chance is wide with few tests; readings that
 * lie on a line by their rounding look surer than they are. Months are of 30.4375 days.
 * @param readings tests, at least 3 over at least 180 days, none after as-of; amperes, 0 to 10000
 * @param least least reading that is accepted [A], 16 to 10000
 * @param asOf day from which months are counted
 * @returns slope [A/month]; crossing best, low and high [months from as-of], left out where the slope is not under 0
 * with 95 % confidence; chanceWithin(months), 0 to 1
 * @problem badInput       when a number is none, or a reading is in volts (under 16)
 * @problem outOfRange     when a reading or least is outside its limits, or a test is later than as-of
 * @problem notEnoughData  when there are fewer than 3 tests, or less than 180 days between first and last
 * @source draperSmith1998 straight line, prediction of a new observation, inverse regression
 * @source fieller1954 limits of a ratio; no finite band unless the slope is surely not 0
 * @source abramowitzStegun1964 Student's t
 * @example crankingTrend([{ day: 45200, amps: 1150 }, { day: 45687, amps: 1084 }, { day: 46174, amps: 1000 }], 850, 46174).value.chanceWithin(24) // 0.12
 */
export function crankingTrend(
  readings: readonly DatedReading[],
  least: number,
  asOf: Day,
): Outcome<CrankingTrend> {
  const refused = readingsProblem(readings, least, asOf);
  if (refused !== undefined) return refused;
  const line = lineThrough(readings.map(({ day, amps }) => ({ month: (day - asOf) / DAYS_PER_MONTH, amps })));
  const crossing = crossingOf(line, least);
  return answer({
    slopeAmpsPerMonth: line.slope,
    ...(crossing === undefined ? {} : { crossing }),
    chanceWithin: (months) => chanceUnder(line, least, months),
  });
}

type Refused = Extract<Outcome<never>, { readonly ok: false }>;

function readingsProblem(readings: readonly DatedReading[], least: number, asOf: Day): Refused | undefined {
  if (!Number.isFinite(asOf)) return problem('badInput', 'notADate', 'asOf', asOf);
  if (least < READINGS_ARE_AMPS_FROM)
    return problem('outOfRange', 'outOfLimits', 'least', least, { limits: [READINGS_ARE_AMPS_FROM, 10_000] });
  for (const one of readings) {
    const refused = readingProblem(one, least, asOf);
    if (refused !== undefined) return refused;
  }
  return tooLittle(readings);
}

function readingProblem({ day, amps }: DatedReading, least: number, asOf: Day): Refused | undefined {
  if (!Number.isFinite(day)) return problem('badInput', 'notADate', 'day', day);
  if (day > asOf) return problem('outOfRange', 'testAfterAsOf', 'day', day, { more: { asOf } });
  const checked = checkedTest({ reading: amps, least });
  if (!checked.ok) return checked;
  const both = compared(amps, least);
  return both.ok ? undefined : both;
}

function tooLittle(readings: readonly DatedReading[]): Refused | undefined {
  if (readings.length < LEAST_TREND_TESTS)
    return problem('notEnoughData', 'tooFewTests', 'readings', readings.length, {
      more: { least: LEAST_TREND_TESTS },
    });
  const days = readings.map(({ day }) => day);
  const span = Math.max(...days) - Math.min(...days);
  if (span >= LEAST_TREND_DAYS) return undefined;
  return problem('notEnoughData', 'testsTooClose', 'readings', span, { more: { least: LEAST_TREND_DAYS } });
}

type Line = {
  readonly slope: number;
  /** Means of the months and of the amperes, through which the line goes. */
  readonly month: number;
  readonly amps: number;
  /** Sum of the squared months from their mean. */
  readonly spread: number;
  readonly count: number;
  /** Standard deviation of a reading about the line [A]. */
  readonly scatter: number;
};

function lineThrough(points: readonly { readonly month: number; readonly amps: number }[]): Line {
  const count = points.length;
  const sum = (of: (point: (typeof points)[number]) => number): number =>
    points.reduce((all, point) => all + of(point), 0);
  const [month, amps] = [sum((one) => one.month) / count, sum((one) => one.amps) / count];
  const spread = sum((one) => (one.month - month) ** 2);
  const slope = sum((one) => (one.month - month) * (one.amps - amps)) / spread;
  const squares = sum((one) => (one.amps - amps - slope * (one.month - month)) ** 2);
  return { slope, month, amps, spread, count, scatter: Math.sqrt(squares / (count - 2)) };
}

// Fieller: the months whose mean reading may be the least; a bounded stretch only where the slope is surely not 0.
function crossingOf({ slope, month, amps, spread, count, scatter }: Line, least: number) {
  const reach = (studentTLimit(count - 2) * scatter) / Math.abs(slope);
  const unsure = reach ** 2 / spread;
  if (!(slope < 0 && unsure < 1)) return undefined;
  const away = (least - amps) / slope;
  const half = reach * Math.sqrt((1 - unsure) / count + away ** 2 / spread);
  return {
    best: month + away,
    low: month + (away - half) / (1 - unsure),
    high: month + (away + half) / (1 - unsure),
  };
}

function chanceUnder(
  { slope, month, amps, spread, count, scatter }: Line,
  least: number,
  at: number,
): number {
  const below = least - (amps + slope * (at - month));
  const error = scatter * Math.sqrt(1 + 1 / count + (at - month) ** 2 / spread);
  if (error === 0) return below > 0 ? 1 : 0;
  return studentTChance(below / error, count - 2);
}
