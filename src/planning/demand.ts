import { demandWhenAsked } from './demandWhenAsked.ts';
import type { Pmf } from './pmf.ts';
import { certain, convolve, inLots, pmfFromRatios, pmfMean, pmfVariance } from './pmf.ts';

/** Distribution of a count of batteries that will be needed. */
export type Demand = {
  /** Mean count. */
  readonly expected: number;
  readonly variance: number;
  /** Chance that no more than `count` are needed, 0 to 1. */
  readonly cdf: (count: number) => number;
  /** Smallest count that is enough with that chance; a chance of exactly 1 asks for the largest count on record. */
  readonly quantile: (chance: number) => number;
  /** The chance of each count, where it is not negligible. */
  readonly pmf: () => Pmf;
};

// A chance that equals a step of the distribution must find that step, not the next one.
const TIE = 1e-12;

/** The smallest count whose cumulative chance reaches `chance`, in low to high. */
export function smallestCount(
  cdf: (count: number) => number,
  chance: number,
  low: number,
  high: number,
): number {
  let [below, enough] = [low - 1, high];
  while (enough - below > 1) {
    const middle = Math.floor((below + enough) / 2);
    if (cdf(middle) >= chance - TIE) enough = middle;
    else below = middle;
  }
  return enough;
}

/** Demand whose every chance is known. */
export function demandFromPmf(pmf: Pmf): Demand {
  let sum = 0;
  const cumulative = pmf.mass.map((mass) => (sum += mass));
  const last = pmf.mass.length - 1;
  const cdf = (count: number): number => {
    const index = Math.floor(count) - pmf.first;
    return index < 0 ? 0 : index >= last ? 1 : Math.min(1, cumulative[index]!);
  };
  return {
    expected: pmfMean(pmf),
    variance: pmfVariance(pmf),
    cdf,
    quantile: (chance) => smallestCount(cdf, chance, pmf.first, pmf.first + last),
    pmf: () => pmf,
  };
}

/** No demand at all. */
export const NO_DEMAND: Demand = demandFromPmf(certain(0));

/**
 * Poisson demand: many units with a small chance each, and a mean that is known.
 * @param mean  expected count, 0 or more
 */
export function poissonDemand(mean: number): Demand {
  if (mean <= 0) return NO_DEMAND;
  const pmf = pmfFromRatios(Math.floor(mean), (k) => mean / (k + 1), 0, Infinity);
  return { ...demandFromPmf(pmf), expected: mean, variance: mean };
}

/**
 * Negative binomial demand: a Poisson count whose mean is itself uncertain (gamma); variance above the mean.
 * @param mean      expected count, above 0
 * @param variance  above `mean`
 */
export function negativeBinomialDemand(mean: number, variance: number): Demand {
  const size = (mean * mean) / (variance - mean);
  const chance = mean / (mean + size);
  const mode = size > 1 ? Math.floor(((size - 1) * chance) / (1 - chance)) : 0;
  const pmf = pmfFromRatios(mode, (k) => ((size + k) / (k + 1)) * chance, 0, Infinity);
  return { ...demandFromPmf(pmf), expected: mean, variance };
}

/**
 * Sum of independent demands, such as those of sites that each have their own life estimate. Parts that share
 * one estimate are not independent: forecast their total instead.
 */
export function sumOfDemands(demands: readonly Demand[]): Demand {
  if (demands.length === 1) return demands[0]!;
  const add = (of: (demand: Demand) => number) => demands.reduce((sum, demand) => sum + of(demand), 0);
  const law = () =>
    demandFromPmf(demands.reduce<Pmf>((sum, demand) => convolve(sum, demand.pmf()), certain(0)));
  return demandWhenAsked(
    add((demand) => demand.expected),
    add((demand) => demand.variance),
    law,
  );
}

/** Demand in batteries where the given one is in lots of several. */
export function demandInLots(demand: Demand, size: number): Demand {
  if (size === 1) return demand;
  return {
    expected: size * demand.expected,
    variance: size * size * demand.variance,
    cdf: (count) => demand.cdf(Math.floor(count / size)),
    quantile: (chance) => size * demand.quantile(chance),
    pmf: () => inLots(demand.pmf(), size),
  };
}

/** Chance that a number of funded batteries is enough, 0 to 1. */
export function chanceEnough(demand: Demand, funded: number): number {
  return funded < 0 ? 0 : demand.cdf(funded);
}

/** Mean number of batteries that are missing when `stock` are there: E[(demand - stock)+]. */
export function expectedShortage(demand: Demand, stock: number): number {
  const { first, mass } = demand.pmf();
  return mass.reduce((sum, chance, i) => sum + chance * Math.max(0, first + i - stock), 0);
}
