import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lifePosterior } from '../../src/life/lifePosterior.ts';
import type { LifeKind } from '../../src/life/lifeRecord.ts';
import type { AgeBin } from '../../src/planning/ageBins.ts';
import { forecastCounts, forecastGroups, horizonsFrom } from '../../src/planning/forecastCounts.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';
import beliefs from '../life/reference/posterior.json' with { type: 'json' };
import agedRenewals from './reference/agedRenewals.json' with { type: 'json' };
import knownLives from './reference/knownLife.json' with { type: 'json' };

const binsOf = (pairs: readonly (readonly number[])[]): AgeBin[] =>
  pairs.map(([age, count]) => ({ age: age!, count: count! }));

describe('forecastCounts with a known life, against a separate program', () => {
  it.each(knownLives.cases)('$name', ({ ages, shape, scale, horizons }) => {
    const windows = horizonsFrom(horizons.map(({ horizon }) => horizon));
    const { demands } = forecastCounts(binsOf(ages), { life: { shape, scale }, windows, renewals: false });
    horizons.forEach(({ expected, deviation, none, quantiles }, i) => {
      const demand = demands[i]!;
      expect(demand.expected / expected).toBeCloseTo(1, 8);
      expect(Math.sqrt(demand.variance) / deviation).toBeCloseTo(1, 8);
      expect(Math.abs(demand.cdf(0) - none)).toBeLessThanOrEqual(1e-15 + 1e-7 * none);
      for (const [chance, count] of quantiles) expect(demand.quantile(chance!)).toBe(count);
    });
  });
});

describe('forecastCounts with a belief, against characteristic functions on a fine grid', () => {
  it.each(beliefs.cases)('$name', ({ prior, lives, counts }) => {
    const records = lives.map(([kind, entry, from, to, count]) => ({
      kind: kind as LifeKind,
      entry: entry as number,
      from: from as number,
      to: to as number,
      count: count as number,
    }));
    const bins = records
      .filter(({ kind }) => kind === 'right')
      .map(({ from, count }) => ({ age: from, count }));
    const { demands } = forecastCounts(bins, {
      life: valueOf(lifePosterior(records, prior)),
      windows: horizonsFrom(counts.map(({ horizon }) => horizon)),
      renewals: false,
    });
    counts.forEach((reference, i) => {
      const demand = demands[i]!;
      expect(Math.abs(demand.expected / reference.mean - 1)).toBeLessThan(0.005);
      expect(Math.abs(Math.sqrt(demand.variance) / reference.deviation - 1)).toBeLessThan(0.01);
      reference.count.forEach((count, j) => {
        expect(Math.abs(demand.cdf(count) - reference.cumulative[j]!)).toBeLessThan(0.003);
      });
      for (const [chance, count, allowed] of reference.quantiles) {
        expect(Math.abs(demand.quantile(chance!) - count!)).toBeLessThanOrEqual(allowed!);
      }
    });
  });
});

describe('forecastCounts with replacements that fail again', () => {
  it.each(agedRenewals.rows)('agrees at age %d over %d months', (age, horizon, expected) => {
    const { shape, scale } = agedRenewals;
    const bins = [{ age: age!, count: 1 }];
    const { demands, expectedByMonth } = forecastCounts(bins, {
      life: { shape, scale },
      windows: horizonsFrom([horizon!]),
      curveMonths: horizon!,
    });
    expect(Math.abs(demands[0]!.expected - expected!)).toBeLessThanOrEqual(2e-4 * expected! + 1e-7);
    expect(expectedByMonth[horizon!]).toBeCloseTo(demands[0]!.expected, 12);
  });

  it('agrees with simulated places in three windows: mean, variance and limits', () => {
    const life = { shape: 2.4, scale: 30 };
    const windows = [
      { from: 0, to: 7.3 },
      { from: 7.3, to: 31.3 },
      { from: 0, to: 60 },
    ];
    const bins = binsOf([
      [10, 8],
      [35, 5],
      [0, 7],
    ]);
    const { demands } = forecastCounts(bins, { life, windows });
    const counts = simulatedCounts(bins, life, windows, 20_000);
    counts.forEach((each, w) => {
      const mean = each.reduce((sum, count) => sum + count, 0) / each.length;
      const variance = each.reduce((sum, count) => sum + (count - mean) ** 2, 0) / each.length;
      expect(demands[w]!.expected / mean).toBeCloseTo(1, 2);
      expect(Math.abs(demands[w]!.variance / variance - 1)).toBeLessThan(0.03);
      for (const limit of [0.05, 0.5, 0.95]) {
        const count = demands[w]!.quantile(limit);
        const share = each.filter((simulated) => simulated <= count).length / each.length;
        expect(Math.abs(demands[w]!.cdf(count) - share)).toBeLessThan(0.015);
      }
    });
  });
});

function simulatedCounts(
  bins: readonly AgeBin[],
  life: { shape: number; scale: number },
  windows: readonly { from: number; to: number }[],
  times: number,
): number[][] {
  const uniform = uniformNumbers(3);
  const next = (age: number) => weibullLife(uniform, life.shape, life.scale, age) - age;
  const counts = windows.map(() => new Array<number>(times).fill(0));
  for (let run = 0; run < times; run += 1) {
    for (const { age, count } of bins) {
      for (let unit = 0; unit < count; unit += 1) {
        for (let t = next(age); t <= 60; t += next(0)) {
          windows.forEach(({ from, to }, w) => (counts[w]![run]! += t > from && t <= to ? 1 : 0));
        }
      }
    }
  }
  return counts;
}

const posterior = valueOf(
  lifePosterior([
    { kind: 'exact', entry: 0, from: 40, to: 40, count: 12 },
    { kind: 'exact', entry: 20, from: 55, to: 55, count: 18 },
    { kind: 'right', entry: 0, from: 30, to: 30, count: 150 },
    { kind: 'right', entry: 0, from: 60, to: 60, count: 25 },
  ]),
);
const bins = fc.array(
  fc.record({ age: fc.double({ min: 0, max: 100, noNaN: true }), count: fc.integer({ min: 0, max: 60 }) }),
  { minLength: 1, maxLength: 10 },
);

describe('forecastCounts, properties', () => {
  it.each([
    ['a known life', { shape: 2.2, scale: 50 }],
    ['a belief', posterior],
  ])('under %s windows add up to the whole in their means, and groups to the total', (_, life) => {
    fc.assert(
      fc.property(
        bins,
        bins,
        fc.integer({ min: 1, max: 20 }),
        fc.boolean(),
        (one, other, first, renewals) => {
          const windows = [
            { from: 0, to: first },
            { from: first, to: 36.5 },
            { from: 0, to: 36.5 },
          ];
          const request = { life, windows, renewals, curveMonths: 37 };
          const [a, b, all] = forecastGroups([one, other, [...one, ...other]], request);
          const mean = (group: typeof all, w: number) => group!.demands[w]!.expected;
          const scale = 1e-9 * (1 + mean(all, 2));
          expect(Math.abs(mean(all, 0) + mean(all, 1) - mean(all, 2))).toBeLessThan(scale);
          expect(Math.abs(mean(a, 2) + mean(b, 2) - mean(all, 2))).toBeLessThan(scale);
          expect(Math.abs(all!.expectedByMonth[first]! - mean(all, 0))).toBeLessThan(scale);
          expect(all!.demands[2]!.variance).toBeGreaterThanOrEqual(0);
        },
      ),
      { seed: 8, numRuns: 15 },
    );
  });

  it('is wider under a belief than under its most credible life', () => {
    const fleet = binsOf([
      [20, 100],
      [40, 80],
      [60, 40],
    ]);
    const known = { shape: 1 / posterior.mode.sigma, scale: Math.exp(posterior.mode.mu) };
    const [narrow] = forecastCounts(fleet, { life: known, windows: horizonsFrom([24]) }).demands;
    const [wide] = forecastCounts(fleet, { life: posterior, windows: horizonsFrom([24]) }).demands;
    expect(wide!.variance).toBeGreaterThan(2 * narrow!.variance);
    expect(wide!.quantile(0.95)).toBeGreaterThan(narrow!.quantile(0.95));
  });

  it('counts no failure of places that are given up, and none without batteries', () => {
    const request = { life: posterior, windows: horizonsFrom([36]) };
    const fleet = binsOf([[30, 500]]);
    const kept = forecastCounts(fleet, request).demands[0]!.expected;
    const given = forecastCounts(fleet, { ...request, goneRate: 0.01 }).demands[0]!.expected;
    expect(given).toBeLessThan(kept);
    expect(given).toBeGreaterThan(kept * Math.exp(-0.36));
    const [none] = forecastCounts([], request).demands;
    expect([none!.expected, none!.variance, none!.quantile(0.95)]).toEqual([0, 0, 0]);
  });

  it('answers the same twice', () => {
    const request = { life: posterior, windows: horizonsFrom([12, 24]) };
    const answers = () =>
      forecastCounts(binsOf([[30, 500]]), request).demands.map((d) => [d.expected, d.quantile(0.95)]);
    expect(answers()).toEqual(answers());
  });

  it('takes the exact law and the law from three moments for nearly one', () => {
    // 40 units are counted exactly, 41 by moments: a limit moves by the one battery more, and by one at most.
    for (const age of [10, 40, 60]) {
      const limits = [40, 41].map((count) => {
        const { demands } = forecastCounts([{ age, count }], {
          life: posterior,
          windows: horizonsFrom([12, 36]),
        });
        return demands.flatMap((demand) => [0.05, 0.5, 0.95].map((chance) => demand.quantile(chance)));
      });
      limits[0]!.forEach((limit, i) => expect([-1, 0, 1, 2]).toContain(limits[1]![i]! - limit));
    }
  });
});
