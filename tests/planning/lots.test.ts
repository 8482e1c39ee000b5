import { describe, expect, it } from 'vitest';
import { lifePosterior } from '../../src/life/lifePosterior.ts';
import { forecastCounts, horizonsFrom } from '../../src/planning/forecastCounts.ts';
import { lotBins, lotsOf } from '../../src/planning/lots.ts';
import type { Places } from '../../src/planning/places.ts';
import { placesOf } from '../../src/planning/places.ts';
import type { Battery } from '../../src/service/battery.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { battery } from './inventedFleet.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';

const life = { shape: 2.4, scale: 60 };

const placesFrom = (batteries: readonly Battery[]): Places => valueOf(placesOf(batteries));

describe('lots', () => {
  const pair = { site: 'Ulvsund', vehicle: 'V1', set: 'A' };
  const { places, meanAge } = placesFrom([
    battery(1, { ...pair, ageMonths: 30.2 }),
    battery(2, { set: '', ageMonths: 12.5 }),
    battery(3, { ...pair, ageMonths: 40.1 }),
    battery(4, { ...pair, vehicle: 'V2', ageMonths: 40.5 }),
    battery(5, { ...pair, vehicle: 'V2', ageMonths: 30.6 }),
    battery(6, { ...pair, vehicle: 'V2' }),
  ]);
  const rowsOf = (wholeSets: boolean): number[][] =>
    lotsOf(places, wholeSets).map((lot) => lot.map((place) => place.battery.row));

  it('are sets of one vehicle where sets are renewed whole; a battery of unknown age stands alone', () => {
    expect(rowsOf(true)).toEqual([[1, 3], [2], [4, 5], [6]]);
    expect(rowsOf(false)).toEqual([[1], [2], [3], [4], [5], [6]]);
  });

  it('of equal months share a bin, at the mean ages of the fleet; unknown ages are shared out', () => {
    const bins = lotBins(lotsOf(places, true).slice(0, 3), meanAge);
    expect(bins).toEqual([
      { age: 12.5, count: 1 },
      { age: expect.closeTo(30.4, 9), mates: [expect.closeTo(40.3, 9)], count: 2 },
    ]);
    const all = lotBins(lotsOf(places, true), meanAge);
    const batteries = all.reduce((sum, { count, mates = [] }) => sum + count * (1 + mates.length), 0);
    expect(batteries).toBeCloseTo(6, 9);
  });
});

describe('whole sets', () => {
  it('by hand: two batteries that don t wear fail at twice the rate and take two each time', () => {
    // Rate 2/60 a month: over 12 months 0.4 sets, 0.8 batteries; variance 4 x 0.4.
    const bins = [{ age: 5, mates: [9], count: 1 }];
    const { demands, parts } = forecastCounts(bins, {
      life: { shape: 1, scale: 60 },
      windows: horizonsFrom([12]),
    });
    expect(demands[0]!.expected).toBeCloseTo(0.8, 3);
    expect(demands[0]!.variance).toBeCloseTo(1.6, 3);
    expect(demands[0]!.cdf(0)).toBeCloseTo(Math.exp(-0.4), 2);
    expect(demands[0]!.cdf(1)).toBe(demands[0]!.cdf(0));
    expect([parts[0]!.failures, parts[0]!.mates]).toEqual([expect.closeTo(0.4, 3), expect.closeTo(0.4, 3)]);
    expect(parts[0]!.planned).toBeCloseTo(0, 9);
  });

  it('agrees with simulated sets of unequal age', () => {
    const bins = [
      { age: 20, mates: [50], count: 30 },
      { age: 35, mates: [35, 36, 38], count: 10 },
      { age: 44, count: 15 },
    ];
    const windows = [
      { from: 0, to: 12 },
      { from: 12, to: 48 },
    ];
    const { demands, parts } = forecastCounts(bins, { life, windows });
    const uniform = uniformNumbers(21);
    const runs = 6000;
    const counts = windows.map(() => new Array<number>(runs).fill(0));
    for (let run = 0; run < runs; run += 1) {
      for (const { age, mates = [], count } of bins) {
        for (let set = 0; set < count; set += 1) {
          const next = (ages: number[]) =>
            Math.min(...ages.map((each) => weibullLife(uniform, life.shape, life.scale, each) - each));
          const ages = [age, ...mates];
          for (let t = next(ages); t <= 48; t += next(ages.map(() => 0))) {
            windows.forEach(({ from, to }, w) => (counts[w]![run]! += t > from && t <= to ? ages.length : 0));
          }
        }
      }
    }
    counts.forEach((each, w) => {
      const mean = each.reduce((sum, count) => sum + count, 0) / runs;
      const variance = each.reduce((sum, count) => sum + (count - mean) ** 2, 0) / runs;
      expect(demands[w]!.expected / mean).toBeCloseTo(1, 2);
      expect(Math.abs(demands[w]!.variance / variance - 1)).toBeLessThan(0.06);
      for (const limit of [0.05, 0.5, 0.95]) {
        const count = demands[w]!.quantile(limit);
        const share = each.filter((simulated) => simulated <= count).length / runs;
        expect(Math.abs(demands[w]!.cdf(count) - share)).toBeLessThan(0.03);
      }
      expect(parts[w]!.failures + parts[w]!.mates).toBeCloseTo(demands[w]!.expected, 6);
    });
  });

  it('needs more batteries, and a wider band, than renewing what failed alone', () => {
    const belief = valueOf(
      lifePosterior([30, 50, 70].map((age) => ({ kind: 'exact', entry: 0, from: age, to: age, count: 15 }))),
    );
    const request = { life: belief, windows: horizonsFrom([24]) };
    const [alone] = forecastCounts([{ age: 30, count: 200 }], request).demands;
    const [sets] = forecastCounts([{ age: 30, mates: [30], count: 100 }], request).demands;
    expect(sets!.expected).toBeGreaterThan(1.3 * alone!.expected);
    expect(sets!.quantile(0.95) - sets!.quantile(0.05)).toBeGreaterThan(
      alone!.quantile(0.95) - alone!.quantile(0.05),
    );
    expect(sets!.quantile(0.95) % 2).toBe(0);
  });
});
