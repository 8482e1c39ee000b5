import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareOut } from '../../src/planning/shareOut.ts';

const sum = (parts: readonly number[]): number => parts.reduce((all, part) => all + part, 0);

describe('shareOut', () => {
  it('gives the steps that are left to the largest remainders, the earlier part first', () => {
    expect(shareOut([1.2, 1.4, 1.4], 1)).toEqual([1, 2, 1]);
    expect(shareOut([0.14, 0.14, 0.14], 0.1)).toEqual([0.2, 0.1, 0.1]);
  });

  it('shares out a total that is not the parts own sum', () => {
    expect(shareOut([1, 1, 2], 1, 10)).toEqual([3, 2, 5]);
  });

  it('gives nothing where there is nothing', () => {
    expect(shareOut([0, 0], 0.1)).toEqual([0, 0]);
    expect(shareOut([], 1)).toEqual([]);
  });

  it('adds up exactly and moves no part by a whole step', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 1, maxLength: 40 }),
        (parts) => {
          const shared = shareOut(parts, 0.1);
          expect(Math.round(sum(shared) * 10)).toBe(Math.round(sum(parts) * 10));
          const scale = sum(parts) > 0 ? Math.round(sum(parts) * 10) / 10 / sum(parts) : 0;
          shared.forEach((amount, i) =>
            expect(Math.abs(amount - parts[i]! * scale)).toBeLessThan(0.1 + 1e-6),
          );
        },
      ),
      { seed: 42, numRuns: 200 },
    );
  });
});
