import { chanceEnough, expectedShortage } from './demand.ts';
import type { PlanPeriod } from './fiscalYears.ts';
import { fleetForecast } from './fleetForecast.ts';
import { windowToDate } from './planPeriods.ts';
import type { Fleet } from './planViews.ts';

/** How likely some numbers of batteries cover all failures up to the end of a fiscal year, due now left out. */
export type Funding = {
  /** The fiscal year at whose end it is counted. */
  readonly until: string;
  readonly rows: readonly { readonly count: number; readonly chance: number; readonly missing: number }[];
};

// From hopeless to certain for all practical ends.
const ENDS = [0.001, 0.999] as const;
const MOST_ROWS = 30;

/**
 * Chance that a number of batteries is enough, and how many are likely missing, up to the end of the first whole
 * fiscal year of the plan.
 */
export function fundingTable(fleet: Fleet, years: readonly PlanPeriod[]): Funding {
  const year = years[1] ?? years[0]!;
  const window = windowToDate(year);
  // Shown to more digits than the rest, which would move with the months and quarters that share a forecast's cells.
  const demand = fleetForecast(fleet, [window]).demand(window);
  const [low, high] = ENDS.map((chance) => demand.quantile(chance)) as [number, number];
  const step = Math.max(1, Math.ceil((high - low) / MOST_ROWS));
  const counts = Array.from({ length: Math.ceil((high - low) / step) + 1 }, (_, i) => low + i * step);
  return {
    until: year.label,
    rows: counts.map((count) => ({
      count,
      chance: chanceEnough(demand, count),
      missing: expectedShortage(demand, count),
    })),
  };
}

/** The row that a number of funded batteries reaches: the largest count that is not above it. */
export function chanceAt({ rows }: Funding, funded: number): Funding['rows'][number] | undefined {
  return [...rows].reverse().find(({ count }) => count <= funded);
}
