import erfcx from '@stdlib/math-base-special-erfcx';
import type { Cumulants } from './failureMoments.ts';

// Share of the standard normal law below x.
function normalCdf(x: number): number {
  const tail = 0.5 * erfcx(Math.abs(x) * Math.SQRT1_2) * Math.exp(-0.5 * x * x);
  return x < 0 ? tail : 1 - tail;
}

/**
 * Chance of at most `count` under a law with the given mean, variance and third cumulant: a shifted gamma
 * law at count + 1/2 by the cube-root transformation. Within 0.005 from a mean of 5 on, 0.001 from 12 on.
 * @source wilsonHilferty1931 cube root of a gamma variable
 */
export function skewedCdf({ mean, variance, third }: Cumulants, count: number): number {
  if (variance < 1e-12) return count + 0.5 >= mean ? 1 : 0;
  const x = (count + 0.5 - mean) / Math.sqrt(variance);
  const skewness = third / variance ** 1.5;
  return skewness < 0 ? 1 - gammaCdf(-x, -skewness) : gammaCdf(x, skewness);
}

function gammaCdf(x: number, skewness: number): number {
  if (skewness < 1e-6) return normalCdf(x);
  const size = 1 / (9 * (2 / skewness) ** 2);
  const cube = 1 + (skewness * x) / 2;
  return cube <= 0 ? 0 : normalCdf((Math.cbrt(cube) - 1 + size) / Math.sqrt(size));
}

/** Whether a count is so rare that its law is near a Poisson law and a gamma law is too coarse. */
export function isRare({ mean, variance }: Cumulants): boolean {
  return mean < 15 && variance > 0.75 * mean && variance < 2.2 * mean;
}

/**
 * Chances of the counts 0, 1, 2 ... under the law near a Poisson law with the given mean, variance and third
 * cumulant: its generating function is exp of a cubic, whose coefficients follow each other.
 */
export function rareChances({ mean, variance, third }: Cumulants, length: number): Float64Array {
  const pairs = variance - mean;
  const triples = third - 3 * variance + 2 * mean;
  const [a, b, c] = [mean - pairs + triples / 2, pairs - triples, triples / 2];
  const chances = new Float64Array(length);
  chances[0] = Math.exp(-mean + pairs / 2 - triples / 6);
  for (let k = 1; k < length; k += 1) {
    const sum = a * chances[k - 1]! + b * (chances[k - 2] ?? 0) + c * (chances[k - 3] ?? 0);
    chances[k] = Math.max(0, sum / k);
  }
  return chances;
}
