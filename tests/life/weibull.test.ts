import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  lifeSample,
  smallestExtremeValue,
  weibullCumulativeHazard,
  weibullHazard,
  weibullHazardGain,
  weibullLogLikelihood,
  weibullLogLikelihoodAt,
  weibullLogSurvival,
  weibullMean,
  weibullQuantile,
} from '../../src/index.ts';
import { logLikelihood } from '../../src/life/lifeLikelihood.ts';
import { valueOf } from '../published/check.ts';
import { anyFleet, failedAt, failedBefore, failedBetween, goodAt, SEED } from './lives.ts';

describe('weibull by hand', () => {
  it('hazard, survival and quantile at the scale', () => {
    expect(weibullCumulativeHazard(60, 3, 60)).toBe(1);
    expect(weibullLogSurvival(30, 3, 60)).toBe(-0.125);
    expect(weibullHazard(60, 3, 60)).toBe(0.05);
    expect(weibullQuantile(-Math.expm1(-1), 3, 60)).toBeCloseTo(60, 12);
    expect(weibullMean(1, 60)).toBeCloseTo(60, 12);
  });

  it('the hazard gain keeps its digits where hazards would cancel or overflow', () => {
    expect(weibullHazardGain(0, 12, 2, 60)).toBeCloseTo(0.04, 15);
    expect(weibullHazardGain(30, 0, 2, 60)).toBe(0);
    // d(t/60)^2 = 2 t dt / 3600
    expect(weibullHazardGain(30, 1e-9, 2, 60)).toBeCloseTo((2 * 30 * 1e-9) / 3600, 20);
    expect(weibullHazardGain(1e-4, 60, 100, 60)).toBeCloseTo(1.0001666805, 6);
    expect(weibullHazardGain(1e300, 1, 2, 60)).toBe(Number.POSITIVE_INFINITY);
  });

  it('log-likelihood of each kind of life, at shape 2 and scale 10', () => {
    const at = (...rows: Parameters<typeof lifeSample>[0]) =>
      weibullLogLikelihood(valueOf(lifeSample(rows)), Math.log(10), 0.5);
    const good = (age: number) => Math.exp(-((age / 10) ** 2));
    expect(at(failedAt(5))).toBeCloseTo(Math.log((2 / 10) * (5 / 10) * good(5)), 14);
    expect(at(goodAt(5, 0, 3))).toBeCloseTo(3 * Math.log(good(5)), 14);
    expect(at(failedBetween(5, 7))).toBeCloseTo(Math.log(good(5) - good(7)), 14);
    expect(at(failedBefore(5))).toBeCloseTo(Math.log(1 - good(5)), 14);
    expect(at(goodAt(5, 4))).toBeCloseTo(Math.log(good(5) / good(4)), 14);
    expect(at(failedBetween(5, 7, 4))).toBeCloseTo(Math.log((good(5) - good(7)) / good(4)), 14);
    expect(at(failedBetween(2, 7, 4))).toBeCloseTo(Math.log((good(4) - good(7)) / good(4)), 14);
  });

  it('a span far in the tail has a log-likelihood though its chance is no number', () => {
    const sample = valueOf(lifeSample([failedBetween(400, 401)]));
    const value = weibullLogLikelihood(sample, Math.log(10), 0.5);
    expect(value).toBeCloseTo(-1600 + Math.log(-Math.expm1(-(401 ** 2 - 400 ** 2) / 100)), 10);
  });
});

describe('weibull properties', () => {
  it('the walk made once for a sigma gives what the general likelihood gives', () => {
    fc.assert(
      fc.property(
        anyFleet,
        fc.double({ min: 3, max: 5, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        (fleet, mu, sigma) => {
          const sample = valueOf(lifeSample(fleet));
          const general = logLikelihood(sample, smallestExtremeValue, mu, sigma);
          expect(weibullLogLikelihoodAt(sample, sigma)(mu) / general).toBeCloseTo(1, 9);
        },
      ),
      SEED,
    );
  });

  it('hazards met one after the other add up', () => {
    const span = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        span,
        span,
        span,
        fc.double({ min: 0.2, max: 8, noNaN: true }),
        (age, first, second, shape) => {
          const inTwo =
            weibullHazardGain(age, first, shape, 60) + weibullHazardGain(age + first, second, shape, 60);
          expect(weibullHazardGain(age, first + second, shape, 60) / inTwo).toBeCloseTo(1, 11);
        },
      ),
      SEED,
    );
  });
});
