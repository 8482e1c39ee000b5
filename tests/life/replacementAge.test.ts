import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lognormalLife, replacementAge, replacementPolicy, weibullLife } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { SEED } from './lives.ts';

const wearingOut = fc.double({ min: 1.05, max: 12, noNaN: true });
const dearer = fc.double({ min: 1.2, max: 60, noNaN: true });

/** Cost per month of replacing at an age, by counting steps of a thousandth of a month-free life. */
function steppedCostRate(shape: number, age: number, planned: number, failure: number): number {
  const good = (x: number) => Math.exp(-(x ** shape));
  const steps = 20_000;
  let time = 0;
  for (let step = 0; step < steps; step += 1)
    time += (good((age * step) / steps) + good((age * (step + 1)) / steps)) / 2;
  return (planned * good(age) + failure * (1 - good(age))) / ((time * age) / steps);
}

describe('replacementAge', () => {
  it('is the low point of the cost counted step by step', () => {
    const age = valueOf(replacementAge(2.5, 1, 1, 5));
    const at = steppedCostRate(2.5, age, 1, 5);
    expect(steppedCostRate(2.5, age * 1.02, 1, 5)).toBeGreaterThan(at);
    expect(steppedCostRate(2.5, age * 0.98, 1, 5)).toBeGreaterThan(at);
    expect(valueOf(replacementPolicy(weibullLife(2.5, 1), 1, 5)).costRate).toBeCloseTo(at, 6);
  });

  it('scales with the unit of age, not with that of money', () => {
    fc.assert(
      fc.property(wearingOut, dearer, (shape, failure) => {
        const age = replacementAge(shape, 60, 1, failure);
        fc.pre(age.ok);
        expect(valueOf(replacementAge(shape, 6000, 1, failure)) / valueOf(age)).toBeCloseTo(100, 6);
        expect(valueOf(replacementAge(shape, 60, 350, 350 * failure)) / valueOf(age)).toBeCloseTo(1, 8);
      }),
      SEED,
    );
  });

  it('comes earlier the dearer a failure, and what it saves is real', () => {
    fc.assert(
      fc.property(wearingOut, dearer, (shape, failure) => {
        const [less, more] = [failure, failure * 2].map((cost) =>
          replacementPolicy(weibullLife(shape, 60), 1, cost),
        );
        fc.pre(less!.ok);
        const { age, costRate, costRateWaiting, saving, nearlyBestFrom, nearlyBestTo } = valueOf(less!);
        expect(valueOf(more!).age).toBeLessThan(age);
        expect(costRate).toBeLessThan(costRateWaiting);
        expect(saving).toBeGreaterThan(0);
        expect(nearlyBestFrom).toBeLessThan(age);
        expect(nearlyBestTo ?? Number.POSITIVE_INFINITY).toBeGreaterThan(age);
        if (saving > 0.03) expect(nearlyBestTo).toBeDefined();
      }),
      SEED,
    );
  });

  it('waiting is cheaper without wear-out, or where a failure costs no more', () => {
    const waiting = { ok: false, problem: { kind: 'notEnoughData' } };
    expect(replacementAge(1, 60, 350, 900)).toMatchObject(waiting);
    expect(replacementAge(0.8, 60, 350, 900)).toMatchObject(waiting);
    expect(replacementAge(3, 60, 900, 900)).toMatchObject(waiting);
    expect(replacementAge(3, 60, 901, 900)).toMatchObject(waiting);
    // The best age is one that no battery reaches.
    expect(replacementAge(1.1, 60, 899, 900)).toMatchObject(waiting);
  });

  it('a lognormal life, whose hazard falls again, has a best age only where failures are dear enough', () => {
    expect(valueOf(replacementPolicy(lognormalLife(4, 0.4), 1, 8)).age).toBeCloseTo(25.6622, 3);
    expect(replacementPolicy(lognormalLife(4, 1.5), 1, 1.2)).toMatchObject({
      problem: { because: 'waitingIsCheaper' },
    });
  });

  it.each([
    [0, 60, 350, 900, 'shape'],
    [2, -60, 350, 900, 'scale'],
    [2, 60, 0, 900, 'plannedCost'],
    [2, 60, 350, -1, 'failureCost'],
  ])('refuses replacementAge(%d, %d, %d, %d)', (shape, scale, planned, failure, argument) => {
    expect(replacementAge(shape, scale, planned, failure)).toMatchObject({
      problem: { kind: 'outOfRange', argument },
    });
  });
});
