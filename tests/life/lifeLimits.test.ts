import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  estimateOfSample,
  lifeQuantile,
  lifeSample,
  quantileLimits,
  quantileProfileLimits,
  quantileWaldLimits,
  sigmaLimits,
  sigmaProfileLimits,
  sigmaWaldLimits,
  survivalLimits,
} from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { readLives } from './reference/readLives.ts';
import { anyFleet, SEED } from './lives.ts';

const fitted = (lives: ReturnType<typeof readLives>) => {
  const sample = valueOf(lifeSample(lives));
  return { sample, fit: valueOf(estimateOfSample(sample)) };
};

describe('limits', () => {
  it('are by profile under 20 failures and by Wald from 20 on', () => {
    const few = fitted(readLives('bearingCages'));
    expect(quantileLimits(few.sample, few.fit, 0.1, 0.9)).toEqual(
      quantileProfileLimits(few.sample, few.fit, 0.1, 0.9),
    );
    expect(sigmaLimits(few.sample, few.fit, 0.9)).toEqual(sigmaProfileLimits(few.sample, few.fit, 0.9));
    const many = fitted(readLives('fleetLateRecords'));
    expect(quantileLimits(many.sample, many.fit, 0.1, 0.9)).toEqual(quantileWaldLimits(many.fit, 0.1, 0.9));
    expect(sigmaLimits(many.sample, many.fit, 0.9)).toEqual(sigmaWaldLimits(many.fit, 0.9));
  });

  it('that the records don’t set are left out: three failures at one age say little of how late the scale may be', () => {
    const { sample, fit } = fitted(readLives('threeOfAThousand'));
    const limits = sigmaProfileLimits(sample, fit, 0.9999);
    expect(limits.low).toBeGreaterThan(0);
    expect(limits).not.toHaveProperty('high', Number.POSITIVE_INFINITY);
  });

  it('hold the estimate, and widen with the level', () => {
    fc.assert(
      fc.property(anyFleet, fc.constantFrom(0.1, 0.5), (fleet, share) => {
        const { sample, fit } = fitted(fleet);
        const [narrow, wide] = [0.8, 0.95].map((level) => quantileProfileLimits(sample, fit, share, level));
        expect(narrow!.low).toBeLessThan(lifeQuantile(fit, share));
        expect(narrow!.high ?? Number.POSITIVE_INFINITY).toBeGreaterThan(lifeQuantile(fit, share));
        expect(wide!.low ?? 0).toBeLessThan(narrow!.low!);
        expect(wide!.high ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(narrow!.high ?? 0);
      }),
      { ...SEED, numRuns: 25 },
    );
  });

  it('of the share still good fall with age and hold the estimate', () => {
    const { fit } = fitted(readLives('ballBearings'));
    const at = (age: number) => survivalLimits(fit, age, 0.9);
    expect(at(40).low!).toBeGreaterThan(at(80).low!);
    expect(at(80).low!).toBeLessThan(Math.exp(-((80 / Math.exp(fit.mu)) ** (1 / fit.sigma))));
    expect(at(80).high!).toBeGreaterThan(Math.exp(-((80 / Math.exp(fit.mu)) ** (1 / fit.sigma))));
  });
});
