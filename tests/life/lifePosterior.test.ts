import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lifePosterior, posteriorMean } from '../../src/life/lifePosterior.ts';
import { DEFAULT_LIFE_PRIOR } from '../../src/life/lifePrior.ts';
import type { LifeKind, LifeRecord } from '../../src/life/lifeRecord.ts';
import type { BeliefQuantile } from '../../src/life/posteriorQuantiles.ts';
import {
  posteriorAge,
  posteriorScale,
  posteriorShape,
  posteriorShareFailed,
} from '../../src/life/posteriorQuantiles.ts';
import { weibullQuantile } from '../../src/life/weibull.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';
import reference from './reference/posterior.json' with { type: 'json' };

const near = (value: number, expected: number, share: number) =>
  expect(Math.abs(value / expected - 1), `${value} for ${expected}`).toBeLessThanOrEqual(share);

function nearLimits(ours: BeliefQuantile, theirs: { low: number; middle: number; high: number }) {
  near(ours(0.025), theirs.low, 0.002);
  near(ours(0.5), theirs.middle, 0.002);
  near(ours(0.975), theirs.high, 0.002);
}

const life = (kind: LifeKind, entry: number, from: number, to: number, count: number): LifeRecord => ({
  kind,
  entry,
  from,
  to,
  count,
});

describe('lifePosterior, against an 801 x 801 grid in a separate program', () => {
  it.each(reference.cases)('$name', ({ prior, lives, shape, scale, tenth, half, logMarginalLikelihood }) => {
    const records = lives.map(([kind, entry, from, to, count]) =>
      life(kind as LifeKind, entry as number, from as number, to as number, count as number),
    );
    const posterior = valueOf(lifePosterior(records, prior));
    const mean = posteriorMean(posterior, (each) => each);
    near(mean, shape.mean, 0.002);
    near(Math.sqrt(posteriorMean(posterior, (each) => (each - mean) ** 2)), shape.deviation, 0.005);
    nearLimits(posteriorShape(posterior), shape);
    nearLimits(posteriorScale(posterior), scale);
    nearLimits(posteriorAge(posterior, 0.1), tenth);
    nearLimits(posteriorAge(posterior, 0.5), half);
    near(
      posteriorMean(posterior, (k, s) => weibullQuantile(0.1, k, s)),
      tenth.mean,
      0.005,
    );
    near(
      posteriorMean(posterior, (k, s) => weibullQuantile(0.5, k, s)),
      half.mean,
      0.005,
    );
    expect(Math.abs(posterior.logMarginalLikelihood - logMarginalLikelihood)).toBeLessThan(0.002);
  });
});

describe('lifePosterior, properties', () => {
  it('is the prior where no record carries weight', () => {
    for (const records of [[], [life('right', 30, 30, 30, 500)]]) {
      const posterior = valueOf(lifePosterior(records));
      expect([posterior.lives, posterior.failures]).toEqual([0, 0]);
      // exp(-1.96), 1 and exp(1.96) times 54 months; shape 2.5 over or under exp(0.98)
      nearLimits(posteriorAge(posterior, 0.5), { low: 7.6066, middle: 54, high: 383.35 });
      nearLimits(posteriorShape(posterior), { low: 0.9383, middle: 2.5, high: 6.6611 });
      expect(posterior.logMarginalLikelihood).toBeCloseTo(0, 6);
    }
  });

  it('does not depend on the order of the records, nor on whether equal ones are counted together', () => {
    const records = [
      life('exact', 0, 20, 20, 3),
      life('right', 5, 40, 40, 30),
      life('interval', 0, 50, 51, 2),
    ];
    const split = [...records, ...records]
      .reverse()
      .map((record) => ({ ...record, count: record.count / 2 }));
    const limits = (given: LifeRecord[]) => {
      const posterior = valueOf(lifePosterior(given));
      return [0.05, 0.5, 0.95].map((chance) => posteriorAge(posterior, 0.5)(chance));
    };
    limits(split).forEach((limit, i) => near(limit, limits(records)[i]!, 1e-9));
  });

  it('moves with the unit of time', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1000, noNaN: true }), (unit) => {
        const inUnit = (size: number) =>
          valueOf(
            lifePosterior(
              [life('exact', 0, 30 * size, 30 * size, 4), life('right', 0, 44 * size, 44 * size, 20)],
              {
                ...DEFAULT_LIFE_PRIOR,
                medianMonths: 54 * size,
              },
            ),
          );
        near(posteriorAge(inUnit(unit), 0.5)(0.9), unit * posteriorAge(inUnit(1), 0.5)(0.9), 1e-6);
        near(posteriorShape(inUnit(unit))(0.1), posteriorShape(inUnit(1))(0.1), 1e-6);
      }),
      { seed: 12, numRuns: 20 },
    );
  });

  it('has limits that rise with their chance, and ages that rise with the share failed', () => {
    const posterior = valueOf(lifePosterior([life('exact', 0, 30, 30, 4), life('right', 0, 44, 44, 20)]));
    const chance = fc.double({ min: 0.005, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(chance, chance, fc.double({ min: 0.01, max: 0.95, noNaN: true }), (a, b, share) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        for (const limit of [
          posteriorShape(posterior),
          posteriorScale(posterior),
          posteriorAge(posterior, share),
        ]) {
          expect(limit(high)).toBeGreaterThanOrEqual(limit(low));
        }
        expect(posteriorAge(posterior, share + 0.04)(a)).toBeGreaterThan(posteriorAge(posterior, share)(a));
      }),
      { seed: 13, numRuns: 100 },
    );
  });

  it('has the share failed by an age as the other side of the age of a share', () => {
    const posterior = valueOf(lifePosterior([life('exact', 0, 30, 30, 4), life('right', 0, 44, 44, 20)]));
    for (const [share, chance] of [
      [0.1, 0.05],
      [0.5, 0.5],
      [0.8, 0.95],
    ] as const) {
      const age = posteriorAge(posterior, share)(chance);
      near(posteriorShareFailed(posterior, age)(1 - chance), share, 1e-6);
    }
    expect(posteriorShareFailed(posterior, 0)(0.5)).toBe(0);
  });

  it('learns from intervals alone, from thousands of failures and from one at a great age', () => {
    const interval = valueOf(lifePosterior([life('interval', 0, 30, 31, 5), life('left', 0, 0, 20, 1)]));
    expect(posteriorAge(interval, 0.5)(0.5)).toBeGreaterThan(20);
    const many = valueOf(
      lifePosterior(
        Array.from({ length: 99 }, (_, i) => {
          const age = weibullQuantile((i + 1) / 100, 2.4, 62);
          return life('exact', 0, age, age, 1000);
        }),
      ),
    );
    near(posteriorShape(many)(0.5), 2.4, 0.05);
    near(posteriorScale(many)(0.5), 62, 0.01);
    const late = valueOf(lifePosterior([life('exact', 0, 1100, 1100, 1)]));
    expect(Number.isFinite(posteriorAge(late, 0.5)(0.5))).toBe(true);
  });
});

describe('lifePosterior refuses', () => {
  it('a prior whose figures are not above 0', () => {
    const [kind, sentence] = refusal(lifePosterior([], { ...DEFAULT_LIFE_PRIOR, spreadLogMedian: 0 }));
    expect(kind).toBe('badInput');
    expect(sentence).toContain('must each be above 0');
    expect(refusal(lifePosterior([], { ...DEFAULT_LIFE_PRIOR, medianMonths: Infinity }))[0]).toBe('badInput');
  });

  it('a record that can be no life', () => {
    expect(refusal(lifePosterior([life('exact', 50, 40, 40, 1)]))[0]).toBe('badInput');
  });
});
