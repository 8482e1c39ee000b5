import type { Cumulants } from './failureMoments.ts';
import { isRare, rareChances, skewedLaw } from './countLaws.ts';
import type { Demand } from './demand.ts';
import { smallestCount } from './demand.ts';
import { lawMixture, mixedChance } from './lawMixture.ts';
import { once } from './once.ts';
import type { Pmf } from './pmf.ts';
import { trimmed } from './pmf.ts';

/** A count's law if one life were true, and how much that life is believed. */
export type CountComponent = Cumulants & { readonly weight: number };

/** Weights, means, variances and third cumulants of many components, side by side. */
export type ComponentColumns = {
  readonly weight: Float64Array;
  readonly mean: Float64Array;
  readonly variance: Float64Array;
  readonly third: Float64Array;
};

// Components whose means lie closer than this part of a Poisson deviation are told apart by nobody.
const CLOSE = 0.15;

/** Components with nearly one mean put together; what they differ by goes into the variance. */
export function merged({ weight, mean, variance, third }: ComponentColumns): CountComponent[] {
  const largest = mean.reduce((most, value, i) => (weight[i]! > 0 ? Math.max(most, value) : most), 0);
  const sums = emptySums(largest);
  weight.forEach((each, i) => {
    if (each > 0) addComponent(sums, each, mean[i]!, variance[i]!, third[i]!);
  });
  return componentsFrom(sums);
}

const bin = (mean: number): number => Math.floor((2 * Math.sqrt(mean)) / CLOSE);

/** Room for the sums of components whose means are not above the largest. */
export function emptySums(largest: number): Float64Array {
  return new Float64Array(5 * (bin(largest) + 1));
}

/** Adds a component to the sums of those that have nearly its mean. */
export function addComponent(
  sums: Float64Array,
  weight: number,
  mean: number,
  variance: number,
  third: number,
): void {
  const at = 5 * bin(mean);
  sums[at]! += weight;
  sums[at + 1]! += weight * mean;
  sums[at + 2]! += weight * mean * mean;
  sums[at + 3]! += weight * variance;
  sums[at + 4]! += weight * third;
}

/** The components that stand in some sums, by their means. */
export function componentsFrom(sums: Float64Array): CountComponent[] {
  const components: CountComponent[] = [];
  for (let at = 0; at < sums.length; at += 5) {
    const weight = sums[at]!;
    if (weight === 0) continue;
    const [mean, square, variance, third] = [1, 2, 3, 4].map((i) => sums[at + i]! / weight);
    const between = Math.max(0, square! - mean! * mean!);
    components.push({ weight, mean: mean!, variance: variance! + between, third: third! });
  }
  return components;
}

/**
 * Demand whose law depends on which life is true: the weighted mean of the laws under each.
 * @param components  weights need not sum to 1
 * @param expected    its mean and variance, taken before components were put together
 */
export function mixtureDemand(
  components: readonly CountComponent[],
  expected: number,
  variance: number,
): Demand {
  const total = components.reduce((sum, { weight }) => sum + weight, 0);
  const rare = rareCumulative(components.filter(isRare), total);
  const others = lawMixture(
    components
      .filter((component) => !isRare(component))
      .map((component) => ({ ...skewedLaw(component), weight: component.weight })),
  );
  const cdf = (count: number): number => {
    const whole = Math.floor(count);
    if (whole < 0) return 0;
    return Math.min(1, rare[Math.min(whole, rare.length - 1)]! + mixedChance(others, whole) / total);
  };
  const quantile = (chance: number): number => {
    let high = Math.ceil(expected + 4 * Math.sqrt(variance)) + 1;
    while (cdf(high) < Math.min(chance, CERTAIN)) high *= 2;
    return smallestCount(cdf, Math.min(chance, CERTAIN), 0, high);
  };
  const pmf = once(() => tabled(cdf, quantile(1 - CERTAIN), quantile(CERTAIN)));
  return { expected, variance, cdf, quantile, pmf };
}

// Beyond this a law's tail is no longer known; a chance of exactly 1 is taken as this.
const CERTAIN = 1 - 1e-9;

function rareCumulative(components: readonly CountComponent[], total: number): Float64Array {
  const sums = new Float64Array(components.length === 0 ? 1 : RARE_LENGTH);
  for (const component of components) {
    rareChances(component, RARE_LENGTH).forEach(
      (chance, k) => (sums[k]! += (component.weight / total) * chance),
    );
  }
  for (let k = 1; k < sums.length; k += 1) sums[k]! += sums[k - 1]!;
  return sums;
}

// A mean under 15 leaves no chance worth a digit beyond this.
const RARE_LENGTH = 90;

function tabled(cdf: Demand['cdf'], first: number, last: number): Pmf {
  const mass = new Float64Array(last - first + 1);
  let before = 0;
  for (let i = 0; i < mass.length; i += 1) {
    const sum = i === mass.length - 1 ? 1 : cdf(first + i);
    mass[i] = Math.max(0, sum - before);
    before = sum;
  }
  return trimmed({ first, mass });
}
