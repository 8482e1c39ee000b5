import type { Day } from '../basics/calendar.ts';
import { addMonths, dayFrom } from '../basics/calendar.ts';
import type { PlanPeriod } from './fiscalYears.ts';
import type { PlanSettings } from './planSettings.ts';
import { roundedTo, wholeUnits } from './roundedTo.ts';

/** What one fiscal year needs, has and buys, in batteries; opening + on order + recovered + ordered - need = closing. */
export type YearOrder = {
  readonly need: number;
  readonly opening: number;
  readonly onOrder: number;
  readonly recovered: number;
  readonly unitsToOrder: number;
  readonly closing: number;
  /** Day by which these units are to be ordered. */
  readonly orderBy: Day;
  /** Day on which the order goes out: that day, or as-of where it is past. */
  readonly goesOut: Day;
  /** Something is to be ordered, and the order should have gone out before as-of. */
  readonly late: boolean;
  /** Index of the year in which the order goes out. */
  readonly orderYear: number;
};

/** Batteries that come back to stock in a year, to one decimal: of those needed, and of good mates of failed ones. */
export function recoveredOf(settings: PlanSettings, need: number, mates: number): number {
  return roundedTo(settings.recovered * need + settings.matesReused * mates, 1);
}

/**
 * What to order for each fiscal year so that its need is met and the wished stock is left at its end. What
 * rounding up buys too much is in the next year's opening stock, so the total is rounded up once.
 * @param needs    batteries needed in each year, due now counted in the first
 * @param opening  usable stock at as-of
 * @param mates    good batteries renewed with a failed mate in each year, of which a share is used again
 */
export function yearOrders(
  asOf: Day,
  years: readonly PlanPeriod[],
  needs: readonly number[],
  opening: number,
  settings: PlanSettings,
  mates: readonly number[] = [],
): YearOrder[] {
  let stock = opening;
  return years.map((year, index) => {
    const need = needs[index] ?? 0;
    const onOrder = arriving(settings, year, index === 0);
    const recovered = recoveredOf(settings, need, mates[index] ?? 0);
    const unitsToOrder = wholeUnits(need + settings.stockTarget - stock - onOrder - recovered);
    const closing = stock + onOrder + recovered + unitsToOrder - need;
    const order = { need, opening: stock, onOrder, recovered, unitsToOrder, closing };
    stock = closing;
    const dates = orderDate(asOf, years, year, settings);
    return { ...order, ...dates, late: dates.orderBy < asOf && unitsToOrder > 0 };
  });
}

/** Batteries already on order that arrive in a year; what is overdue at as-of counts in the first. */
function arriving(settings: PlanSettings, year: PlanPeriod, first: boolean): number {
  return settings.onOrder
    .filter(({ month }) => {
      const day = dayOfMonth(month);
      return day <= year.to && (first || day >= year.from);
    })
    .reduce((sum, { count }) => sum + count, 0);
}

/** First day of a month written 2027-03; settings are checked before they come here. */
export function dayOfMonth(month: string): Day {
  const day = dayFrom(`${month}-01`, 'month');
  if (!day.ok) throw new Error(`not a month: ${month}`);
  return day.value;
}

function orderDate(asOf: Day, years: readonly PlanPeriod[], year: PlanPeriod, settings: PlanSettings) {
  const orderBy = addMonths(year.from, -(settings.leadMonths + settings.safetyMonths));
  const goesOut = Math.max(orderBy, asOf);
  const orderYear = years.findIndex(({ from, to }) => goesOut >= from && goesOut <= to);
  return { orderBy, goesOut, orderYear: Math.max(0, orderYear) };
}
