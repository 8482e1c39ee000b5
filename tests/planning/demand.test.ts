import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Demand } from '../../src/planning/demand.ts';
import {
  NO_DEMAND,
  chanceEnough,
  demandFromPmf,
  expectedShortage,
  negativeBinomialDemand,
  poissonDemand,
  sumOfDemands,
} from '../../src/planning/demand.ts';
import { mixtureDemand } from '../../src/planning/countMixture.ts';
import { poissonBinomial } from '../../src/planning/poissonBinomial.ts';

// A belief with three lives, of which one has a rare, one a middling and one a large count.
const mixed = mixtureDemand(
  [
    { weight: 0.2, mean: 3, variance: 2.9, third: 2.7 },
    { weight: 0.5, mean: 40, variance: 30, third: 18 },
    { weight: 0.3, mean: 120, variance: 70, third: 20 },
  ],
  0.6 + 20 + 36,
  2500,
);

const demands: [string, Demand][] = [
  ['Poisson', poissonDemand(7.3)],
  ['large Poisson', poissonDemand(40_000)],
  ['negative binomial', negativeBinomialDemand(7.3, 20)],
  ['negative binomial of a size under 1', negativeBinomialDemand(3, 90)],
  ['Poisson-binomial', demandFromPmf(poissonBinomial([{ chance: 0.3, count: 40 }]))],
  ['mixture', mixed],
  ['sum', sumOfDemands([mixed, poissonDemand(7.3)])],
  ['none', NO_DEMAND],
];

describe.each(demands)('demand: %s', (_, demand) => {
  it('has a cumulative chance that never falls, from 0 to 1', () => {
    const counts = fc.integer({ min: -3, max: 60_000 });
    fc.assert(
      fc.property(counts, counts, (a, b) => {
        const [low, high] = [demand.cdf(Math.min(a, b)), demand.cdf(Math.max(a, b))];
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(high).toBeGreaterThanOrEqual(low - 1e-12);
      }),
      { seed: 6, numRuns: 200 },
    );
    expect(demand.cdf(-1)).toBe(0);
    expect(demand.cdf(1e6)).toBeCloseTo(1, 8);
  });

  it('has the smallest count that is enough as quantile', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), (chance) => {
        const count = demand.quantile(chance);
        expect(demand.cdf(count)).toBeGreaterThanOrEqual(chance - 1e-12);
        expect(demand.cdf(count - 1)).toBeLessThan(chance);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('spreads a chance of 1 over its counts', () => {
    expect(demand.pmf().mass.reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(1, 7);
  });
});

describe('quantile at a tie', () => {
  it('takes the step that equals the chance but for rounding', () => {
    // 0.1 + 0.2 is a hair above 0.3 in binary numbers, and 0.7 + 0.2 a hair below 0.9.
    const demand = demandFromPmf({ first: 0, mass: Float64Array.of(0.7, 0.2, 0.1) });
    expect(demand.cdf(1)).toBeLessThan(0.9);
    expect(demand.quantile(0.9)).toBe(1);
    expect(demand.quantile(0.9 + 1e-9)).toBe(2);
  });
});

describe('sumOfDemands', () => {
  it('adds means and variances and convolves the chances', () => {
    const sum = sumOfDemands([poissonDemand(3), poissonDemand(4.3)]);
    expect(sum.expected).toBeCloseTo(7.3, 12);
    expect(sum.variance).toBeCloseTo(7.3, 12);
    for (let k = 0; k < 30; k += 1) expect(sum.cdf(k)).toBeCloseTo(poissonDemand(7.3).cdf(k), 12);
  });

  it('asks for less than the sum of the upper limits, and of nothing is nothing', () => {
    const parts = [poissonDemand(20), poissonDemand(20), poissonDemand(20)];
    expect(sumOfDemands(parts).quantile(0.95)).toBeLessThan(3 * parts[0]!.quantile(0.95));
    expect(sumOfDemands([]).quantile(0.95)).toBe(0);
  });
});

describe('chanceEnough and expectedShortage', () => {
  it('are worked out by hand for two even units', () => {
    // 0 needed: 1/4, 1: 1/2, 2: 1/4. With one battery: enough in 3 of 4; one is missing in 1 of 4.
    const demand = demandFromPmf(poissonBinomial([{ chance: 0.5, count: 2 }]));
    expect(chanceEnough(demand, 1)).toBeCloseTo(0.75, 14);
    expect(expectedShortage(demand, 1)).toBeCloseTo(0.25, 14);
    expect(expectedShortage(demand, 0)).toBeCloseTo(1, 14);
    expect(chanceEnough(demand, -1)).toBe(0);
  });

  it('leave nothing missing where everything is funded, and the mean where nothing is', () => {
    expect(expectedShortage(mixed, 1000)).toBeCloseTo(0, 6);
    expect(expectedShortage(mixed, 0)).toBeCloseTo(mixed.expected, 1);
  });
});
