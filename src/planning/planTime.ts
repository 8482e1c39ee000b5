import type { Day } from '../basics/calendar.ts';
import { fiscalPeriod } from '../service/fiscalPeriod.ts';
import type { Demand } from './demand.ts';
import type { PlanPeriod } from './fiscalYears.ts';
import { planMonths } from './fiscalYears.ts';
import { horizonsFrom } from './forecastCounts.ts';
import type { PlanSettings } from './planSettings.ts';
import type { PlanYear } from './planYears.ts';
import { BAND } from './planYears.ts';
import type { Fleet } from './planViews.ts';
import { fleetDemands } from './planViews.ts';
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

const HORIZONS = [12, 24, 36];

/** Replacements within 12, 24 and 36 months of as-of, the fleet kept at strength. */
export function planHorizons(fleet: Fleet): Horizon[] {
  return fleetDemands(fleet, horizonsFrom(HORIZONS)).map((demand, index) => ({
    months: HORIZONS[index]!,
    expected: demand.expected,
    low90: demand.quantile(BAND[0]),
    low50: demand.quantile(0.25),
    median: demand.quantile(0.5),
    high50: demand.quantile(0.75),
    high90: demand.quantile(BAND[1]),
  }));
}

type FiscalNames = Pick<PlanSettings, 'fiscalFirstMonth' | 'fiscalLabel'>;

/** The plan by fiscal quarter and by calendar month; both add up to the years. */
export function planTimes(
  fleet: Fleet,
  years: readonly PlanYear[],
  asOf: Day,
  settings: FiscalNames,
): { quarters: PlanTime[]; months: PlanTime[] } {
  const months = planMonths(asOf, years[years.length - 1]!.to);
  const quarters = quartersOf(months, settings);
  const windows = [...quarters, ...months].map(({ startMonth, endMonth }) => ({
    from: startMonth,
    to: endMonth,
  }));
  const demands = fleetDemands(fleet, windows);
  const monthTimes = times(months, demands.slice(quarters.length), years);
  return { quarters: times(quarters, demands, years), months: monthTimes };
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

function quartersOf(months: readonly PlanPeriod[], settings: FiscalNames): PlanPeriod[] {
  const quarters = new Map<string, PlanPeriod>();
  for (const month of months) {
    const label = quarterLabel(month.from, settings);
    const begun = quarters.get(label) ?? { ...month, label };
    quarters.set(label, { ...begun, to: month.to, endMonth: month.endMonth });
  }
  return [...quarters.values()];
}

// Settings were checked before they came here, so a first month that is none is a programming mistake.
function quarterLabel(day: Day, { fiscalFirstMonth: firstMonth, fiscalLabel }: FiscalNames): string {
  const label = fiscalPeriod(day, firstMonth, 'quarter', fiscalLabel);
  if (!label.ok) throw new Error(`no first month: ${firstMonth}`);
  return label.value;
}
