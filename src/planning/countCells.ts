/** A stretch of time from now in which failures are counted: after `from`, up to `to` [months]. */
export type CountWindow = { readonly from: number; readonly to: number };

/** What is counted and how. */
export type CountRules = {
  readonly windows: readonly CountWindow[];
  /** Whether a battery that replaces a failed one can fail again within the forecast. */
  readonly renewals: boolean;
  /** Rate at which places are given up (vehicle sold, site closed) [per month]; 0 = fleet kept at strength. */
  readonly goneRate: number;
  /** Age at which the batteries to come are renewed by plan [months]; Infinity = on failure only. */
  readonly plannedAge: number;
  /** Whole months for which the expected count to date is wanted. */
  readonly curveMonths: number;
  /** Length of a cell where it matters when within it a battery fails [months]. */
  readonly step: number;
};

/** Time from now cut into cells: within one, a failure counts as if it came at its middle. */
export type CountCells = CountRules & {
  readonly edges: Float64Array;
  readonly middles: Float64Array;
  /** Chance that a place is still there at the middle of each cell. */
  readonly kept: Float64Array;
  /** Number of cells up to the end of each window. */
  readonly ends: readonly number[];
};

/** Length of a cell for lives of years: it keeps expected counts within 1 in 10,000 [months]. */
export const HALF_A_MONTH = 0.5;

const MOST_CELLS = 1000;

/** Length of a cell [months]: half a month, less where lives are of months, more where that would be too many. */
export function cellStep(typicalLife: number, reach: number): number {
  return Math.max(Math.min(HALF_A_MONTH, typicalLife / 24), reach / MOST_CELLS);
}

/** Cells fine enough for the rules: every window's ends, every month, every step where time within matters. */
export function countCells(rules: CountRules): CountCells {
  const step = rules.renewals || rules.goneRate > 0 || rules.plannedAge < Infinity ? rules.step : 1;
  const edges = Float64Array.from(cellEdges(rules, step));
  const middles = edges.subarray(1).map((edge, cell) => (edge + edges[cell]!) / 2);
  return {
    ...rules,
    edges,
    middles,
    kept: middles.map((middle) => Math.exp(-rules.goneRate * middle)),
    ends: rules.windows.map(({ to }) => edges.indexOf(to)),
  };
}

/** How far the cells reach [months]. */
export function cellsReach({ edges }: CountCells): number {
  return edges[edges.length - 1]!;
}

function cellEdges({ windows, curveMonths }: CountRules, step: number): number[] {
  const last = Math.max(curveMonths, ...windows.map(({ to }) => to));
  const regular = Array.from({ length: Math.floor(last / step) + 1 }, (_, i) => i * step);
  const own = windows.flatMap(({ from, to }) => [from, to]);
  return [...new Set([...regular, ...own])].sort((a, b) => a - b);
}
