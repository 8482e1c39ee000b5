import type { LifePosterior } from '../life/lifePosterior.ts';
import type { PosteriorGrid } from '../life/posteriorGrid.ts';
import type { CountComponent } from './countMixture.ts';
import { addComponent, componentsFrom, emptySums } from './countMixture.ts';
import type { EachWay, Lattice } from './lattice.ts';
import { alongRows, cubicAt, densified, momentStride, thinned, weightsOf } from './lattice.ts';
import type { LatticeCounts } from './latticeCounts.ts';

/**
 * The laws under the lives of a lattice with so many times as many steps each way, near ones put together. Lives
 * pass one by one: a table of all of them for each window would cost more than the sums.
 */
export function refinedComponents(
  posterior: LifePosterior,
  lattice: Lattice,
  counts: LatticeCounts,
  times: EachWay,
): CountComponent[] {
  const weights = refinedWeights(posterior, times);
  const width = (lattice.columns - 1) * times.columns + 1;
  const lines = refinedLines(lattice, counts, times.columns);
  // Next to lives under which hardly anything fails a cubic can still swing above every mean that was computed.
  const largest = counts.mean.reduce((most, each) => Math.max(most, each), 0);
  const sums = emptySums(largest);
  for (let row = 0; row * width < weights.length; row += 1) {
    const own = weights.subarray(row * width, (row + 1) * width);
    addRow(sums, own, lines, cubicAt(row / times.rows, lattice.rows), largest);
  }
  return componentsFrom(sums);
}

// Refined along the rows of the lattice only; what lies between two rows follows when a life passes.
type Lines = { readonly logMean: Float64Array; readonly spread: Float64Array; readonly skew: Float64Array };

// The log of the mean is smooth where counts run over decades; variance over mean and third cumulant over
// variance stay near 1 or below, so that a cubic can't send them far where nearly everything fails.
function refinedLines(lattice: Lattice, counts: LatticeCounts, factor: number): Lines {
  const refined = (values: Float64Array) =>
    alongRows(filled(lattice, values), lattice.rows, lattice.columns, factor);
  const ratio = (above: Float64Array, below: Float64Array) =>
    refined(above.map((value, i) => (below[i]! > 0 ? value / below[i]! : 0)));
  return {
    logMean: refined(counts.mean.map(safeLog)),
    spread: ratio(counts.variance, counts.mean),
    skew: ratio(counts.third, counts.variance),
  };
}

// A count this small is none.
const safeLog = (value: number): number => Math.log(Math.max(value, 1e-9));

function addRow(
  sums: Float64Array,
  weights: Float64Array,
  { logMean, spread, skew }: Lines,
  { start, factors }: ReturnType<typeof cubicAt>,
  largest: number,
): void {
  const width = weights.length;
  const [a, b, c, d] = factors;
  for (let column = 0; column < width; column += 1) {
    const weight = weights[column]!;
    if (weight === 0) continue;
    const p = start * width + column;
    const [q, r, s] = [p + width, p + 2 * width, p + 3 * width];
    const log = a * logMean[p]! + b * logMean[q]! + c * logMean[r]! + d * logMean[s]!;
    const over = a * spread[p]! + b * spread[q]! + c * spread[r]! + d * spread[s]!;
    const third = a * skew[p]! + b * skew[q]! + c * skew[r]! + d * skew[s]!;
    const mean = Math.min(largest, Math.exp(log));
    const variance = Math.max(0, over) * mean;
    addComponent(sums, weight, mean, variance, third * variance);
  }
}

const seen = new WeakMap<PosteriorGrid, Map<string, Float64Array>>();

// The same for all windows.
function refinedWeights(posterior: LifePosterior, times: EachWay): Float64Array {
  const known = seen.get(posterior.grid) ?? new Map<string, Float64Array>();
  seen.set(posterior.grid, known);
  const name = `${times.rows} ${times.columns}`;
  const weights = known.get(name) ?? weightsOf(densityAt(posterior, times));
  known.set(name, weights);
  return weights;
}

// Cubics swing where a log density falls off a cliff; nothing below this weighs anything.
const NEXT_TO_NOTHING = -60;

// The posterior's own grid is finer than the lattice: what it has is taken as it is.
function densityAt(posterior: LifePosterior, times: EachWay): Float64Array {
  const { grid } = posterior;
  const stride = momentStride(posterior);
  const every = bothWays(times, (each) => Math.max(1, stride / each));
  const kept = thinned(grid.logDensity, grid, every).map((value) => Math.max(value, NEXT_TO_NOTHING));
  const size = { rows: (grid.rows - 1) / every.rows + 1, columns: (grid.columns - 1) / every.columns + 1 };
  return densified(
    kept,
    size,
    bothWays(times, (each) => Math.max(1, each / stride)),
  );
}

const bothWays = ({ rows, columns }: EachWay, make: (each: number) => number): EachWay => ({
  rows: make(rows),
  columns: make(columns),
});

// Lives that are not worth computing take the value of their nearest neighbour, so that cubics stay smooth.
function filled({ rows, columns, weight }: Lattice, values: Float64Array): Float64Array {
  const full = values.slice();
  for (let i = 0; i < rows; i += 1) fillLine(full, weight, i * columns, columns, 1);
  const rowKnown = Float64Array.from({ length: rows }, (_, i) =>
    weight.subarray(i * columns, (i + 1) * columns).some((each) => each > 0) ? 1 : 0,
  );
  const known = weight.map((_, i) => rowKnown[Math.floor(i / columns)]!);
  for (let j = 0; j < columns; j += 1) fillLine(full, known, j, rows, columns);
  return full;
}

function fillLine(
  full: Float64Array,
  known: Float64Array,
  start: number,
  length: number,
  stride: number,
): void {
  let nearest = -1;
  for (let i = 0; i < length; i += 1) {
    const at = start + i * stride;
    if (known[at]! > 0) nearest = at;
    else if (nearest >= 0) full[at] = full[nearest]!;
  }
  nearest = -1;
  for (let i = length - 1; i >= 0; i -= 1) {
    const at = start + i * stride;
    if (known[at]! > 0) nearest = at;
    else if (nearest >= 0 && !hasKnownBefore(known, start, i, stride)) full[at] = full[nearest]!;
  }
}

function hasKnownBefore(known: Float64Array, start: number, index: number, stride: number): boolean {
  for (let i = 0; i < index; i += 1) if (known[start + i * stride]! > 0) return true;
  return false;
}
