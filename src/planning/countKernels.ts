import type { CountCells, CountWindow } from './countCells.ts';
import { cellsReach } from './countCells.ts';
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
  readonly laterFailures: Float64Array;
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
    laterFailures: none,
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

function windowKernel({ middles }: CountCells, window: CountWindow, table: RenewalTable): WindowKernel {
  const room = () => new Float64Array(middles.length);
  const kernel = { mean: room(), second: room(), third: room(), laterFailures: room() };
  middles.forEach((u, cell) => {
    if (u > window.to) return;
    const [mean, second, third] = isWithin(window, u)
      ? failedWithin(window, u, table)
      : failedBefore(window, u, table);
    kernel.mean[cell] = mean;
    kernel.second[cell] = second;
    kernel.third[cell] = third;
    kernel.laterFailures[cell] =
      atTime(table.failures, table.step, window.to - u) -
      atTime(table.failures, table.step, Math.max(0, window.from - u));
  });
  return kernel;
}

type Moments = [mean: number, second: number, third: number];

// The failure counts, and with it those of its successors: factorial moments of 1 + N.
function failedWithin({ to }: CountWindow, u: number, { step, mean, second, third }: RenewalTable): Moments {
  const [one, two, three] = [mean, second, third].map((values) => atTime(values, step, to - u));
  return [1 + one!, 2 * one! + two!, 3 * two! + three!];
}

// Only successors count, and of those only what falls into the window: sums over their first time in it.
function failedBefore({ from, to }: CountWindow, u: number, { step, mean, second }: RenewalTable): Moments {
  const [start, end] = [from - u, to - u];
  let [pairs, triples] = [0, 0];
  for (let left = 0; left < to - from; left += step) {
    const further = Math.min(left + step, to - from);
    const arriving = atTime(mean, step, end - left) - atTime(mean, step, end - further);
    const middle = (left + further) / 2;
    pairs += arriving * atTime(mean, step, middle);
    triples += arriving * atTime(second, step, middle);
  }
  return [atTime(mean, step, end) - atTime(mean, step, start), 2 * pairs, 3 * triples];
}
