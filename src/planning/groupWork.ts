import type { CountCells } from './countCells.ts';
import type { CountKernels } from './countKernels.ts';
import { isWithin } from './countKernels.ts';
import { mixtureDemand } from './countMixture.ts';
import type { Demand } from './demand.ts';
import { demandFromPmf, demandInLots } from './demand.ts';
import { demandWhenAsked } from './demandWhenAsked.ts';
import { exactCounts } from './exactCounts.ts';
import { groupCumulants, groupFirst } from './failureMoments.ts';
import type { Lattice, LifeBelief } from './lattice.ts';
import { isPosterior } from './lattice.ts';
import type { LatticeCounts } from './latticeCounts.ts';
import { believedLaws, believedMean, believedVariance, emptyCounts } from './latticeCounts.ts';
import type { FirstRenewals, IndexedBin } from './placeTable.ts';

/** What a window's expected count is made of: batteries that fail, good ones renewed with them, planned renewals. */
export type CountParts = { readonly failures: number; readonly mates: number; readonly planned: number };

/** One group's sums over the lives of the lattice. Counts are in lots: the largest size that divides all. */
export type GroupWork = {
  readonly bins: readonly IndexedBin[];
  readonly sizes: readonly number[];
  readonly lot: number;
  /** Whether the expected count has parts that have to be told apart. */
  readonly hasParts: boolean;
  readonly counts: readonly LatticeCounts[];
  readonly parts: readonly { failures: number; mates: number }[];
  readonly expectedByMonth: Float64Array;
  /** Renewals expected of each place of a bin, bin by bin, a number for each window. */
  readonly eachPlace: Float64Array;
  /** Chances of each count so far, or undefined where they aren't added up count by count. */
  readonly exact: (Float64Array | undefined)[];
};

// Up to this many units counts are exact; beyond it, three moments tell the law as well.
const FEW_UNITS = 40;

/** An empty start for one group. */
export function groupWork(bins: readonly IndexedBin[], cells: CountCells, lattice: Lattice): GroupWork {
  const sizes = [...new Set(bins.map(({ size }) => size))];
  const lot = sizes.reduce(greatestDivisor, sizes[0] ?? 1);
  const inLots = bins.map((bin) => ({ ...bin, lots: bin.size / lot }));
  const most = 3 * inLots.reduce((sum, { count, lots }) => sum + count * lots, 0);
  const few = most <= 3 * FEW_UNITS && hasWholeCounts(bins);
  return {
    ...{ bins: inLots, sizes, lot },
    hasParts:
      cells.plannedAge < Infinity || bins.some(({ size, plannedIn }) => size > 1 || plannedIn !== undefined),
    counts: cells.windows.map(() => emptyCounts(lattice)),
    parts: cells.windows.map(() => ({ failures: 0, mates: 0 })),
    expectedByMonth: new Float64Array(cells.curveMonths + 1),
    eachPlace: new Float64Array(bins.length * cells.windows.length),
    exact: cells.windows.map(() => (few ? new Float64Array(most + 1) : undefined)),
  };
}

const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));

// Batteries whose age is known as shares only have no exact law here.
const hasWholeCounts = (bins: readonly IndexedBin[]): boolean =>
  bins.every(({ count }) => Number.isInteger(count));

/** What one life of the lattice brings. */
export type LifeWork = {
  readonly life: number;
  readonly weight: number;
  readonly first: FirstRenewals;
  readonly moments: Float64Array;
  readonly kernels: ReadonlyMap<number, CountKernels>;
};

/** Adds what one life brings to a group's sums. */
export function addLife(group: GroupWork, cells: CountCells, work: LifeWork): void {
  const windows = cells.windows.length;
  group.counts.forEach((counts, window) => {
    const { mean, variance, third } = groupCumulants(group.bins, work.moments, window, windows);
    counts.mean[work.life] = mean;
    counts.variance[work.life] = variance;
    counts.third[work.life] = third;
  });
  addEachPlace(group, windows, work);
  addExact(group, windows, work);
  if (group.hasParts) addParts(group, cells, work);
  if (cells.curveMonths > 0) addCurve(group, cells, work);
}

function addEachPlace({ bins, eachPlace }: GroupWork, windows: number, { moments, weight }: LifeWork): void {
  bins.forEach(({ index }, bin) => {
    for (let window = 0; window < windows; window += 1)
      eachPlace[bin * windows + window]! += weight * moments[3 * (index * windows + window)]!;
  });
}

function addExact(group: GroupWork, windows: number, { moments, weight }: LifeWork): void {
  group.exact.forEach((sums, window) => {
    if (sums === undefined) return;
    const pmf = exactCounts(group.bins, moments, window, windows);
    if (pmf === undefined) group.exact[window] = undefined;
    else pmf.mass.forEach((mass, i) => (sums[pmf.first + i]! += weight * mass));
  });
}

function addParts(
  { bins, sizes, parts }: GroupWork,
  cells: CountCells,
  { first, kernels, weight }: LifeWork,
): void {
  const width = cells.middles.length;
  for (const size of sizes) {
    const failing = groupFirst(bins, size, first.failing, width);
    const planned = groupFirst(bins, size, first.planned, width);
    cells.windows.forEach((window, w) => {
      const laterFailures = kernels.get(size)!.windows[w]!.laterFailures();
      let events = 0;
      for (let cell = 0; cell < width; cell += 1) {
        events += (failing[cell]! + planned[cell]!) * laterFailures[cell]!;
        if (isWithin(window, cells.middles[cell]!)) events += failing[cell]!;
      }
      parts[w]!.failures += weight * events;
      parts[w]!.mates += weight * (size - 1) * events;
    });
  }
}

function addCurve(group: GroupWork, cells: CountCells, { first, kernels, weight }: LifeWork): void {
  const width = cells.middles.length;
  for (const size of group.sizes) {
    const failing = groupFirst(group.bins, size, first.failing, width);
    const planned = groupFirst(group.bins, size, first.planned, width);
    kernels.get(size)!.curve.forEach((kernel, month) => {
      const renewals = failing.reduce((sum, each, i) => sum + (each + planned[i]!) * kernel[i]!, 0);
      group.expectedByMonth[month + 1]! += weight * size * renewals;
    });
  }
}

// A known life leaves one law, which is worth computing exactly as long as it isn't too wide.
const WIDEST_EXACT = 1000;

/** The demand in one window. `moments` are those of the last life, which a known life has for its only one. */
export function windowDemand(
  group: GroupWork,
  window: number,
  belief: LifeBelief,
  lattice: Lattice,
  moments: Float64Array,
): Demand {
  const counts = group.counts[window]!;
  const expected = believedMean(lattice, counts);
  const variance = believedVariance(lattice, counts);
  const law = (): Demand => {
    const known = !isPosterior(belief) && variance <= WIDEST_EXACT && hasWholeCounts(group.bins);
    const pmf = known ? exactCounts(group.bins, moments, window, group.counts.length) : group.exact[window];
    return pmf === undefined
      ? mixtureDemand(components(belief, lattice, counts), expected, variance)
      : demandFromPmf('mass' in pmf ? pmf : { first: 0, mass: pmf });
  };
  return demandInLots(demandWhenAsked(expected, variance, law), group.lot);
}

function components(belief: LifeBelief, lattice: Lattice, counts: LatticeCounts) {
  if (isPosterior(belief)) return believedLaws(belief, lattice, counts);
  return [{ weight: 1, mean: counts.mean[0]!, variance: counts.variance[0]!, third: counts.third[0]! }];
}

/** What the expected count of a window is made of. */
export function windowParts({ parts, hasParts }: GroupWork, window: number, expected: number): CountParts {
  if (!hasParts) return { failures: expected, mates: 0, planned: 0 };
  const { failures, mates } = parts[window]!;
  return { failures, mates, planned: Math.max(0, expected - failures - mates) };
}
