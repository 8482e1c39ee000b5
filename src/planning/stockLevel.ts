import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { Demand } from './demand.ts';
import { negativeBinomialDemand, poissonDemand } from './demand.ts';

/** Chance that stock is enough where nothing else is asked for. */
export const USUAL_STOCK_CHANCE = 0.95;

const MOST_EXPECTED = 1_000_000;
const MOST_DEVIATION = 100_000;

/**
 * Units to hold so that the demand until the next delivery is met with a given chance: the smallest stock s with
 * P(demand <= s) >= chance. Demand is negative binomial where its variance is above its mean, else Poisson.
 * @param expected  expected demand [units], 0 to 1,000,000
 * @param chance    chance that the stock is enough, above 0 and below 1, default 0.95
 * @param variance  variance of the demand [units squared], up to 1e10; what is at or below `expected` counts as Poisson
 * @returns stock [units], whole, 0 or more
 * @problem badInput    when expected or variance is negative or no number
 * @problem outOfRange  when the chance isn't between 0 and 1, or the demand is too large
 * @source hadleyWhitin1963 smallest stock for a service level; Poisson and negative binomial demand (from memory)
 * @example stockLevel(7.3) // 12
 * @example stockLevel(7.3, 0.95, 20.6225) // 16
 */
export function stockLevel(
  expected: number,
  chance = USUAL_STOCK_CHANCE,
  variance = expected,
): Outcome<number> {
  if (!(expected >= 0 && expected <= MOST_EXPECTED)) return outside('expected', expected, [0, MOST_EXPECTED]);
  if (!(chance > 0 && chance < 1)) return outside('chance', chance, ['above 0', 'below 1']);
  if (!(variance >= 0 && variance <= MOST_DEVIATION ** 2)) return outside('variance', variance, [0, '1e10']);
  return answer(demandOfMeanAndVariance(expected, variance).quantile(chance));
}

/** Demand known by its mean and variance only: negative binomial where the variance is the larger, else Poisson. */
export function demandOfMeanAndVariance(expected: number, variance: number): Demand {
  const spreads = expected > 0 && variance > expected * (1 + 1e-9);
  return spreads ? negativeBinomialDemand(expected, variance) : poissonDemand(expected);
}

const outside = (argument: string, given: number, limits: readonly [number | string, number | string]) =>
  problem('outOfRange', 'outOfLimits', argument, given, { limits });
