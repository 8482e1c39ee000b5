import type { LifePosterior } from '../life/lifePosterior.ts';
import type { ComponentColumns } from './countMixture.ts';
import type { Lattice } from './lattice.ts';
import { densified, momentStride, thinned, weightsOf } from './lattice.ts';

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

/** The lattice refined until neighbouring means differ by less than a deviation, one component a life. */
export function refinedComponents(
  posterior: LifePosterior,
  lattice: Lattice,
  counts: LatticeCounts,
): ComponentColumns {
  const wanted = largestGap(lattice, counts) / APART;
  if (wanted <= 1) return { weight: lattice.weight, ...counts };
  const factor = Math.min(MOST_REFINED, 2 ** Math.ceil(Math.log2(wanted)));
  return { weight: weightsOf(densityAt(posterior, factor)), ...refined(lattice, counts, factor) };
}

// Cubics swing where a log density falls off a cliff; nothing below this weighs anything.
const NEXT_TO_NOTHING = -60;

function densityAt(posterior: LifePosterior, factor: number): Float64Array {
  const { rows, columns } = posterior.grid;
  const stride = momentStride(posterior);
  const logDensity = posterior.grid.logDensity.map((value) => Math.max(value, NEXT_TO_NOTHING));
  return factor <= stride
    ? thinned(logDensity, rows, columns, stride / factor)
    : densified(logDensity, rows, columns, factor / stride);
}

// The log of the mean is smooth where counts run over decades; variance over mean and third cumulant over
// variance stay near 1 or below, so that a cubic can't send them far where nearly everything fails.
function refined(lattice: Lattice, counts: LatticeCounts, factor: number): LatticeCounts {
  const dense = (values: Float64Array) =>
    densified(filled(lattice, values), lattice.rows, lattice.columns, factor);
  const ratio = (above: Float64Array, below: Float64Array) =>
    dense(above.map((value, i) => (below[i]! > 0 ? value / below[i]! : 0)));
  // Next to lives under which hardly anything fails a cubic can still swing above every mean that was computed.
  const largest = counts.mean.reduce((most, each) => Math.max(most, each), 0);
  const mean = dense(counts.mean.map(safeLog)).map((each) => Math.min(largest, Math.exp(each)));
  const variance = ratio(counts.variance, counts.mean).map((each, i) => Math.max(0, each) * mean[i]!);
  const third = ratio(counts.third, counts.variance).map((each, i) => each * variance[i]!);
  return { mean, variance, third };
}

// A count this small is none.
const safeLog = (value: number): number => Math.log(Math.max(value, 1e-9));

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

function largestGap({ rows, columns, weight }: Lattice, { mean, variance }: LatticeCounts): number {
  let largest = 0;
  const gap = (a: number, b: number): void => {
    if (!(weight[a]! > WORTH && weight[b]! > WORTH)) return;
    const deviation = Math.sqrt((variance[a]! + variance[b]!) / 2 + 1 / 12);
    largest = Math.max(largest, Math.abs(mean[a]! - mean[b]!) / deviation);
  };
  for (let i = 0; i < rows; i += 1) {
    for (let j = 0; j < columns; j += 1) {
      if (j > 0) gap(i * columns + j - 1, i * columns + j);
      if (i > 0) gap((i - 1) * columns + j, i * columns + j);
    }
  }
  return largest;
}

// Lives with less weight than this shape no limit that is shown.
const WORTH = 1e-4;
