import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { failureWithin, survival } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { SEED } from './lives.ts';

describe('failureWithin', () => {
  it('by hand: without wear-out age does not matter', () => {
    for (const age of [0, 1, 60, 600]) {
      expect(valueOf(failureWithin(age, 12, 1, 60))).toBeCloseTo(1 - Math.exp(-0.2), 14);
    }
    expect(valueOf(failureWithin(36, 0, 3, 60))).toBe(0);
  });

  it('is the share lost between two ages, of those good at the first', () => {
    const months = fc.double({ min: 0, max: 90, noNaN: true });
    fc.assert(
      fc.property(months, months, fc.double({ min: 0.3, max: 5, noNaN: true }), (age, ahead, shape) => {
        const [now, then] = [age, age + ahead].map((month) => valueOf(survival(month, shape, 60)));
        expect(valueOf(failureWithin(age, ahead, shape, 60))).toBeCloseTo(1 - then! / now!, 10);
      }),
      SEED,
    );
  });

  it('grows with the time ahead, and with age where there is wear-out', () => {
    const months = fc.integer({ min: 1, max: 200 });
    fc.assert(
      fc.property(months, months, fc.double({ min: 1.05, max: 6, noNaN: true }), (age, ahead, shape) => {
        const chance = valueOf(failureWithin(age, ahead, shape, 60));
        expect(valueOf(failureWithin(age, ahead + 1, shape, 60))).toBeGreaterThanOrEqual(chance);
        expect(valueOf(failureWithin(age + 1, ahead, shape, 60))).toBeGreaterThanOrEqual(chance);
      }),
      SEED,
    );
  });

  it.each([
    [-1, 12, 2, 60, 'age'],
    [1, -12, 2, 60, 'months'],
    [1, 12, 0, 60, 'shape'],
    [1, 12, 2, 0, 'scale'],
  ])('refuses failureWithin(%d, %d, %d, %d)', (age, months, shape, scale, argument) => {
    expect(failureWithin(age, months, shape, scale)).toMatchObject({
      problem: { kind: 'outOfRange', argument },
    });
  });
});
