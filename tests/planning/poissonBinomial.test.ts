import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demandFromPmf } from '../../src/planning/demand.ts';
import { convolve, convolutionPower, pmfMean, pmfVariance } from '../../src/planning/pmf.ts';
import { binomialPmf, poissonBinomial } from '../../src/planning/poissonBinomial.ts';
import reference from './reference/poissonBinomial.json' with { type: 'json' };

const groupsOf = (pairs: readonly (readonly number[])[]) =>
  pairs.map(([chance, count]) => ({ chance: chance!, count: count! }));

const near = (value: number, expected: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-14 + 1e-8 * expected);

describe('poissonBinomial, against exact recursion at 40 digits', () => {
  it.each(reference.cases)('$name', ({ groups, mean, variance, count, chance, cumulative, quantiles }) => {
    const pmf = poissonBinomial(groupsOf(groups));
    const demand = demandFromPmf(pmf);
    near(demand.expected, mean);
    expect(demand.variance).toBeCloseTo(variance, 10);
    count.forEach((k, i) => {
      near(pmf.mass[k - pmf.first] ?? 0, chance[i]!);
      near(demand.cdf(k), cumulative[i]!);
    });
    for (const [level, k] of quantiles) expect(demand.quantile(level!)).toBe(k);
  });
});

describe('poissonBinomial, by hand', () => {
  it('gives 0.3, 0.5, 0.2 for two units with 0.4 and 0.5', () => {
    // none 0.6 x 0.5; one 0.4 x 0.5 + 0.6 x 0.5; both 0.4 x 0.5
    const { first, mass } = poissonBinomial(
      groupsOf([
        [0.4, 1],
        [0.5, 1],
      ]),
    );
    expect(first).toBe(0);
    [0.3, 0.5, 0.2].forEach((chance, k) => expect(mass[k]).toBeCloseTo(chance, 14));
  });

  it('is sure where every chance is 0 or 1', () => {
    expect(
      poissonBinomial(
        groupsOf([
          [0, 7],
          [1, 3],
        ]),
      ),
    ).toEqual({ first: 3, mass: Float64Array.of(1) });
  });
});

const chances = fc.double({ min: 0, max: 1, noNaN: true });
const groups = fc.array(fc.record({ chance: chances, count: fc.integer({ min: 0, max: 30 }) }), {
  maxLength: 12,
});

describe('poissonBinomial, properties', () => {
  it('has the sum of the chances as mean and of p(1-p) as variance, and masses that sum to 1', () => {
    fc.assert(
      fc.property(groups, (given) => {
        const pmf = poissonBinomial(given);
        const sum = (of: (p: number) => number) =>
          given.reduce((all, { chance, count }) => all + count * of(chance), 0);
        expect(pmfMean(pmf)).toBeCloseTo(
          sum((p) => p),
          9,
        );
        expect(pmfVariance(pmf)).toBeCloseTo(
          sum((p) => p * (1 - p)),
          8,
        );
        expect(pmf.mass.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  it('adds means and variances when counts are added, in either order', () => {
    fc.assert(
      fc.property(groups, groups, (one, other) => {
        const [a, b] = [poissonBinomial(one), poissonBinomial(other)];
        const sum = convolve(a, b);
        expect(pmfMean(sum)).toBeCloseTo(pmfMean(a) + pmfMean(b), 9);
        expect(pmfVariance(sum)).toBeCloseTo(pmfVariance(a) + pmfVariance(b), 8);
        expect(convolve(b, a)).toEqual(sum);
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  it('is a binomial law when one unit is added to itself many times', () => {
    const power = convolutionPower({ first: 0, mass: Float64Array.of(0.97, 0.03) }, 200);
    const direct = binomialPmf(200, 0.03);
    power.mass.forEach((mass, k) => expect(Math.abs(mass - (direct.mass[k] ?? 0))).toBeLessThan(1e-13));
  });
});
