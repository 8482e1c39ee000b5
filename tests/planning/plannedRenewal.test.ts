import { describe, expect, it } from 'vitest';
import type { AgeBin } from '../../src/planning/ageBins.ts';
import { forecastCounts, forecastGroups, horizonsFrom } from '../../src/planning/forecastCounts.ts';
import { withPlannedRenewal } from '../../src/planning/plannedRenewal.ts';
import { renewalTable } from '../../src/planning/renewals.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';

const life = { shape: 2.4, scale: 60 };
const total = (bins: readonly AgeBin[]) => bins.reduce((sum, { count }) => sum + count, 0);

describe('withPlannedRenewal', () => {
  it('renews at the age, a set by its oldest battery', () => {
    const [bins] = withPlannedRenewal(
      [
        [
          { age: 20, count: 5 },
          { age: 10, mates: [30], count: 2 },
        ],
      ],
      {
        age: 48,
        overdueMonths: 12,
      },
    );
    expect(bins!.map(({ plannedIn }) => plannedIn)).toEqual([28, 18]);
  });

  it('spreads the overdue evenly, oldest first, whatever group they are in', () => {
    const groups = [
      [
        { age: 60, count: 12 },
        { age: 20, count: 3 },
      ],
      [{ age: 50, count: 12 }],
    ];
    const [first, second] = withPlannedRenewal(groups, { age: 48, overdueMonths: 24 });
    const times = (bins: readonly AgeBin[]) =>
      bins.filter(({ age }) => age > 48).map(({ plannedIn }) => plannedIn!);
    expect(Math.max(...times(first!))).toBeLessThan(12);
    expect(Math.min(...times(second!))).toBeGreaterThan(12);
    expect(total(first!)).toBeCloseTo(15, 9);
    expect(times(first!)).toHaveLength(12);
  });

  it('renews what is overdue at once where it is not spread', () => {
    const [bins] = withPlannedRenewal([[{ age: 60, count: 12 }]], { age: 48, overdueMonths: 0 });
    expect(bins).toEqual([{ age: 60, count: 12, plannedIn: 0 }]);
  });
});

describe('renewalTable with a plan', () => {
  it('is a clock where nothing fails: one renewal at each multiple of the age, none of them a failure', () => {
    const { mean, second, failures } = renewalTable(40, 1000, 100, 0.5, { plannedAge: 12 });
    [23, 24, 47, 48, 72].forEach((i, at) => expect(mean[i]).toBeCloseTo([0, 1, 1, 2, 3][at]!, 12));
    expect(second[72]).toBeCloseTo(6, 12);
    expect(failures[100]).toBeCloseTo(0, 12);
  });
});

describe('forecast with planned renewal', () => {
  it('is certain where nothing fails before its age', () => {
    const [bins] = withPlannedRenewal(
      [
        [
          { age: 40, count: 30 },
          { age: 10, count: 20 },
        ],
      ],
      { age: 48, overdueMonths: 0 },
    );
    const request = { life: { shape: 40, scale: 1000 }, windows: horizonsFrom([12, 36, 48]), plannedAge: 48 };
    const { demands, parts } = forecastCounts(bins!, request);
    expect(demands.map(({ expected }) => expected)).toEqual(
      [30, 30, 50].map((count) => expect.closeTo(count, 6)),
    );
    expect(demands.map((demand) => demand.quantile(0.95))).toEqual([30, 30, 50]);
    expect(parts[2]).toEqual({ failures: expect.closeTo(0, 6), mates: 0, planned: expect.closeTo(50, 6) });
  });

  it('agrees with simulated places: mean, failures among them, variance', () => {
    const groups = [
      [
        { age: 10, count: 20 },
        { age: 33, count: 25 },
        { age: 52, count: 18 },
      ],
    ];
    const [bins] = withPlannedRenewal(groups, { age: 40, overdueMonths: 18 });
    const windows = [
      { from: 0, to: 12 },
      { from: 12, to: 36 },
      { from: 0, to: 60 },
    ];
    const { demands, parts } = forecastCounts(bins!, { life, windows, plannedAge: 40 });
    const simulated = simulate(bins!, windows);
    simulated.forEach(({ counts, failures }, w) => {
      const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
      const variance = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0) / counts.length;
      expect(Math.abs(demands[w]!.expected / mean - 1)).toBeLessThan(0.012);
      expect(Math.abs(parts[w]!.failures / failures - 1)).toBeLessThan(0.02);
      expect(Math.abs(demands[w]!.variance / variance - 1)).toBeLessThan(0.08);
    });
  });

  it('takes fewer failures and more batteries than renewal on failure, and parts add up to the whole', () => {
    const groups = [[{ age: 30, count: 100 }], [{ age: 50, count: 60 }]];
    const windows = [
      { from: 0, to: 20 },
      { from: 20, to: 60 },
      { from: 0, to: 60 },
    ];
    const planned = withPlannedRenewal(groups, { age: 42, overdueMonths: 12 });
    const request = { life, windows, plannedAge: 42 };
    const forecasts = forecastGroups([...planned, planned.flat()], request);
    const [, , all] = forecasts;
    const onFailure = forecastCounts(groups.flat(), { life, windows });
    expect(all!.parts[2]!.failures).toBeLessThan(0.6 * onFailure.demands[2]!.expected);
    expect(all!.demands[2]!.expected).toBeGreaterThan(1.3 * onFailure.demands[2]!.expected);
    const mean = (group: number, window: number) => forecasts[group]!.demands[window]!.expected;
    expect(mean(0, 2) + mean(1, 2)).toBeCloseTo(mean(2, 2), 8);
    expect(mean(2, 0) + mean(2, 1)).toBeCloseTo(mean(2, 2), 8);
  });
});

function simulate(bins: readonly AgeBin[], windows: readonly { from: number; to: number }[]) {
  const uniform = uniformNumbers(31);
  const runs = 4000;
  const results = windows.map(() => ({ counts: new Array<number>(runs).fill(0), failures: 0 }));
  const record = (t: number, run: number, weight: number, failed: boolean) =>
    windows.forEach(({ from, to }, w) => {
      if (!(t > from && t <= to)) return;
      results[w]!.counts[run]! += weight;
      if (failed) results[w]!.failures += weight / runs;
    });
  for (let run = 0; run < runs; run += 1) {
    for (const { age, count, plannedIn } of bins) {
      for (let place = 0; place < Math.max(1, Math.round(count)); place += 1) {
        let failing = weibullLife(uniform, life.shape, life.scale, age) - age;
        let t = Math.min(failing, plannedIn!);
        while (t <= 60) {
          record(t, run, count / Math.max(1, Math.round(count)), failing < Infinity && t === failing);
          const next = weibullLife(uniform, life.shape, life.scale);
          failing = next <= 40 ? t + next : Infinity;
          t += Math.min(next, 40);
        }
      }
    }
  }
  return results;
}
