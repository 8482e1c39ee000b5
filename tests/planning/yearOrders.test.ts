import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayFromParts, isoDay } from '../../src/basics/calendar.ts';
import { fiscalYears } from '../../src/planning/fiscalYears.ts';
import { DEFAULT_PLAN_SETTINGS } from '../../src/planning/planSettings.ts';
import { wholeUnits } from '../../src/planning/roundedTo.ts';
import { yearOrders } from '../../src/planning/yearOrders.ts';

const asOf = dayFromParts(2026, 6, 30)!;
const years = fiscalYears(asOf, 1, 3);
const plain = DEFAULT_PLAN_SETTINGS;

describe('yearOrders', () => {
  it('by hand: stock first, rounding kept for the next year', () => {
    const orders = yearOrders(asOf, years, [10.4, 20.4, 30.4], 5, plain);
    // 10.4 - 5 = 5.4 -> 6, 0.6 left; 20.4 - 0.6 = 19.8 -> 20, 0.2 left; 30.4 - 0.2 = 30.2 -> 31
    expect(orders.map((order) => order.unitsToOrder)).toEqual([6, 20, 31]);
    expect(orders[2]!.closing).toBeCloseTo(0.8, 9);
  });

  it('by hand: recovery, on order and the stock to hold', () => {
    const settings = { ...plain, recovered: 0.5, stockTarget: 4, onOrder: [{ month: '2027-03', count: 3 }] };
    const orders = yearOrders(asOf, years, [10, 10, 10], 0, settings);
    // 10 + 4 - 5 = 9; then 10 + 4 - 4 - 3 - 5 = 2; then 10 + 4 - 4 - 5 = 5
    expect(orders.map((order) => order.unitsToOrder)).toEqual([9, 2, 5]);
    expect(orders.map((order) => order.closing)).toEqual([4, 4, 4]);
  });

  it('never orders below 0 and keeps what is too much', () => {
    expect(yearOrders(asOf, years, [1, 1, 1], 100, plain).map((order) => order.unitsToOrder)).toEqual([
      0, 0, 0,
    ]);
  });

  it('counts an overdue delivery in the first year', () => {
    const settings = { ...plain, onOrder: [{ month: '2026-02', count: 3 }] };
    expect(yearOrders(asOf, years, [5, 0, 0], 0, settings)[0]!.unitsToOrder).toBe(2);
  });

  it('dates the order before the year of need and says when that is past', () => {
    const orders = yearOrders(asOf, years, [1, 1, 1], 0, { ...plain, leadMonths: 8, safetyMonths: 1 });
    expect(orders.map(({ orderBy }) => isoDay(orderBy))).toEqual(['2025-09-30', '2026-04-01', '2027-04-01']);
    expect(orders.map(({ late }) => late)).toEqual([true, true, false]);
    expect(orders.map(({ orderYear }) => orderYear)).toEqual([0, 0, 1]);
    const stocked = yearOrders(asOf, years, [1, 1, 1], 3, { ...plain, leadMonths: 8 });
    expect(
      stocked.some(({ late }) => late),
      'nothing to order is never late',
    ).toBe(false);
  });

  it('the total is the whole need rounded up once', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 90, noNaN: true }), { minLength: 3, maxLength: 3 }),
        (needs) => {
          const ordered = yearOrders(asOf, years, needs, 0, plain).reduce(
            (sum, each) => sum + each.unitsToOrder,
            0,
          );
          expect(ordered).toBe(wholeUnits(needs.reduce((sum, need) => sum + need, 0)));
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });
});

describe('wholeUnits', () => {
  it('is not moved by the dust of floating point', () => {
    expect(wholeUnits(0.1 + 0.2 - 0.3 + 44)).toBe(44);
    expect(wholeUnits(44.01)).toBe(45);
    expect(wholeUnits(-3)).toBe(0);
  });
});
