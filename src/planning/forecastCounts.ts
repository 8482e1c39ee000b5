import type { AgeBin } from './ageBins.ts';
import type { CountCells, CountRules, CountWindow } from './countCells.ts';
import { cellStep, countCells } from './countCells.ts';
import type { CountKernels } from './countKernels.ts';
import { kernelsWithRenewals, kernelsWithoutRenewals } from './countKernels.ts';
import { merged, mixtureDemand } from './countMixture.ts';
import type { Demand } from './demand.ts';
import { demandFromPmf } from './demand.ts';
import { exactCounts } from './exactCounts.ts';
import type { IndexedBin } from './failureMoments.ts';
import {
  firstFailures,
  groupCumulants,
  groupFirstFailures,
  hazardGains,
  placeMoments,
} from './failureMoments.ts';
import type { Lattice, LifeBelief } from './lattice.ts';
import { isPosterior, latticeOf, typicalLife } from './lattice.ts';
import type { LatticeCounts } from './latticeCounts.ts';
import { believedMean, believedVariance, emptyCounts, refinedComponents } from './latticeCounts.ts';

/** What to forecast; anything left out has the value of `DEFAULT_COUNT_RULES`. */
export type CountRequest = Partial<Omit<CountRules, 'windows'>> & {
  readonly life: LifeBelief;
  readonly windows: readonly CountWindow[];
};

/** The forecast of one group of batteries. */
export type CountForecast = {
  /** Expected count from now to the end of each of `curveMonths` months; the first entry is 0, for now. */
  readonly expectedByMonth: readonly number[];
  /** One demand for each window. Its limits are its own: limits of windows or groups never add up. */
  readonly demands: readonly Demand[];
};

/** Failed batteries are replaced and can fail again; the fleet is kept at strength; no count month by month. */
export const DEFAULT_COUNT_RULES = { renewals: true, goneRate: 0, curveMonths: 0 };

/** Windows from now to each of some horizons [months]. */
export function horizonsFrom(horizons: readonly number[]): CountWindow[] {
  return horizons.map((to) => ({ from: 0, to }));
}

/** Distribution of the failures among some batteries in service; see `forecastGroups`. */
export function forecastCounts(bins: readonly AgeBin[], request: CountRequest): CountForecast {
  return forecastGroups([bins], request)[0]!;
}

/**
 * Distribution of the number of failures in each window, for each group of batteries in service, all under one
 * belief about their life. Given a life, places fail independently; which life is true is averaged over, so the
 * limits hold what is not known about it. Groups share that belief: the total's limits come from all bins
 * together, never from the groups'.
 * @param groups   ages [months] and counts; gather them by month first (`ageBins`)
 * @param request  life, windows [months from now], whether replacements can fail again, rate of places given up
 * @returns for each group the expected count by month and a demand for each window
 * @source hongMeekerMcCalley2009 within-sample prediction by the Poisson-binomial law, averaged over the belief
 */
export function forecastGroups(
  groups: readonly (readonly AgeBin[])[],
  request: CountRequest,
): CountForecast[] {
  const work = workFor(groups, request);
  for (let row = 0; row < work.lattice.rows; row += 1) addRow(work, row);
  return work.groups.map((group) => groupForecast(group, work, request.life));
}

type GroupWork = {
  readonly bins: readonly IndexedBin[];
  readonly counts: readonly LatticeCounts[];
  readonly expectedByMonth: Float64Array;
  /** Chances of each count so far, or undefined where they aren't added up count by count. */
  readonly exact: (Float64Array | undefined)[];
};

type Work = {
  readonly ages: readonly number[];
  readonly cells: CountCells;
  readonly lattice: Lattice;
  readonly groups: readonly GroupWork[];
  readonly plainKernels: CountKernels | undefined;
  readonly first: Float64Array;
  readonly moments: Float64Array;
};

function workFor(groups: readonly (readonly AgeBin[])[], request: CountRequest): Work {
  const last = Math.max(request.curveMonths ?? 0, ...request.windows.map(({ to }) => to));
  const step = cellStep(typicalLife(request.life), last);
  const cells = countCells({ ...DEFAULT_COUNT_RULES, step, ...request });
  const lattice = latticeOf(request.life);
  const ages = [...new Set(groups.flatMap((bins) => bins.map(({ age }) => age)))];
  const indexOf = new Map(ages.map((age, index) => [age, index]));
  return {
    ages,
    cells,
    lattice,
    groups: groups.map((bins) =>
      groupWork(
        bins.map((bin) => ({ ...bin, index: indexOf.get(bin.age)! })),
        cells,
        lattice,
      ),
    ),
    plainKernels: cells.renewals ? undefined : kernelsWithoutRenewals(cells),
    first: new Float64Array(ages.length * cells.middles.length),
    moments: new Float64Array(ages.length * cells.windows.length * 3),
  };
}

// Up to this many units counts are exact; beyond it, three moments tell the law as well.
const FEW_UNITS = 40;

function groupWork(bins: readonly IndexedBin[], cells: CountCells, lattice: Lattice): GroupWork {
  const units = bins.reduce((sum, { count }) => sum + count, 0);
  return {
    bins,
    counts: cells.windows.map(() => emptyCounts(lattice)),
    expectedByMonth: new Float64Array(cells.curveMonths + 1),
    exact: cells.windows.map(() => (units <= FEW_UNITS ? new Float64Array(3 * units + 1) : undefined)),
  };
}

function addRow(work: Work, row: number): void {
  const { ages, cells, lattice } = work;
  const weights = lattice.weight.subarray(row * lattice.columns, (row + 1) * lattice.columns);
  if (weights.every((weight) => weight === 0)) return;
  const shape = lattice.shape(row);
  const gains = hazardGains(ages, cells, shape, lattice.scale(row, Math.floor(lattice.columns / 2)));
  weights.forEach((weight, column) => {
    if (weight === 0) return;
    const scale = lattice.scale(row, column);
    const kernels = work.plainKernels ?? kernelsWithRenewals(cells, shape, scale);
    placeMoments(firstFailures(gains, cells, scale, work.first), cells, kernels, work.moments);
    for (const group of work.groups) addLife(group, work, kernels, row * lattice.columns + column);
  });
}

function addLife(group: GroupWork, work: Work, kernels: CountKernels, life: number): void {
  const { cells, moments, lattice } = work;
  const windows = cells.windows.length;
  group.counts.forEach((counts, window) => {
    const { mean, variance, third } = groupCumulants(group.bins, moments, window, windows);
    counts.mean[life] = mean;
    counts.variance[life] = variance;
    counts.third[life] = third;
  });
  addExact(group, work, lattice.weight[life]!);
  addCurve(group, work, kernels, lattice.weight[life]!);
}

function addExact(group: GroupWork, { cells, moments }: Work, weight: number): void {
  group.exact.forEach((sums, window) => {
    if (sums === undefined) return;
    const pmf = exactCounts(group.bins, moments, window, cells.windows.length);
    if (pmf === undefined) group.exact[window] = undefined;
    else pmf.mass.forEach((mass, i) => (sums[pmf.first + i]! += weight * mass));
  });
}

function addCurve(group: GroupWork, { first, cells }: Work, kernels: CountKernels, weight: number): void {
  if (cells.curveMonths === 0) return;
  const failures = groupFirstFailures(group.bins, first, cells.middles.length);
  kernels.curve.forEach((kernel, month) => {
    group.expectedByMonth[month + 1]! +=
      weight * failures.reduce((sum, each, i) => sum + each * kernel[i]!, 0);
  });
}

function groupForecast(group: GroupWork, work: Work, life: LifeBelief): CountForecast {
  const demands = group.counts.map((counts, window) => {
    const expected = believedMean(work.lattice, counts);
    const variance = believedVariance(work.lattice, counts);
    const pmf = groupPmf(group, work, life, window, variance);
    if (pmf !== undefined) return { ...demandFromPmf(pmf), expected, variance };
    return mixtureDemand(components(life, work.lattice, counts), expected, variance);
  });
  return { expectedByMonth: [...group.expectedByMonth], demands };
}

// A known life leaves one law, which is worth computing exactly as long as it isn't too wide.
const WIDEST_EXACT = 1000;

function groupPmf(group: GroupWork, work: Work, life: LifeBelief, window: number, variance: number) {
  const sums = group.exact[window];
  if (sums !== undefined) return { first: 0, mass: sums };
  if (isPosterior(life) || variance > WIDEST_EXACT) return undefined;
  return exactCounts(group.bins, work.moments, window, work.cells.windows.length);
}

function components(life: LifeBelief, lattice: Lattice, counts: LatticeCounts) {
  if (isPosterior(life)) return merged(refinedComponents(life, lattice, counts));
  return [{ weight: 1, mean: counts.mean[0]!, variance: counts.variance[0]!, third: counts.third[0]! }];
}
