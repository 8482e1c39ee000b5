import { describe, expect, it } from 'vitest';
import { isRare, rareChances, skewedLaw } from '../../src/planning/countLaws.ts';
import { merged } from '../../src/planning/countMixture.ts';
import { demandFromPmf } from '../../src/planning/demand.ts';
import { poissonBinomial } from '../../src/planning/poissonBinomial.ts';

type Group = { readonly chance: number; readonly count: number };

const cumulantsOf = (groups: readonly Group[]) => {
  const sum = (of: (p: number) => number) =>
    groups.reduce((all, { chance, count }) => all + count * of(chance), 0);
  return {
    mean: sum((p) => p),
    variance: sum((p) => p * (1 - p)),
    third: sum((p) => p * (1 - p) * (1 - 2 * p)),
  };
};

const furthest = (groups: readonly Group[], law: (count: number) => number) => {
  const exact = demandFromPmf(poissonBinomial(groups));
  const counts = Array.from({ length: 60 }, (_, count) => count);
  return Math.max(...counts.map((count) => Math.abs(law(count) - exact.cdf(count))));
};

describe('skewedLaw, against exact counts', () => {
  it.each([
    ['mean 5, small chances', [{ chance: 0.005, count: 1000 }], 0.005],
    ['mean 12, small chances', [{ chance: 0.012, count: 1000 }], 0.0011],
    ['mean 12, chances of 0.3', [{ chance: 0.3, count: 40 }], 0.0011],
    ['mean 20', [{ chance: 0.05, count: 400 }], 0.001],
    ['nearly all fail', [{ chance: 0.8, count: 30 }], 0.005],
    [
      'some old among many young',
      [
        { chance: 0.9, count: 5 },
        { chance: 0.01, count: 400 },
      ],
      0.005,
    ],
  ] as [string, Group[], number][])('%s', (_, groups, within) => {
    expect(furthest(groups, skewedLaw(cumulantsOf(groups)).cdf)).toBeLessThan(within);
  });

  it('is a step where the count is certain', () => {
    const { cdf } = skewedLaw({ mean: 7, variance: 0, third: 0 });
    expect([cdf(6), cdf(7)]).toEqual([0, 1]);
  });
});

describe('rareChances, against exact counts', () => {
  it.each([
    ['mean 0.05', [{ chance: 0.0001, count: 500 }]],
    [
      'mean 2 of unequal chances',
      [
        { chance: 0.002, count: 500 },
        { chance: 0.1, count: 10 },
      ],
    ],
    [
      'mean 8',
      [
        { chance: 0.04, count: 150 },
        { chance: 0.2, count: 10 },
      ],
    ],
  ] as [string, Group[]][])('%s', (_, groups) => {
    const cumulants = cumulantsOf(groups);
    expect(isRare(cumulants)).toBe(true);
    const chances = rareChances(cumulants, 60);
    const law = (count: number) => chances.slice(0, count + 1).reduce((sum, chance) => sum + chance, 0);
    expect(furthest(groups, law)).toBeLessThan(0.001);
  });
});

describe('merged', () => {
  it('keeps weight, mean and total variance', () => {
    const mean = Float64Array.from({ length: 500 }, (_, i) => 20 + i / 10);
    const weight = mean.map((_, i) => 1 + (i % 7));
    const columns = {
      weight,
      mean,
      variance: mean.map((each) => each / 2),
      third: mean.map((each) => each / 5),
    };
    const parts = merged(columns);
    expect(parts.length).toBeLessThan(100);
    const total = weight.reduce((sum, each) => sum + each, 0);
    const before = (of: (i: number) => number) =>
      weight.reduce((sum, each, i) => sum + each * of(i), 0) / total;
    const after = (of: (part: (typeof parts)[number]) => number) =>
      parts.reduce((sum, part) => sum + part.weight * of(part), 0) / total;
    expect(after(() => 1)).toBeCloseTo(1, 12);
    expect(after((part) => part.mean)).toBeCloseTo(
      before((i) => mean[i]!),
      9,
    );
    const second = before((i) => columns.variance[i]! + mean[i]! ** 2);
    expect(after((part) => part.variance + part.mean ** 2)).toBeCloseTo(second, 7);
  });
});
