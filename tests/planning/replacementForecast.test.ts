import { describe, expect, it } from 'vitest';
import { lifePosterior } from '../../src/life/lifePosterior.ts';
import { replacementForecast } from '../../src/planning/replacementForecast.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';

const life = { shape: 2.4, scale: 60 };
const bins = [
  { age: 6, count: 40 },
  { age: 30, count: 35 },
  { age: 54, count: 10 },
];

describe('replacementForecast', () => {
  it('answers one row a period and then all, whose mean is the sum and whose limits are not', () => {
    const rows = valueOf(replacementForecast(bins, life, 3));
    expect(rows.map(({ period }) => period)).toEqual([1, 2, 3, 'all']);
    const [one, two, three, all] = rows;
    const sum = (of: (row: (typeof rows)[number]) => number) => of(one!) + of(two!) + of(three!);
    expect(sum(({ expected }) => expected)).toBeCloseTo(all!.expected, 9);
    expect(sum(({ low }) => low)).toBeLessThan(all!.low);
    expect(sum(({ high }) => high)).toBeGreaterThan(all!.high);
  });

  it('is worked out by hand for one battery that does not wear', () => {
    // Shape 1: failures of a place come at one rate, 12/60 a year, and the count is Poisson.
    const [year] = valueOf(replacementForecast([{ age: 17, count: 1 }], { shape: 1, scale: 60 }, 1));
    expect(year!.expected).toBeCloseTo(0.2, 4);
    expect(year!.variance).toBeCloseTo(0.2, 4);
    // P(0) = 0.8187, P(at most 1) = 0.9825.
    expect([year!.low, year!.high]).toEqual([0, 1]);
  });

  it('takes shorter periods and another level', () => {
    const months = valueOf(replacementForecast(bins, life, 12, 1, 0.5));
    const [year] = valueOf(replacementForecast(bins, life, 1));
    expect(months[12]!.expected).toBeCloseTo(year!.expected, 9);
    expect(months[12]!.high - months[12]!.low).toBeLessThan(year!.high - year!.low);
  });

  it('has wider limits under a belief from few records', () => {
    const belief = valueOf(lifePosterior([{ kind: 'exact', entry: 0, from: 50, to: 50, count: 5 }]));
    const known = { shape: 1 / belief.mode.sigma, scale: Math.exp(belief.mode.mu) };
    const width = (given: typeof known | typeof belief) => {
      const all = valueOf(replacementForecast(bins, given, 2)).at(-1)!;
      return all.high - all.low;
    };
    expect(width(belief)).toBeGreaterThan(1.5 * width(known));
  });
});

describe('replacementForecast refuses', () => {
  const refused = (...given: [ages?: typeof bins, periods?: number, monthsEach?: number, level?: number]) =>
    refusal(replacementForecast(given[0] ?? bins, life, given[1] ?? 3, given[2] ?? 12, given[3] ?? 0.9));

  it('ages under 0 and counts that are not whole', () => {
    expect(refused([{ age: -1, count: 1 }])).toEqual(['outOfRange', 'ages is -1; allowed is 0 to 1200']);
    expect(refused([{ age: 1, count: 1.5 }])[1]).toBe(
      'counts holds 1.5; allowed are whole numbers, 0 or more',
    );
    expect(refused([{ age: Number.NaN, count: 1 }])[0]).toBe('outOfRange');
  });

  it('periods, lengths and levels outside their limits', () => {
    expect(refused(bins, 2.5)[1]).toBe('periods is 2.5; allowed are whole numbers from 1 to 120');
    expect(refused(bins, 40)[1]).toContain('360 months for all periods together');
    expect(refused(bins, 3, 0)[0]).toBe('outOfRange');
    expect(refused(bins, 3, 12, 1)[1]).toBe('level is 1; allowed is above 0 to below 1');
  });
});
