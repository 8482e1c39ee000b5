import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { chargedToOrder, risenPrice, yearBudgets } from '../../src/planning/budget.ts';
import { fiscalYears } from '../../src/planning/fiscalYears.ts';
import { DEFAULT_PLAN_SETTINGS } from '../../src/planning/planSettings.ts';
import { yearOrders } from '../../src/planning/yearOrders.ts';

const asOf = dayFromParts(2026, 6, 30)!;
const years = fiscalYears(asOf, 1, 3);
const money = {
  currency: 'EUR',
  unitPrice: 400,
  rise: 0.025,
  refund: 10,
  freight: 5,
  labour: 20,
  failureCost: null,
};

describe('yearBudgets', () => {
  it('by hand', () => {
    const orders = yearOrders(asOf, years, [10, 10, 10], 0, { ...DEFAULT_PLAN_SETTINGS, recovered: 0.5 });
    const [first, second] = yearBudgets(orders, money)!;
    // 5 bought x 400 = 2000; 5 old ones x 10 back; 5 x 5 freight; 10 x 20 labour
    expect(first).toEqual({ unitPrice: 400, cost: 2000, refund: 50, freight: 25, labour: 200, net: 2175 });
    expect(second!.unitPrice).toBeCloseTo(410, 9);
  });

  it('adds up by hand: every figure is one of cents, whatever the needs and prices', () => {
    const isCents = (amount: number): boolean => Math.abs(amount * 100 - Math.round(amount * 100)) < 1e-6;
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 3, maxLength: 3 }),
        fc.double({ min: 0, max: 999, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (tenths, price, rise) => {
          const settings = { ...DEFAULT_PLAN_SETTINGS, recovered: 0.237 };
          const orders = yearOrders(
            asOf,
            years,
            tenths.map((each) => each / 10),
            0,
            settings,
          );
          const budgets = yearBudgets(orders, { ...money, unitPrice: price, rise, refund: price / 7 })!;
          for (const [year, { unitPrice, cost, refund, freight, labour, net }] of budgets.entries()) {
            const { unitsToOrder } = orders[year]!;
            expect([unitPrice, cost, refund, freight, labour, net].every(isCents)).toBe(true);
            expect(cost).toBeCloseTo(unitsToOrder * unitPrice, 6);
            expect(net).toBeCloseTo(cost - refund + freight + labour, 6);
          }
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });

  it('leaves the money open without a price', () => {
    const orders = yearOrders(asOf, years, [1, 1, 1], 0, DEFAULT_PLAN_SETTINGS);
    expect(yearBudgets(orders, { ...money, unitPrice: null })).toBeUndefined();
  });

  it('a price that rises 2.5 % a year for three years', () => {
    expect(risenPrice(400, 0.025, 3)).toBeCloseTo(430.76, 2);
  });
});

describe('chargedToOrder', () => {
  it('moves purchases to the year in which they go out and loses none of the money', () => {
    const settings = { ...DEFAULT_PLAN_SETTINGS, leadMonths: 9 };
    const orders = yearOrders(asOf, years, [10, 20, 30], 0, settings);
    const budgets = yearBudgets(orders, money)!;
    const charged = chargedToOrder(orders, budgets);
    const total = (amounts: readonly number[]) => amounts.reduce((sum, amount) => sum + amount, 0);
    expect(total(charged)).toBeCloseTo(total(budgets.map(({ net }) => net)), 6);
    expect(charged[0]).toBeGreaterThan(budgets[0]!.net);
  });
});
