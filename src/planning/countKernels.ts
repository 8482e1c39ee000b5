import type { CountCells, CountWindow } from './countCells.ts';
import { cellsReach } from './countCells.ts';
import { once } from './once.ts';
import type { RenewalTable } from './renewals.ts';
import { atTime, renewalTable } from './renewals.ts';

/**
 * What a first renewal in each cell brings to the count in one window: itself, if it lies within, and those of
 * the batteries after it, as mean and second and third factorial moments; and the mean failures after it.
 */
export type WindowKernel = {
  readonly mean: Float64Array;
  readonly second: Float64Array;
  readonly third: Float64Array;
  /** Only worked out where failures are told apart from other renewals. */
  readonly laterFailures: () => Float64Array;
};

/** The kernels of all windows, and for each whole month the mean count to date that a renewal in a cell brings. */
export type CountKernels = {
  readonly windows: readonly WindowKernel[];
  readonly curve: readonly Float64Array[];
};

/** The kernels where no place is renewed twice; the same for every life. */
export function kernelsWithoutRenewals(cells: CountCells): CountKernels {
  const none = new Float64Array(cells.middles.length);
  const alone = (window: CountWindow): WindowKernel => ({
    mean: cells.middles.map((u) => (isWithin(window, u) ? 1 : 0)),
    second: none,
    third: none,
    laterFailures: () => none,
  });
  return {
    windows: cells.windows.map(alone),
    curve: months(cells).map((month) => alone({ from: 0, to: month }).mean),
  };
}

/**
 * The kernels for one Weibull life whose batteries are replaced by new ones.
 * @param size  how many batteries are renewed together; the first of them to fail ends the life of all
 */
export function kernelsWithRenewals(
  cells: CountCells,
  shape: number,
  scale: number,
  size: number,
): CountKernels {
  const steps = Math.ceil(cellsReach(cells) / cells.step) + 1;
  // The least of several Weibull lives is a Weibull life of the same shape.
  const table = renewalTable(shape, scale * size ** (-1 / shape), steps, cells.step, cells);
  return {
    windows: cells.windows.map((window) => windowKernel(cells, window, table)),
    curve: months(cells).map((month) =>
      cells.middles.map((u) => (u < month ? 1 + atTime(table.mean, table.step, month - u) : 0)),
    ),
  };
}

/** Whether a moment lies within a window. */
export function isWithin({ from, to }: CountWindow, moment: number): boolean {
  return moment > from && moment < to;
}

const months = ({ curveMonths }: CountCells): number[] =>
  Array.from({ length: curveMonths }, (_, i) => i + 1);

function windowKernel(cells: CountCells, window: CountWindow, table: RenewalTable): WindowKernel {
  const { middles } = cells;
  const room = () => new Float64Array(middles.length);
  const laterFailures = once(() => failuresAfter(cells, window, table));
  const kernel = { mean: room(), second: room(), third: room(), laterFailures };
  const stretches = stretchesOf(window, table);
  for (let cell = 0; cell < middles.length && middles[cell]! <= window.to; cell += 1) {
    if (isWithin(window, middles[cell]!)) failedWithin(kernel, cell, window.to - middles[cell]!, table);
    else failedBefore(kernel, cell, window.to - middles[cell]!, stretches, table);
  }
  return kernel;
}

function failuresAfter({ middles }: CountCells, { from, to }: CountWindow, table: RenewalTable) {
  const { failures, step } = table;
  return middles.map((u) =>
    u > to ? 0 : atTime(failures, step, to - u) - atTime(failures, step, Math.max(0, from - u)),
  );
}

// The failure counts, and with it those of its successors: factorial moments of 1 + N.
function failedWithin(into: WindowKernel, cell: number, left: number, table: RenewalTable): void {
  const one = atTime(table.mean, table.step, left);
  const two = atTime(table.second, table.step, left);
  into.mean[cell] = 1 + one;
  into.second[cell] = 2 * one + two;
  into.third[cell] = 3 * two + atTime(table.third, table.step, left);
}

/** A window's time from its end back to its start, cut into steps, and what a renewal within one brings until the end. */
type Stretches = {
  readonly edges: Float64Array;
  readonly one: Float64Array;
  readonly two: Float64Array;
};

// The same wherever in time the first renewal was.
function stretchesOf({ from, to }: CountWindow, { step, mean, second }: RenewalTable): Stretches {
  const edges: number[] = [];
  for (let left = 0; left < to - from; left += step) edges.push(left);
  edges.push(to - from);
  const middles = Float64Array.from(edges.slice(1), (edge, i) => (edges[i]! + edge) / 2);
  return {
    edges: Float64Array.from(edges),
    one: middles.map((middle) => atTime(mean, step, middle)),
    two: middles.map((middle) => atTime(second, step, middle)),
  };
}

// Only successors count, and of those only what falls into the window: sums over their first time in it.
function failedBefore(
  into: WindowKernel,
  cell: number,
  end: number,
  { edges, one, two }: Stretches,
  { step, mean }: RenewalTable,
): void {
  const last = atTime(mean, step, end);
  let [pairs, triples, until] = [0, 0, last];
  for (let i = 0; i < one.length; i += 1) {
    const before = atTime(mean, step, end - edges[i + 1]!);
    pairs += (until - before) * one[i]!;
    triples += (until - before) * two[i]!;
    until = before;
  }
  into.mean[cell] = last - until;
  into.second[cell] = 2 * pairs;
  into.third[cell] = 3 * triples;
}
