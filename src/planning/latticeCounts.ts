import type { LifePosterior } from '../life/lifePosterior.ts';
import type { CountComponent } from './countMixture.ts';
import { merged } from './countMixture.ts';
import type { Lattice } from './lattice.ts';
import { refinedComponents } from './refinedLives.ts';

/** A count's cumulants under each life of a lattice. */
export type LatticeCounts = {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
  readonly third: Float64Array;
};

/** Room for the cumulants of a lattice. */
export function emptyCounts({ weight }: Lattice): LatticeCounts {
  const room = () => new Float64Array(weight.length);
  return { mean: room(), variance: room(), third: room() };
}

/** Mean over the belief. */
export function believedMean({ weight }: Lattice, { mean }: LatticeCounts): number {
  return weight.reduce((sum, each, i) => sum + each * mean[i]!, 0);
}

/** Variance over the belief: the mean of the variances and the variance of the means. */
export function believedVariance(lattice: Lattice, counts: LatticeCounts): number {
  const middle = believedMean(lattice, counts);
  return lattice.weight.reduce(
    (sum, each, i) => sum + each * (counts.variance[i]! + (counts.mean[i]! - middle) ** 2),
    0,
  );
}

// Neighbouring laws this many deviations apart still melt into one smooth mixture.
const APART = 0.8;
const MOST_REFINED = 16;

/** The laws of a count, the lattice refined until neighbouring means differ by less than a deviation. */
export function believedLaws(
  posterior: LifePosterior,
  lattice: Lattice,
  counts: LatticeCounts,
): CountComponent[] {
  const gaps = [1, lattice.columns].map((step) => largestGap(lattice, counts, step));
  const factor = factorFor(Math.max(...gaps));
  if (factor === 1) return merged({ weight: lattice.weight, ...counts });
  return refinedComponents(posterior, lattice, counts, { rows: factor, columns: factor });
}

// Whole powers of 2 fit the steps of the posterior's grid.
function factorFor(gap: number): number {
  return gap <= APART ? 1 : Math.min(MOST_REFINED, 2 ** Math.ceil(Math.log2(gap / APART)));
}

// Lives with less weight than this shape no limit that is shown.
const WORTH = 1e-4;

// Between neighbours in a row, a step of 1, or in a column, a step of one row.
function largestGap({ columns, weight }: Lattice, { mean, variance }: LatticeCounts, step: number): number {
  let largest = 0;
  for (let at = step; at < weight.length; at += 1) {
    const before = at - step;
    const isBegin = step === 1 && at % columns === 0;
    if (isBegin || !(weight[before]! > WORTH && weight[at]! > WORTH)) continue;
    const deviation = Math.sqrt((variance[before]! + variance[at]!) / 2 + 1 / 12);
    largest = Math.max(largest, Math.abs(mean[before]! - mean[at]!) / deviation);
  }
  return largest;
}
