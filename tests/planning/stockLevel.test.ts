import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Demand } from '../../src/planning/demand.ts';
import {
  demandFromPmf,
  expectedShortage,
  negativeBinomialDemand,
  poissonDemand,
} from '../../src/planning/demand.ts';
import { poissonBinomial } from '../../src/planning/poissonBinomial.ts';
import { stockLevel } from '../../src/planning/stockLevel.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';
import reference from './reference/spares.json' with { type: 'json' };

type Given = { poisson?: number; negativeBinomial?: number[]; poissonBinomial?: number[][] };

function demandOf(given: Given): Demand {
  if (given.poisson !== undefined) return poissonDemand(given.poisson);
  const [mean, size] = given.negativeBinomial ?? [];
  if (mean !== undefined) return negativeBinomialDemand(mean, mean + mean ** 2 / size!);
  const groups = given.poissonBinomial!.map(([chance, count]) => ({ chance: chance!, count: count! }));
  return demandFromPmf(poissonBinomial(groups));
}

describe('stock for a demand, against 40 digits', () => {
  it.each(reference.cases)('$name', ({ demand: given, levels, stock, enough, shortage }) => {
    const demand = demandOf(given);
    for (const [chance, units] of levels) expect(demand.quantile(chance!)).toBe(units);
    stock.forEach((units, i) => {
      expect(demand.cdf(units) / enough[i]!).toBeCloseTo(1, 8);
      expect(expectedShortage(demand, units) / shortage[i]!).toBeCloseTo(1, 8);
    });
  });
});

describe('stockLevel', () => {
  it('is Poisson without a variance and negative binomial with a larger one', () => {
    expect(valueOf(stockLevel(7.3))).toBe(12);
    expect(valueOf(stockLevel(7.3, 0.95, 7.3))).toBe(12);
    expect(valueOf(stockLevel(7.3, 0.95, 5))).toBe(12);
    expect(valueOf(stockLevel(7.3, 0.95, 7.3 + 7.3 ** 2 / 4))).toBe(16);
  });

  it('is worked out by hand for an expected demand of 1', () => {
    // Poisson: 0.3679, 0.7358, 0.9197, 0.9810
    expect([0.3, 0.5, 0.9, 0.95].map((chance) => valueOf(stockLevel(1, chance)))).toEqual([0, 1, 2, 3]);
  });

  it('is nothing for no demand', () => {
    expect(valueOf(stockLevel(0))).toBe(0);
    expect(valueOf(stockLevel(0, 0.99, 5))).toBe(0);
  });

  it('never falls when demand, chance or variance rise', () => {
    const size = fc.double({ min: 0.01, max: 500, noNaN: true });
    const chance = fc.double({ min: 0.5, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(size, size, chance, (mean, more, level) => {
        const base = valueOf(stockLevel(mean, level));
        expect(valueOf(stockLevel(mean + more, level))).toBeGreaterThanOrEqual(base);
        expect(valueOf(stockLevel(mean, level + (1 - level) / 2))).toBeGreaterThanOrEqual(base);
        expect(base).toBeGreaterThanOrEqual(Math.floor(mean) - 1);
      }),
      { seed: 9, numRuns: 100 },
    );
  });

  it('answers for the largest demands it takes', () => {
    // Normal: 1,000,000 + 1.645 x 1000
    expect(Math.abs(valueOf(stockLevel(1e6)) - 1_001_645)).toBeLessThan(3);
  });

  it('refuses what can be no demand or chance', () => {
    expect(refusal(stockLevel(-1))).toEqual(['outOfRange', 'expected is -1; allowed is 0 to 1000000']);
    expect(refusal(stockLevel(5, 1))[1]).toBe('chance is 1; allowed is above 0 to below 1');
    expect(refusal(stockLevel(5, 0.9, -2))[1]).toContain('variance is -2');
  });
});
