import type { CountCells } from './countCells.ts';
import type { CountKernels, WindowKernel } from './countKernels.ts';
import type { FirstRenewals, IndexedBin, PlaceKind } from './placeTable.ts';

/** Mean, second and third factorial moment of the renewals of a place of each kind in each window. */
export function placeMoments(
  { failing, planned }: FirstRenewals,
  kinds: readonly PlaceKind[],
  cells: CountCells,
  kernels: ReadonlyMap<number, CountKernels>,
  into: Float64Array,
): void {
  const width = cells.middles.length;
  const windows = cells.ends.length;
  const either = planned === undefined ? failing : failing.map((chance, i) => chance + planned[i]!);
  kinds.forEach(({ ages }, kind) => {
    const chances = either.subarray(kind * width, (kind + 1) * width);
    const own = kernels.get(ages.length)!.windows;
    for (let window = 0; window < windows; window += 1) {
      sumMoments(chances, own[window]!, cells.ends[window]!, into, 3 * (kind * windows + window));
    }
  });
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

/** Mean, variance and third cumulant of a group's count. */
export type Cumulants = { readonly mean: number; readonly variance: number; readonly third: number };

/**
 * The cumulants of a group's count in one window, in lots: those of its places added, for places are renewed
 * independently; each renewal takes all the batteries of its place.
 */
export function groupCumulants(
  bins: readonly IndexedBin[],
  moments: Float64Array,
  window: number,
  windows: number,
): Cumulants {
  let [mean, variance, third] = [0, 0, 0];
  for (const { index, count, lots } of bins) {
    const at = 3 * (index * windows + window);
    const [one, two, three] = [moments[at]!, moments[at + 1]!, moments[at + 2]!];
    mean += count * lots * one;
    variance += count * lots * lots * (two + one - one * one);
    third += count * lots ** 3 * (three + 3 * two + one - 3 * one * (two + one) + 2 * one * one * one);
  }
  return { mean, variance, third };
}

/** A group's expected number of first renewals in each cell, of its places with `size` batteries. */
export function groupFirst(
  bins: readonly IndexedBin[],
  size: number,
  first: Float64Array | undefined,
  cells: number,
): Float64Array {
  const sums = new Float64Array(cells);
  if (first === undefined) return sums;
  for (const bin of bins) {
    if (bin.size !== size) continue;
    for (let cell = 0; cell < cells; cell += 1) sums[cell]! += bin.count * first[bin.index * cells + cell]!;
  }
  return sums;
}
