import erfcx from '@stdlib/math-base-special-erfcx';
import type { Cumulants } from './failureMoments.ts';

// Share of the standard normal law below x.
function normalCdf(x: number): number {
  const tail = 0.5 * erfcx(Math.abs(x) * Math.SQRT1_2) * Math.exp(-0.5 * x * x);
  return x < 0 ? tail : 1 - tail;
}

/** A law of counts as chances of at most so many, and where it is 0 below and 1 above to the last digit. */
export type SkewedLaw = {
  readonly cdf: (count: number) => number;
  readonly low: number;
  readonly high: number;
};

/**
 * Chance of at most `count` under a law with the given mean, variance and third cumulant: a shifted gamma
 * law at count + 1/2 by the cube-root transformation. Within 0.005 from a mean of 5 on, 0.001 from 12 on.
 * @source wilsonHilferty1931 cube root of a gamma variable
 */
export function skewedLaw({ mean, variance, third }: Cumulants): SkewedLaw {
  if (variance < 1e-12) return stepLaw(mean);
  const deviation = Math.sqrt(variance);
  const skewness = third / variance ** 1.5;
  const { cdf, low, high } = gammaLaw(Math.abs(skewness));
  const at = (count: number): number => (count + 0.5 - mean) / deviation;
  const count = (x: number): number => mean + deviation * x - 0.5;
  return skewness < 0
    ? { cdf: (each) => 1 - cdf(-at(each)), low: count(-high), high: count(-low) }
    : { cdf: (each) => cdf(at(each)), low: count(low), high: count(high) };
}

function stepLaw(mean: number): SkewedLaw {
  return { cdf: (count) => (count + 0.5 >= mean ? 1 : 0), low: mean - 1, high: mean };
}

// So many deviations out a normal law is 0 or 1 to the last digit of a number.
const FAR = 8.3;

// A gamma law of mean 0 and deviation 1.
function gammaLaw(skewness: number): SkewedLaw {
  if (skewness < 1e-6) return { cdf: normalCdf, low: -FAR, high: FAR };
  const size = 1 / (9 * (2 / skewness) ** 2);
  const root = Math.sqrt(size);
  const cdf = (x: number): number => {
    const cube = 1 + (skewness * x) / 2;
    return cube <= 0 ? 0 : normalCdf((Math.cbrt(cube) - 1 + size) / root);
  };
  const at = (z: number): number => (2 / skewness) * (Math.max(0, 1 - size + z * root) ** 3 - 1);
  return { cdf, low: at(-FAR), high: at(FAR) };
}

/**
 * Whether a count is so rare that its law is near a Poisson law and a gamma law is too coarse. Counts that come in
 * batches of several sizes (sets renewed as a whole) are too skewed for it: its chances would turn negative.
 */
export function isRare(cumulants: Cumulants): boolean {
  const { mean, variance } = cumulants;
  if (!(mean < 15 && variance > 0.75 * mean && variance < 2.2 * mean)) return false;
  const [single, pair] = nearPoisson(cumulants);
  return single >= 0 && pair > -MOST_NEGATIVE * mean;
}

// Far enough below 0 for a Poisson-binomial law, near enough for its chances to stay positive.
const MOST_NEGATIVE = 0.3;

/** Coefficients of the cubic whose exponential generates a law with these cumulants. */
function nearPoisson({ mean, variance, third }: Cumulants): readonly [number, number, number] {
  const pairs = variance - mean;
  const triples = third - 3 * variance + 2 * mean;
  return [mean - pairs + triples / 2, pairs - triples, triples / 2];
}

/**
 * Chances of the counts 0, 1, 2 ... under the law near a Poisson law with the given mean, variance and third
 * cumulant: its generating function is exp of a cubic, whose coefficients follow each other.
 */
export function rareChances(cumulants: Cumulants, length: number): Float64Array {
  const [a, b, c] = nearPoisson(cumulants);
  const chances = new Float64Array(length);
  chances[0] = Math.exp(-a - b / 2 - c / 3);
  for (let k = 1; k < length; k += 1) {
    const sum = a * chances[k - 1]! + b * (chances[k - 2] ?? 0) + c * (chances[k - 3] ?? 0);
    chances[k] = Math.max(0, sum / k);
  }
  return chances;
}
