import type { Money } from './planSettings.ts';
import { roundedTo } from './roundedTo.ts';
import type { YearOrder } from './yearOrders.ts';

/** The money of one fiscal year, in the currency of the settings, each figure to the cent. */
export type YearBudget = {
  /** Price of one battery in that year. */
  readonly unitPrice: number;
  readonly cost: number;
  readonly refund: number;
  readonly freight: number;
  readonly labour: number;
  /** What the year pays: cost less refund, plus freight and labour. */
  readonly net: number;
};

/**
 * Price of a battery some fiscal years after the first, to the cent: price x (1 + rise)^years.
 * @param unitPrice  price in the first year
 * @param rise       rise a year, a share
 * @param years      whole years after the first
 * @source compoundInterest textbook formula
 * @example risenPrice(400, 0.025, 3) // 430.76
 */
export function risenPrice(unitPrice: number, rise: number, years: number): number {
  return cents(unitPrice * (1 + rise) ** years);
}

// Every figure is one that could stand on a bill: columns add up by hand.
const cents = (amount: number): number => roundedTo(amount, 2);

/**
 * The money of each year in the year of need, or undefined without a unit price. Freight is paid for what is
 * bought, labour for what is fitted, and the refund comes for each old battery that is not recovered.
 */
export function yearBudgets(orders: readonly YearOrder[], money: Money): YearBudget[] | undefined {
  const { unitPrice } = money;
  if (unitPrice === null) return undefined;
  return orders.map((order, index) => {
    const price = risenPrice(unitPrice, money.rise, index);
    const cost = cents(order.unitsToOrder * price);
    const refund = cents((order.need - order.recovered) * money.refund);
    const freight = cents(order.unitsToOrder * money.freight);
    const labour = cents(order.need * money.labour);
    return { unitPrice: price, cost, refund, freight, labour, net: cents(cost - refund + freight + labour) };
  });
}

/**
 * What each year's budget holds when purchases are charged to the year of order: its own fitting, and the
 * purchases that go out in it.
 */
export function chargedToOrder(orders: readonly YearOrder[], budgets: readonly YearBudget[]): number[] {
  return budgets.map((own, year) => {
    const bought = budgets.reduce(
      (sum, budget, need) => (orders[need]!.orderYear === year ? sum + budget.cost + budget.freight : sum),
      0,
    );
    return cents(bought - own.refund + own.labour);
  });
}
