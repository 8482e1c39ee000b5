import { weibullHazardGain } from '../life/weibull.ts';
import type { AgeBin } from './ageBins.ts';
import type { CountCells } from './countCells.ts';
import type { CountKernels, WindowKernel } from './countKernels.ts';

/** Weibull hazard met in each cell by a battery of each age, for one shape, in units that `ageScale` undoes. */
export type HazardGains = { readonly shape: number; readonly ageScale: number; readonly gains: Float64Array };

/**
 * Hazard gains for one shape; the scale enters later as one factor, so a grid of lives costs one table a shape.
 * @param ageScale  an age near the scales to come [months]; keeps the powers from running out of numbers
 */
export function hazardGains(
  ages: readonly number[],
  { edges }: CountCells,
  shape: number,
  ageScale: number,
): HazardGains {
  const cells = edges.length - 1;
  const gains = new Float64Array(ages.length * cells);
  ages.forEach((age, j) => {
    for (let cell = 0; cell < cells; cell += 1) {
      const width = edges[cell + 1]! - edges[cell]!;
      gains[j * cells + cell] = weibullHazardGain(age + edges[cell]!, width, shape, ageScale);
    }
  });
  return { shape, ageScale, gains };
}

/** Chance that a battery of each age first fails in each cell, its place still there; row by row of ages. */
export function firstFailures(
  { shape, ageScale, gains }: HazardGains,
  { kept }: CountCells,
  scale: number,
  into: Float64Array,
): Float64Array {
  const factor = (ageScale / scale) ** shape;
  const cells = kept.length;
  for (let start = 0; start < gains.length; start += cells) {
    let alive = 1;
    for (let cell = 0; cell < cells; cell += 1) {
      const failing = -alive * Math.expm1(-factor * gains[start + cell]!);
      alive -= failing;
      into[start + cell] = failing * kept[cell]!;
    }
  }
  return into;
}

/** Mean, second and third factorial moment of the count of one battery's place, for each age and window. */
export function placeMoments(
  first: Float64Array,
  cells: CountCells,
  kernels: CountKernels,
  into: Float64Array,
): Float64Array {
  const width = cells.middles.length;
  const windows = cells.ends.length;
  for (let start = 0, at = 0; start < first.length; start += width) {
    const chances = first.subarray(start, start + width);
    for (let window = 0; window < windows; window += 1, at += 3) {
      sumMoments(chances, kernels.windows[window]!, cells.ends[window]!, into, at);
    }
  }
  return into;
}

function sumMoments(
  chances: Float64Array,
  { mean, second, third }: WindowKernel,
  end: number,
  into: Float64Array,
  at: number,
): void {
  let [one, two, three] = [0, 0, 0];
  for (let cell = 0; cell < end; cell += 1) {
    const chance = chances[cell]!;
    one += chance * mean[cell]!;
    two += chance * second[cell]!;
    three += chance * third[cell]!;
  }
  into[at] = one;
  into[at + 1] = two;
  into[at + 2] = three;
}

/** A bin and where its age stands in the table of ages. */
export type IndexedBin = AgeBin & { readonly index: number };

/** Mean, variance and third cumulant of a group's count. */
export type Cumulants = { readonly mean: number; readonly variance: number; readonly third: number };

/** The cumulants of a group's count in one window: those of its places added, for places fail independently. */
export function groupCumulants(
  bins: readonly IndexedBin[],
  moments: Float64Array,
  window: number,
  windows: number,
): Cumulants {
  let [mean, variance, third] = [0, 0, 0];
  for (const { index, count } of bins) {
    const at = 3 * (index * windows + window);
    const [one, two, three] = [moments[at]!, moments[at + 1]!, moments[at + 2]!];
    mean += count * one;
    variance += count * (two + one - one * one);
    third += count * (three + 3 * two + one - 3 * one * (two + one) + 2 * one * one * one);
  }
  return { mean, variance, third };
}

/** A group's expected number of first failures in each cell. */
export function groupFirstFailures(
  bins: readonly IndexedBin[],
  first: Float64Array,
  cells: number,
): Float64Array {
  const sums = new Float64Array(cells);
  for (const { index, count } of bins) {
    for (let cell = 0; cell < cells; cell += 1) sums[cell]! += count * first[index * cells + cell]!;
  }
  return sums;
}
