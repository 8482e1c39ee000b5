import { describe, expect, it } from 'vitest';
import { failureChance, failureChanceByAge } from '../../src/life/failureChance.ts';
import { lifePosterior, posteriorMean } from '../../src/life/lifePosterior.ts';
import { weibullHazardGain } from '../../src/life/weibull.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';

const few = valueOf(lifePosterior([{ kind: 'exact', entry: 0, from: 40, to: 40, count: 3 }]));
const many = valueOf(
  lifePosterior([
    { kind: 'exact', entry: 0, from: 40, to: 40, count: 300 },
    { kind: 'exact', entry: 0, from: 70, to: 70, count: 300 },
  ]),
);

describe.each([
  ['few failures', few],
  ['many failures', many],
])('failureChance after %s', (_, posterior) => {
  it.each([0, 0.3, 12, 48, 120])('at age %d is the mean over the whole belief', (age) => {
    for (const months of [1, 12, 36]) {
      const mean = posteriorMean(
        posterior,
        (shape, scale) => -Math.expm1(-weibullHazardGain(age, months, shape, scale)),
      );
      expect(Math.abs(failureChance(age, months, posterior) - mean)).toBeLessThan(1e-4);
    }
  });

  it('grows with the months, from 0 to less than 1', () => {
    expect(failureChance(48, 0, posterior)).toBe(0);
    let before = 0;
    for (const months of [1, 6, 12, 60]) {
      const chance = failureChance(48, months, posterior);
      expect(chance).toBeGreaterThan(before);
      expect(chance).toBeLessThanOrEqual(1);
      before = chance;
    }
  });

  it('is read off between half months of age for a whole fleet', () => {
    const byAge = failureChanceByAge(12, posterior);
    for (let age = 1; age < 130; age += 0.37) {
      expect(Math.abs(byAge(age) - failureChance(age, 12, posterior))).toBeLessThan(2e-4);
    }
    expect(byAge(24)).toBe(failureChance(24, 12, posterior));
  });
});
