import type { LogDensity, Peak } from './posteriorMode.ts';

/**
 * A density of (mu, log sigma) at equal steps along the two directions of its spread. Row i is one log sigma;
 * the columns j of a row are steps in mu.
 */
export type PosteriorGrid = {
  readonly peak: Peak;
  /** Step in standard deviations, both ways. */
  readonly step: number;
  readonly firstRow: number;
  readonly rows: number;
  readonly firstColumn: number;
  readonly columns: number;
  /** Log density less its largest value, row by row. */
  readonly logDensity: Float64Array;
  /** Log of the density's integral over the grid. */
  readonly logIntegral: number;
};

type Extent = { readonly low: number; readonly high: number };

const STEP = 0.25;
/** A grid starts 5 standard deviations out on each side and grows by one at a time, up to 20. */
const START = 5 / STEP;
const GROWTH = 1 / STEP;
const FURTHEST = 20 / STEP;
/** A side whose outermost line holds more of the mass than this is pushed out. */
const EDGE = 1e-7;

/** The grid of a density around its peak, wide enough that next to nothing lies outside. */
export function posteriorGrid(density: LogDensity, peak: Peak): PosteriorGrid {
  let rows: Extent = { low: -START, high: START };
  let columns = rows;
  for (;;) {
    const grid = gridOver(density, peak, rows, columns);
    const mass = edgeMass(grid);
    const widerRows = pushedOut(rows, mass.firstRow, mass.lastRow);
    const widerColumns = pushedOut(columns, mass.firstColumn, mass.lastColumn);
    if (widerRows === rows && widerColumns === columns) return grid;
    [rows, columns] = [widerRows, widerColumns];
  }
}

/** Sigma in a row of the grid. */
export function gridSigma({ peak, step, firstRow }: PosteriorGrid, row: number): number {
  return Math.exp(peak.logSigma + peak.spreadLogSigma * step * (firstRow + row));
}

/** Mu at a row and column of the grid. */
export function gridMu(grid: PosteriorGrid, row: number, column: number): number {
  return muAt(grid.peak, grid.step * (grid.firstRow + row), grid.step * (grid.firstColumn + column));
}

function muAt(peak: Peak, acrossRows: number, alongRow: number): number {
  return peak.mu + peak.muWithLogSigma * acrossRows + peak.spreadMu * alongRow;
}

function gridOver(density: LogDensity, peak: Peak, rows: Extent, columns: Extent): PosteriorGrid {
  const [height, width] = [rows.high - rows.low + 1, columns.high - columns.low + 1];
  const logDensity = new Float64Array(height * width);
  for (let i = 0; i < height; i += 1) {
    const acrossRows = STEP * (rows.low + i);
    const along = density(peak.logSigma + peak.spreadLogSigma * acrossRows);
    for (let j = 0; j < width; j += 1) {
      logDensity[i * width + j] = along(muAt(peak, acrossRows, STEP * (columns.low + j)));
    }
  }
  const largest = logDensity.reduce((a, b) => Math.max(a, b), -Infinity);
  const mass = logDensity.reduce((sum, value) => sum + Math.exp(value - largest), 0);
  const area = STEP * STEP * peak.spreadLogSigma * peak.spreadMu;
  return {
    peak,
    step: STEP,
    firstRow: rows.low,
    rows: height,
    firstColumn: columns.low,
    columns: width,
    logDensity: logDensity.map((value) => value - largest),
    logIntegral: largest + Math.log(mass * area),
  };
}

function edgeMass({ rows, columns, logDensity }: PosteriorGrid) {
  const line = { firstRow: 0, lastRow: 0, firstColumn: 0, lastColumn: 0 };
  let total = 0;
  logDensity.forEach((value, index) => {
    const mass = Math.exp(value);
    const [row, column] = [Math.floor(index / columns), index % columns];
    total += mass;
    if (row === 0) line.firstRow += mass;
    if (row === rows - 1) line.lastRow += mass;
    if (column === 0) line.firstColumn += mass;
    if (column === columns - 1) line.lastColumn += mass;
  });
  return {
    firstRow: line.firstRow / total,
    lastRow: line.lastRow / total,
    firstColumn: line.firstColumn / total,
    lastColumn: line.lastColumn / total,
  };
}

function pushedOut(extent: Extent, lowMass: number, highMass: number): Extent {
  const low = lowMass > EDGE && extent.low > -FURTHEST ? extent.low - GROWTH : extent.low;
  const high = highMass > EDGE && extent.high < FURTHEST ? extent.high + GROWTH : extent.high;
  return low === extent.low && high === extent.high ? extent : { low, high };
}
