import { describe, expect, it } from 'vitest';
import {
  lifeSample,
  lognormalHazard,
  lognormalHazardGain,
  lognormalLogLikelihood,
  lognormalLogSurvival,
  lognormalMean,
  lognormalQuantile,
} from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { failedAt, goodAt } from './lives.ts';

describe('lognormal by hand', () => {
  it('half have failed at exp(mu); mean, quantile and age 0', () => {
    expect(lognormalLogSurvival(Math.exp(4), 4, 0.3)).toBeCloseTo(Math.log(0.5), 14);
    expect(lognormalQuantile(0.5, 4, 0.3)).toBeCloseTo(Math.exp(4), 10);
    expect(lognormalMean(4, 0.3)).toBeCloseTo(Math.exp(4.045), 10);
    expect(lognormalLogSurvival(0, 4, 0.3)).toBe(0);
    expect(lognormalHazard(0, 4, 0.3)).toBe(0);
  });

  it('the hazard is the slope of the log survival, and the gain its integral', () => {
    const slope = (lognormalLogSurvival(40, 4, 0.3) - lognormalLogSurvival(40.001, 4, 0.3)) / 0.001;
    expect(lognormalHazard(40.0005, 4, 0.3)).toBeCloseTo(slope, 9);
    expect(lognormalHazardGain(40, 0.001, 4, 0.3)).toBeCloseTo(slope * 0.001, 13);
    expect(lognormalHazardGain(40, 1e-9, 4, 0.3) / (lognormalHazard(40, 4, 0.3) * 1e-9)).toBeCloseTo(1, 9);
  });

  // R 4.2.2: pnorm(-4/0.3)
  it('the chance to fail in the first month, 13 sigma out, keeps its digits', () => {
    expect(-Math.expm1(-lognormalHazardGain(0, 1, 4, 0.3)) / 7.40641277190708e-41).toBeCloseTo(1, 12);
  });

  it('log-likelihood of a failure and a survivor', () => {
    const sample = valueOf(lifeSample([failedAt(Math.E), goodAt(1)]));
    const failure = -0.5 * Math.log(2 * Math.PI) - Math.log(2) - 1 - 0.5 * 0.25;
    expect(lognormalLogLikelihood(sample, 0, 2)).toBeCloseTo(failure + Math.log(0.5), 14);
  });
});
