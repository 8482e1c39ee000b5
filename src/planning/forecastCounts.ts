import type { AgeBin } from './ageBins.ts';
import type { CountCells, CountRules, CountWindow } from './countCells.ts';
import { cellStep, countCells } from './countCells.ts';
import type { CountKernels } from './countKernels.ts';
import { kernelsWithRenewals, kernelsWithoutRenewals } from './countKernels.ts';
import type { Demand } from './demand.ts';
import { placeMoments } from './failureMoments.ts';
import type { CountParts, GroupWork } from './groupWork.ts';
import { addLife, groupWork, windowDemand, windowParts } from './groupWork.ts';
import type { Lattice, LifeBelief } from './lattice.ts';
import { latticeOf, typicalLife } from './lattice.ts';
import type { FirstRenewals, PlaceTable } from './placeTable.ts';
import { emptyRenewals, fillFirstRenewals, hazardGains, placeTable } from './placeTable.ts';

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
  /** What the expected count of each window is made of. */
  readonly parts: readonly CountParts[];
  /** For each bin and window the batteries that each battery's place in the bin is expected to need. */
  readonly eachPlace: readonly (readonly number[])[];
};

/** Renewed on failure only; new batteries can fail again; the fleet is kept at strength; no count month by month. */
export const DEFAULT_COUNT_RULES = { renewals: true, goneRate: 0, plannedAge: Infinity, curveMonths: 0 };

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

type Work = {
  readonly table: PlaceTable;
  readonly cells: CountCells;
  readonly lattice: Lattice;
  readonly groups: readonly GroupWork[];
  readonly plainKernels: ReadonlyMap<number, CountKernels> | undefined;
  readonly first: FirstRenewals;
  readonly moments: Float64Array;
};

function workFor(groups: readonly (readonly AgeBin[])[], request: CountRequest): Work {
  const last = Math.max(request.curveMonths ?? 0, ...request.windows.map(({ to }) => to));
  const step = cellStep(typicalLife(request.life), last);
  const cells = countCells({ ...DEFAULT_COUNT_RULES, step, ...request });
  const lattice = latticeOf(request.life);
  const table = placeTable(groups, cells);
  return {
    ...{ table, cells, lattice },
    groups: table.groups.map((bins) => groupWork(bins, cells, lattice)),
    plainKernels: cells.renewals ? undefined : kernelsFor(table, () => kernelsWithoutRenewals(cells)),
    first: emptyRenewals(table, cells),
    moments: new Float64Array(table.kinds.length * cells.windows.length * 3),
  };
}

function kernelsFor({ sizes }: PlaceTable, make: (size: number) => CountKernels) {
  return new Map(sizes.map((size) => [size, make(size)]));
}

function addRow(work: Work, row: number): void {
  const { table, cells, lattice } = work;
  const weights = lattice.weight.subarray(row * lattice.columns, (row + 1) * lattice.columns);
  if (weights.every((weight) => weight === 0)) return;
  const shape = lattice.shape(row);
  const gains = hazardGains(table.kinds, cells, shape, lattice.scale(row, Math.floor(lattice.columns / 2)));
  weights.forEach((weight, column) => {
    if (weight === 0) return;
    const scale = lattice.scale(row, column);
    const kernels =
      work.plainKernels ?? kernelsFor(table, (size) => kernelsWithRenewals(cells, shape, scale, size));
    fillFirstRenewals(work.first, gains, table.kinds, cells, scale);
    placeMoments(work.first, table.kinds, cells, kernels, work.moments);
    const life = row * lattice.columns + column;
    const { first, moments } = work;
    for (const group of work.groups) addLife(group, cells, { life, weight, first, moments, kernels });
  });
}

function groupForecast(
  group: GroupWork,
  { lattice, moments, cells }: Work,
  belief: LifeBelief,
): CountForecast {
  const demands = cells.windows.map((_, window) => windowDemand(group, window, belief, lattice, moments));
  return {
    expectedByMonth: [...group.expectedByMonth],
    demands,
    parts: demands.map(({ expected }, window) => windowParts(group, window, expected)),
    eachPlace: group.bins.map((_, bin) => [
      ...group.eachPlace.subarray(bin * demands.length, (bin + 1) * demands.length),
    ]),
  };
}
