import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LifeEstimate, LifeModel, LifeRecord } from '../../src/index.ts';
import {
  collapseRecords,
  estimateAtSigma,
  estimateOfSample,
  lawOf,
  lifeEstimate,
  lifeSample,
  lifeSampleFromColumns,
  weibullQuantile,
} from '../../src/index.ts';
import { likelihoodSlopes, logLikelihood } from '../../src/life/lifeLikelihood.ts';
import { valueOf } from '../published/check.ts';
import { anyFleet, failedAt, failedBefore, failedBetween, goodAt, SEED } from './lives.ts';

const fit = (records: readonly LifeRecord[], model?: LifeModel): LifeEstimate =>
  valueOf(lifeEstimate(records, model));

const scaled = (records: readonly LifeRecord[], by: number): LifeRecord[] =>
  records.map(({ entry, from, to, ...more }) => ({
    ...more,
    entry: entry * by,
    from: from * by,
    to: to * by,
  }));

describe('lifeEstimate by hand', () => {
  it('an exponential life is total time over failures', () => {
    const { mu, sigma, varianceMu } = fit(
      [failedAt(10), failedAt(30, 5), goodAt(25), goodAt(40, 40)],
      'exponential',
    );
    expect(Math.exp(mu)).toBeCloseTo((10 + 25 + 25) / 2, 10);
    expect(sigma).toBe(1);
    expect(varianceMu).toBeCloseTo(1 / 2, 12);
  });

  it('a complete lognormal sample has the mean and spread of its logs', () => {
    const logs = [3, 3.5, 4.6];
    const { mu, sigma } = fit(
      logs.map((log) => failedAt(Math.exp(log))),
      'lognormal',
    );
    expect(mu).toBeCloseTo(3.7, 10);
    expect(sigma).toBeCloseTo(Math.sqrt((0.49 + 0.04 + 0.81) / 3), 10);
  });

  it('a known sigma gives the scale in closed form', () => {
    const sample = valueOf(lifeSample([failedAt(10), goodAt(20), goodAt(30, 10)]));
    const { mu } = valueOf(estimateAtSigma(sample, 0.5));
    expect(Math.exp(mu)).toBeCloseTo(Math.sqrt(100 + 400 + 900 - 100), 9);
  });
});

describe.each<LifeModel>(['weibull', 'lognormal'])('%s estimates, properties', (model) => {
  it('lie where both slopes are nothing, higher than their surroundings', () => {
    fc.assert(
      fc.property(anyFleet, (fleet) => {
        const sample = valueOf(lifeSample(fleet));
        const { mu, sigma, logLikelihood: height } = valueOf(estimateOfSample(sample, model));
        const { gradient, value } = likelihoodSlopes(sample, lawOf(model), mu, Math.log(sigma));
        expect(value).toBeCloseTo(height, 9);
        expect(Math.abs(gradient[0] * sigma) + Math.abs(gradient[1])).toBeLessThan(1e-6 * fleet.length);
        for (const [right, up] of [
          [0.3, 0],
          [-0.3, 0],
          [0, 1.5],
          [0, 0.6],
          [1, 3],
          [-1, 3],
          [1, 0.2],
        ] as const) {
          expect(logLikelihood(sample, lawOf(model), mu + right, sigma * (up || 1))).toBeLessThan(
            height + 1e-9,
          );
        }
      }),
      SEED,
    );
  });

  it('scale with the unit of age and keep their shape', () => {
    fc.assert(
      fc.property(anyFleet, fc.constantFrom(1 / 12, 30.4375, 1e6, 1e-6), (fleet, by) => {
        const [before, after] = [fit(fleet, model), fit(scaled(fleet, by), model)];
        expect(after.mu - before.mu).toBeCloseTo(Math.log(by), 8);
        expect(after.sigma / before.sigma).toBeCloseTo(1, 8);
        expect(after.varianceMu / before.varianceMu).toBeCloseTo(1, 6);
      }),
      SEED,
    );
  });

  it("don't depend on the order of rows or on counting equal ones together", () => {
    fc.assert(
      fc.property(anyFleet, (fleet) => {
        const once = fit(fleet, model);
        expect(fit([...fleet].reverse(), model).mu).toBe(once.mu);
        expect(fit(collapseRecords(fleet), model)).toEqual(once);
        const spread = fleet.flatMap((record) =>
          new Array<LifeRecord>(record.count).fill({ ...record, count: 1 }),
        );
        expect(fit(spread, model)).toEqual(once);
      }),
      SEED,
    );
  });

  it('a hundred times the lives give the same life, ten times as sure', () => {
    fc.assert(
      fc.property(anyFleet, (fleet) => {
        const [few, many] = [
          fit(fleet, model),
          fit(
            fleet.map((each) => ({ ...each, count: each.count * 100 })),
            model,
          ),
        ];
        expect(many.mu).toBeCloseTo(few.mu, 8);
        expect(many.varianceLogSigma / few.varianceLogSigma).toBeCloseTo(0.01, 6);
      }),
      SEED,
    );
  });

  it('an ever narrower span becomes an exact age', () => {
    const others = [failedAt(30), failedAt(44), goodAt(70), goodAt(50)];
    const exact = fit([...others, failedAt(57)], model);
    const narrow = fit([...others, failedBetween(56.9999, 57.0001)], model);
    expect(narrow.mu).toBeCloseTo(exact.mu, 7);
    expect(narrow.sigma).toBeCloseTo(exact.sigma, 7);
  });
});

describe('hard records', () => {
  it.each([0.12, 0.5, 1, 3, 12, 60, 200])('find shape %d back from its quantiles, in any unit', (shape) => {
    const ages = Array.from({ length: 400 }, (_, row) => weibullQuantile((row + 0.5) / 400, shape, 1000));
    const { mu, sigma } = fit(ages.map((age) => failedAt(age)));
    expect(Math.abs(1 / sigma / shape - 1)).toBeLessThan(0.01);
    expect(Math.abs(mu - Math.log(1000))).toBeLessThan(0.01 / shape);
  });

  it('entry ages close to the end of life, shape 9, ages near a thousand', () => {
    const rows = Array.from({ length: 300 }, (_, row) => {
      const share = (row + 0.5) / 300;
      const entry = 700 + (row % 10) * 30;
      const age = 1000 * ((entry / 1000) ** 9 - Math.log1p(-share)) ** (1 / 9);
      return age - entry > 60 ? goodAt(entry + 60, entry) : failedAt(age, entry);
    });
    const { mu, sigma } = fit(rows);
    expect(1 / sigma).toBeGreaterThan(7);
    expect(1 / sigma).toBeLessThan(11);
    expect(Math.exp(mu)).toBeCloseTo(1000, -2);
  });

  it('a long uncounted sample gives the life that its rows give', () => {
    const months = Float64Array.from({ length: 30_000 }, (_, row) =>
      weibullQuantile((row + 0.5) / 30_000, 2.4, 60),
    );
    const failed = months.map((_, row) => (row % 3 === 0 ? 1 : 0));
    const counted = lifeEstimate(
      [...months].map((age, row) => (failed[row] === 1 ? failedAt(age) : goodAt(age))),
    );
    const uncounted = valueOf(estimateOfSample(lifeSampleFromColumns({ months, failed })));
    expect(uncounted.mu).toBeCloseTo(valueOf(counted).mu, 9);
    expect(uncounted.sigma).toBeCloseTo(valueOf(counted).sigma, 9);
  });

  it('a long uncounted sample with a single early failure is fitted without the thinned one', () => {
    const months = Float64Array.from({ length: 30_000 }, (_, row) => 1 + row / 400);
    const failed = months.map((_, row) => (row === 777 || row === 15_001 ? 1 : 0));
    expect(valueOf(estimateOfSample(lifeSampleFromColumns({ months, failed }))).failures).toBe(2);
  });
});

describe('refusals', () => {
  const because = (records: readonly LifeRecord[], model?: LifeModel) => {
    const outcome = lifeEstimate(records, model);
    return outcome.ok ? 'an estimate' : outcome.problem.because;
  };

  it('no failure', () => {
    expect(because([goodAt(10), goodAt(20)])).toBe('noFailures');
    expect(because([], 'exponential')).toBe('noFailures');
  });

  it('one age agrees with every record', () => {
    expect(because([failedAt(36), failedAt(36), goodAt(24)])).toBe('oneAgeFitsAll');
    expect(because([failedAt(36), goodAt(36)])).toBe('oneAgeFitsAll');
    expect(because([failedBetween(10, 20), failedBetween(15, 30), goodAt(12)])).toBe('oneAgeFitsAll');
    expect(because([failedBefore(20), failedBefore(30)])).toBe('oneAgeFitsAll');
    expect(because([failedBefore(20)], 'exponential')).toBe('oneAgeFitsAll');
  });

  it('one failure age is fine where something outlived it', () => {
    expect(because([failedAt(36), failedAt(36), goodAt(37)])).toBe('an estimate');
  });

  it('failures that come ever more rarely: the shape runs to 0', () => {
    const inspected = [
      failedBefore(10, 30),
      goodAt(10, 0, 10),
      failedBefore(40, 20),
      goodAt(40, 0, 20),
      failedBefore(90, 10),
      goodAt(90, 0, 30),
    ];
    expect(because(inspected)).toBe('noWearSeen');
    const late = [
      failedAt(11, 10),
      failedAt(12, 10),
      failedAt(13, 10),
      goodAt(200, 12),
      goodAt(300, 12),
      goodAt(400, 12),
    ];
    expect(because(late)).toBe('noWearSeen');
  });

  it('a row that can’t be', () => {
    expect(because([failedAt(-1)])).toBe('impossibleLife');
  });
});
