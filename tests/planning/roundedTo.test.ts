import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundedTo } from '../../src/planning/roundedTo.ts';

describe('roundedTo', () => {
  it.each([
    [0.25 * 12.2, 1, 3.1],
    [1.005, 2, 1.01],
    [-0.25, 1, -0.3],
    [-0.04, 1, 0],
    [2.5, 0, 3],
    [430.756, 2, 430.76],
  ])('by hand: %d to %d places is %d, halves away from 0', (amount, places, rounded) => {
    expect(roundedTo(amount, places)).toBe(rounded);
  });

  it('moves nothing by more than half a step, and the same either side of 0', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (amount) => {
        expect(Math.abs(roundedTo(amount, 2) - amount)).toBeLessThan(0.005 + 1e-6);
        expect(roundedTo(-amount, 2)).toBe(0 - roundedTo(amount, 2));
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});
