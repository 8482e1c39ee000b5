import type { Day } from '../basics/calendar.ts';
import type { YearBudget } from './budget.ts';
import { chargedToOrder, yearBudgets } from './budget.ts';
import type { PlanPeriod } from './fiscalYears.ts';
import type { FleetForecast } from './fleetForecast.ts';
import { ownWindow, windowToDate } from './planPeriods.ts';
import type { Ask, PlanSettings } from './planSettings.ts';
import type { Fleet } from './planViews.ts';
import { fleetChangeNeeds } from './fleetChangeNeeds.ts';
import { shareOut } from './shareOut.ts';
import type { YearOrder } from './yearOrders.ts';
import { yearOrders } from './yearOrders.ts';

/** One fiscal year of the plan. Counts are failures to come; what is due now stands beside them. */
export type PlanYear = PlanPeriod & {
  readonly dueNow: number;
  /** Expected count, to one decimal; the years add up to the whole. */
  readonly expected: number;
  /** The same, unrounded. */
  readonly exact: number;
  /** 5 % and 95 % points of this year's own count. */
  readonly low: number;
  readonly high: number;
  /** Batteries this year needs under each way of asking, due now left out. */
  readonly needs: Readonly<Record<Ask, number>>;
  /** Good batteries expected to be renewed with a failed mate of their set, to one decimal. */
  readonly mates: number;
  /** Of the expected count: batteries renewed at the planned age before they fail, to one decimal. */
  readonly planned: number;
  /** What changes of the fleet add to the need or take from it, to one decimal. */
  readonly fleetChange: number;
  readonly order: YearOrder;
  readonly budget?: YearBudget;
  /** What the year pays when purchases are charged to the year of order. */
  readonly chargedToOrder?: number;
};

/** What planning the years takes beside the fleet. */
export type YearRequest = {
  readonly asOf: Day;
  readonly settings: PlanSettings;
  readonly dueNow: number;
  readonly usableStock: number;
};

/** Lowest and highest count shown everywhere: the 5 % and the 95 % point. */
export const BAND = [0.05, 0.95] as const;

const ENOUGH = { '4in5': 0.8, '19in20': 0.95 } as const;

/** The fiscal years of a plan, with their counts, orders and money. */
export function planYears(
  fleet: Fleet,
  forecast: FleetForecast,
  periods: readonly PlanPeriod[],
  request: YearRequest,
): PlanYear[] {
  const { asOf, settings, dueNow, usableStock } = request;
  const counts = periods.map((period, index) => ({ ...period, ...yearCounts(forecast, periods, index) }));
  const expected = shareOut(
    counts.map(({ exact }) => exact),
    0.1,
  );
  const part = (period: PlanPeriod, name: 'mates' | 'planned'): number =>
    Math.round(forecast.part(ownWindow(period), name) * 10) / 10;
  const inService = fleet.groups.reduce((sum, { places }) => sum + places.length, 0);
  const changes = fleetChangeNeeds(periods, expected, inService, settings.fleetChanges);
  const years = counts.map((year, index) => ({
    ...year,
    mates: part(year, 'mates'),
    planned: part(year, 'planned'),
    fleetChange: changes[index]!,
    dueNow: index === 0 ? dueNow : 0,
    expected: expected[index]!,
    needs: { ...year.needs, expected: expected[index]! },
  }));
  return withOrders(asOf, years, usableStock, settings);
}

type YearCounts = Omit<PlanYear, 'order' | 'budget' | 'chargedToOrder'>;

function withOrders(
  asOf: Day,
  years: readonly YearCounts[],
  usableStock: number,
  settings: PlanSettings,
): PlanYear[] {
  const needs = years.map((year) => year.needs[settings.ask] + year.dueNow + year.fleetChange);
  const mates = years.map((year) => year.mates);
  const orders = yearOrders(asOf, years, needs, usableStock, settings, mates);
  const budgets = yearBudgets(orders, settings.money);
  const charged = budgets && chargedToOrder(orders, budgets);
  return years.map((year, index) => ({
    ...year,
    order: orders[index]!,
    budget: budgets?.[index],
    chargedToOrder: charged?.[index],
  }));
}

function yearCounts(forecast: FleetForecast, periods: readonly PlanPeriod[], index: number) {
  const own = forecast.demand(ownWindow(periods[index]!));
  const toDate = periods.map((period) => forecast.demand(windowToDate(period)));
  // Enough for all years so far, less what the years before were given: limits of single years never add up.
  const enough = (chance: number): number =>
    toDate[index]!.quantile(chance) - (index === 0 ? 0 : toDate[index - 1]!.quantile(chance));
  return {
    exact: own.expected,
    low: own.quantile(BAND[0]),
    high: own.quantile(BAND[1]),
    needs: { expected: own.expected, '4in5': enough(ENOUGH['4in5']), '19in20': enough(ENOUGH['19in20']) },
  };
}
