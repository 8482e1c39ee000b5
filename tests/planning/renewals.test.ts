import { describe, expect, it } from 'vitest';
import { atTime, renewalTable } from '../../src/planning/renewals.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';
import reference from './reference/renewals.json' with { type: 'json' };

describe('renewalTable, against the power series of Smith and Leadbetter', () => {
  it.each(reference.cases)('$name', ({ shape, scale, times, mean }) => {
    const table = renewalTable(shape, scale, 2 * Math.max(...times) + 1);
    times.forEach((time, i) => {
      const ours = atTime(table.mean, table.step, time);
      expect(Math.abs(ours - mean[i]!)).toBeLessThanOrEqual(1e-4 * mean[i]! + 1e-8);
    });
  });
});

describe('renewalTable, properties', () => {
  it('is Poisson where nothing wears: mean t/scale, and its powers as factorial moments', () => {
    const { mean, second, third, step } = renewalTable(1, 60, 240);
    const rate = (240 * step) / 60;
    expect(mean[240]).toBeCloseTo(rate, 3);
    expect(second[240]).toBeCloseTo(rate ** 2, 3);
    expect(third[240]).toBeCloseTo(rate ** 3, 2);
  });

  it('grows with time, and is smaller where places are given up', () => {
    const kept = renewalTable(2.4, 60, 100).mean;
    const given = renewalTable(2.4, 60, 100, 0.5, { goneRate: 0.01 }).mean;
    for (let i = 1; i <= 100; i += 1) {
      expect(kept[i]).toBeGreaterThan(kept[i - 1]!);
      expect(given[i]).toBeLessThan(kept[i]!);
    }
  });

  it('agrees with simulated places in mean and factorial moments', () => {
    const uniform = uniformNumbers(11);
    const places = 40_000;
    let [one, two, three] = [0, 0, 0];
    for (let place = 0; place < places; place += 1) {
      let failures = 0;
      for (let t = weibullLife(uniform, 2.4, 30); t <= 72; t += weibullLife(uniform, 2.4, 30)) failures += 1;
      one += failures / places;
      two += (failures * (failures - 1)) / places;
      three += (failures * (failures - 1) * (failures - 2)) / places;
    }
    const table = renewalTable(2.4, 30, 145);
    expect(atTime(table.mean, table.step, 72) / one).toBeCloseTo(1, 2);
    expect(atTime(table.second, table.step, 72) / two).toBeCloseTo(1, 2);
    expect(atTime(table.third, table.step, 72) / three).toBeCloseTo(1, 1);
  });

  it('has no table of NaN where the hazard runs out of numbers', () => {
    expect([...renewalTable(200, 1, 100).mean].every(Number.isFinite)).toBe(true);
  });
});
