import type { WeibullLife } from '../life/lifeFromRules.ts';
import type { LifePosterior } from '../life/lifePosterior.ts';
import { gridMu, gridSigma } from '../life/posteriorGrid.ts';

/** What a forecast may rest on: a known life, or what is believed about it after records. */
export type LifeBelief = WeibullLife | LifePosterior;

/** Lives on a grid of equal steps; one row has one shape. A known life is a grid of one. */
export type Lattice = {
  readonly rows: number;
  readonly columns: number;
  readonly shape: (row: number) => number;
  readonly scale: (row: number, column: number) => number;
  /** How much each is believed, row by row; together 1, 0 for what is not worth computing. */
  readonly weight: Float64Array;
};

const DROPPED = Math.log(1e-8);

/** Whether a forecast rests on a posterior rather than on a known life. */
export function isPosterior(life: LifeBelief): life is LifePosterior {
  return 'grid' in life;
}

/** The scale of the life, the most credible one of a posterior [months]. */
export function typicalLife(life: LifeBelief): number {
  return isPosterior(life) ? Math.exp(life.mode.mu) : life.scale;
}

/**
 * Every how many lines of the posterior's grid a forecast's moments are computed: they change slowly, so one
 * standard deviation apart will do, half of one where fewer than ten failures leave the belief wide and skewed.
 */
export function momentStride({ failures }: LifePosterior): number {
  return failures >= 10 ? 4 : 2;
}

/** The lives for which a forecast's moments are computed. */
export function latticeOf(life: LifeBelief): Lattice {
  if (!isPosterior(life)) {
    return {
      rows: 1,
      columns: 1,
      shape: () => life.shape,
      scale: () => life.scale,
      weight: Float64Array.of(1),
    };
  }
  const { grid } = life;
  const stride = momentStride(life);
  const density = thinned(grid.logDensity, grid, { rows: stride, columns: stride });
  return {
    rows: (grid.rows - 1) / stride + 1,
    columns: (grid.columns - 1) / stride + 1,
    shape: (row) => 1 / gridSigma(grid, row * stride),
    scale: (row, column) => Math.exp(gridMu(grid, row * stride, column * stride)),
    weight: weightsOf(density),
  };
}

/** Weights that sum to 1 from log densities; what lies below 1e-8 of the largest gets none. */
export function weightsOf(logDensity: Float64Array): Float64Array {
  const weight = logDensity.map((value) => (value < DROPPED ? 0 : Math.exp(value)));
  const total = weight.reduce((sum, each) => sum + each, 0);
  return weight.map((each) => each / total);
}

/** How many rows, and how many columns. */
export type EachWay = { readonly rows: number; readonly columns: number };

/** Every so many rows and columns of a grid. */
export function thinned(values: Float64Array, { rows, columns }: EachWay, every: EachWay): Float64Array {
  const height = Math.floor((rows - 1) / every.rows) + 1;
  const width = Math.floor((columns - 1) / every.columns) + 1;
  const kept = new Float64Array(height * width);
  for (let i = 0; i < height; i += 1) {
    for (let j = 0; j < width; j += 1)
      kept[i * width + j] = values[i * every.rows * columns + j * every.columns]!;
  }
  return kept;
}

/** A grid with so many times as many steps each way, by cubics through four neighbours. */
export function densified(values: Float64Array, { rows, columns }: EachWay, times: EachWay): Float64Array {
  const wide = alongRows(values, rows, columns, times.columns);
  if (times.rows === 1) return wide;
  const width = (columns - 1) * times.columns + 1;
  const turned = alongRows(transposed(wide, rows, width), width, rows, times.rows);
  return transposed(turned, width, (rows - 1) * times.rows + 1);
}

/** The same along the rows alone. */
export function alongRows(values: Float64Array, rows: number, columns: number, factor: number): Float64Array {
  if (factor === 1) return values;
  const width = (columns - 1) * factor + 1;
  const dense = new Float64Array(rows * width);
  for (let j = 0; j < width; j += 1) {
    const { start, factors } = cubicAt(j / factor, columns);
    const [a, b, c, d] = factors;
    for (let i = 0; i < rows; i += 1) {
      const at = i * columns + start;
      dense[i * width + j] =
        a * values[at]! + b * values[at + 1]! + c * values[at + 2]! + d * values[at + 3]!;
    }
  }
  return dense;
}

/** The first of the four neighbours of a position on a line of `length` values, and how much each of them counts. */
export function cubicAt(position: number, length: number) {
  const start = Math.max(0, Math.min(length - 4, Math.floor(position) - 1));
  return { start, factors: cubicWeights(position - start) };
}

// Lagrange's weights of the values at 0, 1, 2, 3.
function cubicWeights(x: number): [number, number, number, number] {
  const [p, q, r] = [x - 1, x - 2, x - 3];
  return [(-p * q * r) / 6, (x * q * r) / 2, (-x * p * r) / 2, (x * p * q) / 6];
}

function transposed(values: Float64Array, rows: number, columns: number): Float64Array {
  const turned = new Float64Array(values.length);
  for (let i = 0; i < rows; i += 1) {
    for (let j = 0; j < columns; j += 1) turned[j * rows + i] = values[i * columns + j]!;
  }
  return turned;
}
