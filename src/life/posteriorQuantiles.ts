import type { Cumulative } from './gridCumulative.ts';
import { cumulativeAt, cumulativeOf } from './gridCumulative.ts';
import type { LifePosterior } from './lifePosterior.ts';
import type { PosteriorGrid } from './posteriorGrid.ts';
import { gridMu, gridSigma } from './posteriorGrid.ts';
import { smallestExtremeValue } from './standardLife.ts';

/** A limit for which a share of the belief lies below: 0.05, 0.5 and 0.95 give a median with its 90 % band. */
export type BeliefQuantile = (chance: number) => number;

type Rows = {
  readonly cumulatives: readonly Cumulative[];
  readonly masses: Float64Array;
  readonly total: number;
};

const rowsSeen = new WeakMap<PosteriorGrid, Rows>();

/** Limits of the Weibull shape (wear-out: 1 none, 3 strong). */
export function posteriorShape(posterior: LifePosterior): BeliefQuantile {
  const { grid } = posterior;
  const { masses } = rowsOf(grid);
  const overRows = cumulativeOf(masses);
  const total = cumulativeAt(overRows, masses.length);
  // Large sigma is small shape, so the chance is counted from the far end.
  return (chance) => {
    const row = bisect(
      (position) => cumulativeAt(overRows, position) / total,
      1 - chance,
      0,
      masses.length - 1,
    );
    return 1 / gridSigma(grid, row);
  };
}

/** Limits of the Weibull scale, the age by which 63.2 % have failed. */
export function posteriorScale(posterior: LifePosterior): BeliefQuantile {
  return limitsOfAge(posterior, 0);
}

/** Limits of the age by which a share has failed; one half gives the median life. */
export function posteriorAge(posterior: LifePosterior, share: number): BeliefQuantile {
  return limitsOfAge(posterior, smallestExtremeValue.quantile(share));
}

/** Limits of the share that has failed by an age, for the band beside a fitted curve. */
export function posteriorShareFailed(posterior: LifePosterior, age: number): BeliefQuantile {
  const rows = rowsOf(posterior.grid);
  const logAge = Math.log(age);
  // More have failed by this age exactly where the age of that share comes earlier.
  const chanceBelow = (z: number): number => 1 - chanceAgeBelow(posterior.grid, rows, z, logAge);
  return (chance) => (age <= 0 ? 0 : -Math.expm1(-Math.exp(bisect(chanceBelow, chance, -60, 8))));
}

function limitsOfAge({ grid }: LifePosterior, z: number): BeliefQuantile {
  const rows = rowsOf(grid);
  const corners = [0, grid.rows - 1].flatMap((row) =>
    [0, grid.columns - 1].map((column) => gridMu(grid, row, column) + z * gridSigma(grid, row)),
  );
  const [low, high] = [Math.min(...corners) - 5, Math.max(...corners) + 5];
  return (chance) => Math.exp(bisect((logAge) => chanceAgeBelow(grid, rows, z, logAge), chance, low, high));
}

// Chance that mu + z sigma lies below a log age: row by row, as sigma is one along a row.
function chanceAgeBelow(grid: PosteriorGrid, rows: Rows, z: number, logAge: number): number {
  const perStep = grid.peak.spreadMu * grid.step;
  const sum = rows.cumulatives.reduce((all, cumulative, row) => {
    const position = (logAge - z * gridSigma(grid, row) - gridMu(grid, row, 0)) / perStep;
    return all + cumulativeAt(cumulative, position);
  }, 0);
  return sum / rows.total;
}

function rowsOf(grid: PosteriorGrid): Rows {
  const known = rowsSeen.get(grid);
  if (known !== undefined) return known;
  const density = grid.logDensity.map(Math.exp);
  const cumulatives = Array.from({ length: grid.rows }, (_, row) =>
    cumulativeOf(density.subarray(row * grid.columns, (row + 1) * grid.columns)),
  );
  const masses = Float64Array.from(cumulatives, (each) => cumulativeAt(each, grid.columns));
  const rows = { cumulatives, masses, total: masses.reduce((sum, mass) => sum + mass, 0) };
  rowsSeen.set(grid, rows);
  return rows;
}

function bisect(rising: (x: number) => number, target: number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (a + b) / 2;
    if (rising(middle) < target) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}
