import { forecastCounts } from '../../src/planning/forecastCounts.ts';
import { risenPrice } from '../../src/planning/budget.ts';
import { stockLevel } from '../../src/planning/stockLevel.ts';
import { renewalTable } from '../../src/planning/renewals.ts';
import knownLives from '../planning/reference/knownLife.json' with { type: 'json' };
import type { NotOurs, PublishedCheck } from './check.ts';
import { valueOf } from './check.ts';

const bearingCages = knownLives.cases[0]!;

/** Counts to come, stock and money, beside what is in print. */
export const planningChecks: PublishedCheck[] = [
  {
    id: 'B3',
    quantity: 'price after three years',
    source: 'compoundInterest',
    where: 'unit price x (1 + rise)^years',
    given: '400, 2.5 % a year',
    expected: 430.76,
    digits: 2,
    ours: () => risenPrice(400, 0.025, 3),
  },
  {
    id: 'bearing cages',
    quantity: 'expected failures in the next 300 h',
    source: 'escobarMeeker1999',
    where: 'printed 5.057 with rounded chances (from memory)',
    given: 'Weibull shape 2.035, scale 11,792 h; 1,697 cages in service in 19 age groups',
    expected: 5.057,
    tolerance: { within: 0.002, because: 'the print adds up chances rounded to four places' },
    ours: () =>
      forecastCounts(
        bearingCages.ages.map(([age, count]) => ({ age: age!, count: count! })),
        { life: bearingCages, windows: [{ from: 0, to: 300 }], renewals: false },
      ).demands[0]!.expected,
  },
  {
    id: 'renewals',
    quantity: 'expected renewals in twice the scale, shape 1.5',
    source: 'smithLeadbetter1963',
    where: 'power series, computed here to 40 digits',
    given: 'Weibull shape 1.5, scale 60; 120',
    expected: 1.9455,
    digits: 4,
    ours: () => renewalTable(1.5, 60, 240).mean[240]!,
  },
  {
    id: 'Poisson stock',
    quantity: 'stock for 95 % at an expected demand of 2',
    source: 'hadleyWhitin1963',
    where: 'table of the Poisson law: 0.8571 for 3, 0.9473 for 4, 0.9834 for 5',
    given: 'expected 2, chance 0.95',
    expected: 5,
    digits: 0,
    ours: () => valueOf(stockLevel(2)),
  },
];

/** Published figures of planning that nothing here computes. */
export const planningNotOurs: NotOurs[] = [
  {
    id: 'B4',
    quantity: 'safety stock 19.74 for 6 a month over 4 months at 95 % (1.6449 x 6 x 2)',
    because:
      'stock is the smallest count that is enough under the law of the demand itself, not a normal margin',
  },
  {
    id: 'B5',
    quantity: 'share of turned-in batteries that were good after charging, 43.8 % (9,500 of 21,673)',
    because: 'a public report; the share is an input of the plan, 0 until the owner enters his own',
  },
];
