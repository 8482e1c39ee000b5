import type { Plan } from './plan.ts';
import type { Ask } from './planSettings.ts';
import { wholeUnits } from './roundedTo.ts';
import { recoveredOf } from './yearOrders.ts';

/** The ways of asking, in the order in which they are shown and of the number that chooses one on a sheet. */
export const ASKS: readonly Ask[] = ['expected', '4in5', '19in20'];

/** What one way of asking comes to over all years of a plan. */
export type Asked = {
  /** Batteries needed, due now and fleet changes included, to one decimal. */
  readonly need: number;
  /** Whole batteries to buy for it. */
  readonly buy: number;
};

/** What to ask for over all years of a plan under one way of asking, rounded up once. */
export function asked({ years, settings, usableStock }: Omit<Plan, 'units'>, ask: Ask): Asked {
  const over = (of: (year: Plan['years'][number]) => number): number =>
    years.reduce((sum, year) => sum + of(year), 0);
  const needOf = (year: Plan['years'][number]): number => year.dueNow + year.needs[ask] + year.fleetChange;
  const need = over(needOf);
  const back = over((year) => recoveredOf(settings, needOf(year), year.mates));
  const onOrder = over(({ order }) => order.onOrder);
  const missing = need - back + settings.stockTarget - usableStock - onOrder;
  return { need: Number(need.toFixed(1)), buy: wholeUnits(missing) };
}
