import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { failureWithin, remainingLife } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { SEED } from './lives.ts';

describe('remainingLife', () => {
  it('by hand: new, and without wear-out the same at any age', () => {
    expect(valueOf(remainingLife(0, 2, 60))).toBeCloseTo(60 * Math.sqrt(Math.LN2), 12);
    expect(valueOf(remainingLife(0, 1, 60, 0.1))).toBeCloseTo(-60 * Math.log(0.9), 12);
    expect(valueOf(remainingLife(500, 1, 60))).toBeCloseTo(60 * Math.LN2, 11);
  });

  it('is the time within which that share fails', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2000, noNaN: true }),
        fc.double({ min: 0.3, max: 30, noNaN: true }),
        fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }),
        (age, shape, share) => {
          const months = valueOf(remainingLife(age, shape, 60, share));
          expect(valueOf(failureWithin(age, months, shape, 60))).toBeCloseTo(share, 9);
        },
      ),
      { ...SEED, numRuns: 200 },
    );
  });

  it('a very young battery of a very steep life still gets a figure', () => {
    expect(valueOf(remainingLife(1e-6, 100, 60))).toBeCloseTo(60 * Math.LN2 ** 0.01, 4);
  });

  it.each([
    [-1, 2, 60, 0.5, 'age'],
    [1, 0, 60, 0.5, 'shape'],
    [1, 2, 0, 0.5, 'scale'],
    [1, 2, 60, 0, 'share'],
    [1, 2, 60, 1, 'share'],
  ])('refuses remainingLife(%d, %d, %d, %d)', (age, shape, scale, share, argument) => {
    expect(remainingLife(age, shape, scale, share)).toMatchObject({
      problem: { kind: 'outOfRange', argument },
    });
  });
});
