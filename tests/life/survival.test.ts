import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { survival } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { SEED } from './lives.ts';

describe('survival', () => {
  it('by hand: all good when new, 1/e at the scale, next to none far beyond', () => {
    expect(valueOf(survival(0, 2.4, 60))).toBe(1);
    expect(valueOf(survival(60, 2.4, 60))).toBeCloseTo(Math.exp(-1), 15);
    expect(valueOf(survival(120, 1, 60))).toBeCloseTo(Math.exp(-2), 15);
    expect(valueOf(survival(6000, 8, 60))).toBe(0);
  });

  it('never grows with age and lies within 0 and 1', () => {
    const months = fc.double({ min: 0, max: 400, noNaN: true });
    fc.assert(
      fc.property(months, months, fc.double({ min: 0.2, max: 12, noNaN: true }), (a, b, shape) => {
        const [young, old] = [Math.min(a, b), Math.max(a, b)].map((age) => valueOf(survival(age, shape, 60)));
        expect(old).toBeLessThanOrEqual(young!);
        expect(old).toBeGreaterThanOrEqual(0);
        expect(young).toBeLessThanOrEqual(1);
      }),
      SEED,
    );
  });

  it.each([
    [-1, 2, 60, 'outOfRange', 'mustNotBeNegative', 'month'],
    [12, 0, 60, 'outOfRange', 'mustBeAboveZero', 'shape'],
    [12, 2, -60, 'outOfRange', 'mustBeAboveZero', 'scale'],
    [Number.NaN, 2, 60, 'badInput', 'notANumber', 'month'],
    [12, Number.POSITIVE_INFINITY, 60, 'badInput', 'notANumber', 'shape'],
  ])('refuses survival(%d, %d, %d)', (month, shape, scale, kind, because, argument) => {
    expect(survival(month, shape, scale)).toMatchObject({ problem: { kind, because, argument } });
  });
});
