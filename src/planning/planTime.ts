import type { CountWindow } from './countCells.ts';
import type { Demand } from './demand.ts';
import type { PlanPeriod } from './fiscalYears.ts';
import type { FleetForecast } from './fleetForecast.ts';
import { horizonsFrom } from './forecastCounts.ts';
import type { PlanPeriods } from './planPeriods.ts';
import { ownWindow } from './planPeriods.ts';
import type { PlanYear } from './planYears.ts';
import { BAND } from './planYears.ts';
import { shareOut } from './shareOut.ts';

/** Expected failures of a month or quarter, to one decimal, with that period's own 90 % band. */
export type PlanTime = PlanPeriod & {
  readonly expected: number;
  readonly low: number;
  readonly high: number;
};

/** The count within some months of as-of, with its 50 % and 90 % bands. */
export type Horizon = {
  readonly months: number;
  readonly expected: number;
  readonly low90: number;
  readonly low50: number;
  readonly median: number;
  readonly high50: number;
  readonly high90: number;
};

/** From as-of to 12, 24 and 36 months on. */
export const HORIZONS: readonly CountWindow[] = horizonsFrom([12, 24, 36]);

/** Replacements within 12, 24 and 36 months of as-of, the fleet kept at strength. */
export function planHorizons(forecast: FleetForecast): Horizon[] {
  return HORIZONS.map((window) => {
    const { expected, quantile } = forecast.demand(window);
    return {
      months: window.to,
      expected,
      low90: quantile(BAND[0]),
      low50: quantile(0.25),
      median: quantile(0.5),
      high50: quantile(0.75),
      high90: quantile(BAND[1]),
    };
  });
}

/** The plan by fiscal quarter and by calendar month; both add up to the years. */
export function planTimes(
  forecast: FleetForecast,
  { quarters, months }: PlanPeriods,
  years: readonly PlanYear[],
): { quarters: PlanTime[]; months: PlanTime[] } {
  const timesOf = (periods: readonly PlanPeriod[]) =>
    times(
      periods,
      periods.map((period) => forecast.demand(ownWindow(period))),
      years,
    );
  return { quarters: timesOf(quarters), months: timesOf(months) };
}

// Each year's figure is shared out over its own periods, so that every level adds up to the one above it.
function times(
  periods: readonly PlanPeriod[],
  demands: readonly Demand[],
  years: readonly PlanYear[],
): PlanTime[] {
  const expected = years.flatMap((year) => {
    const own = periods.flatMap(({ from, to }, index) =>
      to <= year.to && from >= year.from ? [demands[index]!.expected] : [],
    );
    return shareOut(own, 0.1, year.expected);
  });
  return periods.map((period, index) => ({
    ...period,
    expected: expected[index]!,
    low: demands[index]!.quantile(BAND[0]),
    high: demands[index]!.quantile(BAND[1]),
  }));
}
