import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { AgeBin } from './ageBins.ts';
import type { Demand } from './demand.ts';
import { forecastCounts } from './forecastCounts.ts';
import type { LifeBelief } from './lattice.ts';

/** Replacements in one period, or in all of them: expected count, limits and variance. */
export type ForecastRow = {
  readonly period: number | 'all';
  readonly expected: number;
  readonly low: number;
  readonly high: number;
  readonly variance: number;
};

/** Length of a period where nothing else is said [months], and the chance that the limits hold. */
export const USUAL_MONTHS_EACH = 12;
export const USUAL_LEVEL = 0.9;

const MOST_PERIODS = 120;
const MOST_MONTHS = 360;

/**
 * Replacements in periods from now on: batteries in service that fail, and the batteries after them that fail
 * again. Under a belief from records the limits hold what is not known about the life; under a known life they
 * hold chance only. Limits of periods never add up: the last row has those of the sum.
 * @param bins        batteries in service: age [months], 0 or more, and count
 * @param life        belief from records, or Weibull shape and scale [months]
 * @param periods     how many periods, whole, 1 to 120
 * @param monthsEach  length of each [months], above 0; all periods together up to 360
 * @param level       chance that the limits hold, above 0 and below 1, default 0.9
 * @returns one row a period, then `all`: expected, low and high [units], variance [units squared]
 * @problem outOfRange  when ages, periods, their length or the level are outside their limits
 * @source hongMeekerMcCalley2009 Poisson-binomial law averaged over the belief
 * @source smithLeadbetter1963 renewals
 * @example replacementForecast([{ age: 48, count: 10 }], { shape: 2.4, scale: 60 }, 1).value[1].expected // 3.416
 */
export function replacementForecast(
  bins: readonly AgeBin[],
  life: LifeBelief,
  periods: number,
  monthsEach: number = USUAL_MONTHS_EACH,
  level: number = USUAL_LEVEL,
): Outcome<ForecastRow[]> {
  const wrong = outside(bins, periods, monthsEach, level);
  if (wrong !== undefined) return wrong;
  const each = Array.from({ length: periods }, (_, i) => ({
    from: i * monthsEach,
    to: (i + 1) * monthsEach,
  }));
  const windows = [...each, { from: 0, to: periods * monthsEach }];
  const { demands } = forecastCounts(bins, { life, windows });
  return answer(demands.map((demand, i) => row(i === periods ? 'all' : i + 1, demand, level)));
}

function row(period: number | 'all', demand: Demand, level: number): ForecastRow {
  const { expected, variance } = demand;
  const [low, high] = [demand.quantile((1 - level) / 2), demand.quantile((1 + level) / 2)];
  return { period, expected, low, high, variance };
}

function outside(bins: readonly AgeBin[], periods: number, monthsEach: number, level: number) {
  const limits = (argument: string, given: number, least: number | string, most: number | string) =>
    problem('outOfRange', 'outOfLimits', argument, given, { limits: [least, most] });
  const age = bins.find((bin) => !(bin.age >= 0 && bin.age <= 1200))?.age;
  if (age !== undefined) return limits('ages', age, 0, 1200);
  const count = bins.find((bin) => !(bin.count >= 0 && Number.isInteger(bin.count)))?.count;
  if (count !== undefined) return problem('badInput', 'wholeCount', 'counts', count);
  if (!(Number.isInteger(periods) && periods >= 1 && periods <= MOST_PERIODS)) {
    return problem('badInput', 'wholePeriods', 'periods', periods, { limits: [1, MOST_PERIODS] });
  }
  if (!(monthsEach > 0 && monthsEach * periods <= MOST_MONTHS)) {
    return limits('monthsEach', monthsEach, 'above 0', `${MOST_MONTHS} months for all periods together`);
  }
  return level > 0 && level < 1 ? undefined : limits('level', level, 'above 0', 'below 1');
}
