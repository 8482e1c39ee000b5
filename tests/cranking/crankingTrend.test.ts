import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CrankingTrend, DatedReading } from '../../src/cranking/crankingTrend.ts';
import { crankingTrend } from '../../src/cranking/crankingTrend.ts';
import { refusal, SEED, valueOf } from '../electrochemistry/outcomes.ts';

const AS_OF = 46_203;
/** 16 months of 30.4375 days are 487 whole days. */
const MONTHS_16 = 487;

const at = (monthsOf16: number, amps: number): DatedReading => ({
  day: AS_OF + monthsOf16 * MONTHS_16,
  amps,
});
const trend = (readings: readonly DatedReading[], least = 900, asOf = AS_OF): CrankingTrend =>
  valueOf(crankingTrend(readings, least, asOf));

describe('crankingTrend, by hand', () => {
  // Months -32, -16, 0: mean -16, sum of squares 512. Amps: mean 1046.667.
  // Slope = -16 x 1100 + 16 x 1000 = -1600, by 512 = -3.125. Leftovers 3.333, -6.667, 3.333: squares 66.667,
  // one degree of freedom, so the scatter is 8.16497 A; t for 95 % is 6.31375.
  const three = [at(-2, 1100), at(-1, 1040), at(0, 1000)];

  it('draws the line of least squares', () => {
    expect(trend(three).slopeAmpsPerMonth).toBeCloseTo(-3.125, 12);
  });

  it('tells when it reaches the least, with its band', () => {
    // (900 - 1046.667) / -3.125 = 46.9333 after the mean month -16.
    // Reach = 6.31375 x 8.16497 / 3.125 = 16.4963; its square by 512 = 0.53151, under 1: the fall is sure.
    // Half = 16.4963 x sqrt(0.46849 / 3 + 46.9333^2 / 512) = 34.832; (46.9333 -+ 34.832) / 0.46849 = 25.83, 174.53.
    const crossing = trend(three).crossing!;
    expect(crossing.best).toBeCloseTo(30.9333, 4);
    expect(crossing.low).toBeCloseTo(9.83, 2);
    expect(crossing.high).toBeCloseTo(158.53, 1);
  });

  it('gives the chance that a test to come reads under it', () => {
    // In 12 months: 28 from the mean, 959.167 A; error 8.16497 x sqrt(1 + 1/3 + 784 / 512) = 13.8193 A.
    // t = -59.167 / 13.8193 = -4.2814; with one degree of freedom 1/2 + atan(t) / pi = 0.0730.
    expect(trend(three).chanceWithin(12)).toBeCloseTo(0.073, 4);
    expect(trend(three).chanceWithin(30.9333333333)).toBeCloseTo(0.5, 9);
  });

  it('has crossed before as-of where the line is already under the least', () => {
    expect(trend(three, 1020).crossing!.best).toBeCloseTo((1020 - 1046.667) / -3.125 - 16, 3);
    expect(trend(three, 1020).crossing!.best).toBeLessThan(0);
  });

  it('is not reached by a line that rises, is level, or does not surely fall', () => {
    expect(trend([at(-2, 1000), at(-1, 1040), at(0, 1100)]).crossing).toBeUndefined();
    expect(trend([at(-2, 1000), at(-1, 1000), at(0, 1000)]).crossing).toBeUndefined();
    // Leftovers twice as large: 0.53151 becomes four times that, over 1.
    const loose = [at(-2, 1103.3333333), at(-1, 1033.3333333), at(0, 1003.3333333)];
    expect(trend(loose).slopeAmpsPerMonth).toBeCloseTo(-3.125, 6);
    expect(trend(loose).crossing).toBeUndefined();
    expect(trend(loose).chanceWithin(12)).toBeGreaterThan(0.073);
  });

  it('on an exact line has no band and chances of 0 or 1', () => {
    const exact = trend([at(-2, 1016), at(-1, 1008), at(0, 1000)], 992);
    expect(exact.crossing).toEqual({ best: 16, low: 16, high: 16 });
    expect([exact.chanceWithin(15), exact.chanceWithin(17)]).toEqual([0, 1]);
  });
});

/** Source nistNorris, readings and certified figures from memory: x and y of 36 readings. */
const NORRIS = [
  ...[0.2, 0.1, 337.4, 338.8, 118.2, 118.1, 884.6, 888.0, 10.1, 9.2, 226.5, 228.1, 666.3, 668.5],
  ...[996.3, 998.5, 448.6, 449.1, 777.0, 778.9, 558.2, 559.2, 0.4, 0.3, 0.6, 0.1, 775.5, 778.1],
  ...[666.9, 668.8, 338.0, 339.3, 447.5, 448.9, 11.6, 10.8, 556.0, 557.7, 228.1, 228.3, 995.8, 998.0],
  ...[887.6, 888.8, 120.2, 119.6, 0.3, 0.3, 0.3, 0.6, 556.8, 557.6, 339.1, 339.3, 887.2, 888.0],
  ...[999.0, 998.5, 779.0, 778.9, 11.1, 10.2, 118.3, 117.6, 229.2, 228.9, 669.1, 668.4, 448.9, 449.2],
  ...[0.5, 0.2],
];
const CERTIFIED = { start: -0.262323073774029, slope: 1.00211681802045, scatter: 0.884796396144373 };

describe('crankingTrend, against a published line', () => {
  // A tenth of x stands for a day; 2000 - y falls. The least 500 is the y of 1500.
  const pairs = Array.from({ length: NORRIS.length / 2 }, (_, i) => [NORRIS[2 * i]!, NORRIS[2 * i + 1]!]);
  const start = AS_OF - 10_000;
  const readings = pairs.map(([x, y]) => ({ day: start + Math.round(10 * x!), amps: 2000 - y! }));
  const { slopeAmpsPerMonth, crossing } = trend(readings, 500);
  const xAt = (months: number): number => (AS_OF + months * 30.4375 - start) / 10;

  it('has the certified slope', () => {
    expect(readings).toHaveLength(36);
    expect((-slopeAmpsPerMonth * 10) / 30.4375).toBeCloseTo(CERTIFIED.slope, 11);
  });

  it('crosses where the certified line does, and its band is where that line leaves its own limits', () => {
    const mean = pairs.reduce((sum, [x]) => sum + x!, 0) / 36;
    const spread = pairs.reduce((sum, [x]) => sum + (x! - mean) ** 2, 0);
    const lineAt = (x: number): number => CERTIFIED.start + CERTIFIED.slope * x;
    const limit = (x: number): number =>
      // t of 95 % with 34 degrees of freedom: 1.690924 (usual table, from memory).
      1.690924 * CERTIFIED.scatter * Math.sqrt(1 / 36 + (x - mean) ** 2 / spread);
    const [best, low, high] = [xAt(crossing!.best), xAt(crossing!.low), xAt(crossing!.high)];
    expect(lineAt(best)).toBeCloseTo(1500, 8);
    expect(lineAt(low) + limit(low)).toBeCloseTo(1500, 5);
    expect(lineAt(high) - limit(high)).toBeCloseTo(1500, 5);
  });
});

/** A fixed stream of numbers in (0, 1), by a congruential rule. */
function uniforms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

describe('crankingTrend, in 4000 simulated batteries', () => {
  const next = uniforms(SEED);
  const scatter = (): number => 15 * Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
  const truth = (months: number): number => 1000 - 4 * months;
  const reading = (days: number): DatedReading => ({
    day: AS_OF - days,
    amps: truth(-days / 30.4375) + scatter(),
  });
  const runs = Array.from({ length: 4000 }, () => {
    const readings = [1400, 1100, 700, 380, 40].map((days) => reading(days));
    return { crossing: trend(readings, 880).crossing, readings, later: truth(18) + scatter() };
  });
  // Four standard errors of a share of 4000.
  const near = (share: number): number => 4 * Math.sqrt((share * (1 - share)) / 4000);

  it('the band holds the true month of crossing in 90 of 100', () => {
    const held = runs.filter(
      ({ crossing }) => crossing !== undefined && crossing.low <= 30 && crossing.high >= 30,
    );
    expect(Math.abs(held.length / 4000 - 0.9)).toBeLessThan(near(0.9));
  });

  it('a chance of p that a reading is under what it then was comes up as often as p says', () => {
    const chances = runs.map(({ readings, later }) => trend(readings, later).chanceWithin(18));
    for (const p of [0.05, 0.25, 0.5, 0.75, 0.95]) {
      const share = chances.filter((chance) => chance < p).length / 4000;
      expect(Math.abs(share - p)).toBeLessThan(near(p));
    }
  });
});

const series = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 3000 }), fc.double({ min: 400, max: 1500, noNaN: true })), {
    minLength: 1,
    maxLength: 10,
  })
  .map((tests): DatedReading[] => [
    at(-1, 1171),
    at(-3, 1203),
    ...tests.map(([back, amps]) => ({ day: AS_OF - back, amps })),
  ]);

const figures = ({ crossing, chanceWithin }: CrankingTrend): number[] => [
  ...(crossing === undefined ? [] : [crossing.best, crossing.low, crossing.high]),
  chanceWithin(12),
  chanceWithin(24),
];

function agree(one: CrankingTrend, other: CrankingTrend): void {
  const [first, second] = [figures(one), figures(other)];
  expect(second).toHaveLength(first.length);
  first.forEach((value, i) =>
    expect(Math.abs(second[i]! - value)).toBeLessThan(1e-6 * (1 + Math.abs(value))),
  );
}

describe('crankingTrend, properties', () => {
  const check = (holds: (readings: DatedReading[]) => void): void =>
    fc.assert(fc.property(series, holds), { seed: SEED, numRuns: 200 });

  it('amperes shifted or scaled together with the least change no month and no chance', () => {
    check((readings) => {
      const change = (by: (amps: number) => number): CrankingTrend =>
        trend(
          readings.map(({ day, amps }) => ({ day, amps: by(amps) })),
          by(900),
        );
      agree(
        trend(readings),
        change((amps) => amps + 250),
      );
      agree(
        trend(readings),
        change((amps) => amps * 3),
      );
    });
  });

  it('a later as-of takes off as many months; the order of the tests is nothing', () => {
    check((readings) => {
      const [now, later] = [trend(readings), trend([...readings].reverse(), 900, AS_OF + MONTHS_16)];
      expect(later.chanceWithin(8)).toBeCloseTo(now.chanceWithin(24), 9);
      if (now.crossing === undefined) expect(later.crossing).toBeUndefined();
      else expect(later.crossing!.best + 16).toBeCloseTo(now.crossing.best, 6);
    });
  });

  it('the band holds the best month, and a higher least is never less likely to be missed', () => {
    check((readings) => {
      const { crossing, chanceWithin } = trend(readings);
      if (crossing !== undefined) {
        expect(crossing.low).toBeLessThanOrEqual(crossing.best);
        expect(crossing.high).toBeGreaterThanOrEqual(crossing.best);
      }
      expect(trend(readings, 950).chanceWithin(12)).toBeGreaterThanOrEqual(chanceWithin(12));
    });
  });
});

describe('crankingTrend, refusals', () => {
  const good = [at(-2, 1100), at(-1, 1040), at(0, 1000)];
  const refused = (readings: readonly DatedReading[], least = 900): [string, string] =>
    refusal(crankingTrend(readings, least, AS_OF));

  it('needs three tests', () => {
    expect(refused(good.slice(1))).toEqual(['notEnoughData', 'cranking tests: 2; a trend needs 3 or more']);
  });

  it('needs half a year between the first and the last', () => {
    const within = (days: number): DatedReading[] =>
      [days, 20, 0].map((back, i) => ({ day: AS_OF - back, amps: 1000 + i }));
    expect(refused(within(179))).toEqual([
      'notEnoughData',
      'days between the first and the last test: 179; a trend needs 180 or more',
    ]);
    expect(crankingTrend(within(180), 900, AS_OF).ok).toBe(true);
  });

  it('takes no test later than as-of', () => {
    expect(refused([...good, { day: AS_OF + 1, amps: 990 }])).toEqual([
      'outOfRange',
      'a test is dated 2026-07-01, later than as-of (2026-06-30); leave it out, or take a later as-of',
    ]);
  });

  it('takes amperes only', () => {
    expect(refused([...good, at(-1, 9.6)])[0]).toBe('badInput');
    expect(refused(good, 9.6)[0]).toBe('outOfRange');
    expect(refused(good, Number.NaN)[0]).toBe('badInput');
    expect(refused([...good, at(-1, Number.NaN)])[0]).toBe('badInput');
    expect(refused([...good, at(-1, -4)])[0]).toBe('outOfRange');
    expect(refused([...good, at(-1, 10_001)])[0]).toBe('outOfRange');
    expect(refused([...good, { day: Number.NaN, amps: 1000 }])[0]).toBe('badInput');
    expect(refusal(crankingTrend(good, 900, Number.NaN))[0]).toBe('badInput');
  });
});
