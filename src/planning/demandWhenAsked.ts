import type { Demand } from './demand.ts';
import { once } from './once.ts';

/**
 * Demand whose law is only worked out when a chance or a limit is asked for: laws cost far more than means, and of
 * single places and groups that are added up only the means are wanted.
 */
export function demandWhenAsked(expected: number, variance: number, make: () => Demand): Demand {
  const made = once(make);
  return {
    expected,
    variance,
    cdf: (count) => made().cdf(count),
    quantile: (chance) => made().quantile(chance),
    pmf: () => made().pmf(),
  };
}
