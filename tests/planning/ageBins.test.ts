import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ageBins, collapsedBins, gathered } from '../../src/planning/ageBins.ts';

const total = (bins: readonly { count: number }[]) => bins.reduce((sum, { count }) => sum + count, 0);
const months = (bins: readonly { age: number; count: number }[]) =>
  bins.reduce((sum, { age, count }) => sum + age * count, 0);

describe('ageBins', () => {
  it('gathers by month, with the mean age of the members', () => {
    expect(ageBins([3.2, 0.5, 3.6, 3.7])).toEqual([
      { age: 0.5, count: 1 },
      { age: expect.closeTo(3.5, 12), count: 3 },
    ]);
  });

  it('keeps every battery and every month of age', () => {
    const ages = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { maxLength: 200 });
    fc.assert(
      fc.property(ages, fc.integer({ min: 1, max: 6 }), (given, width) => {
        const bins = ageBins(given, width);
        expect(total(bins)).toBe(given.length);
        expect(months(bins)).toBeCloseTo(
          given.reduce((sum, age) => sum + age, 0),
          6,
        );
        expect(months(gathered(bins, 12))).toBeCloseTo(months(bins), 6);
      }),
      { seed: 16, numRuns: 100 },
    );
  });
});

describe('collapsedBins', () => {
  it('counts equal ages together and leaves out empty bins', () => {
    const bins = [
      { age: 5, count: 2 },
      { age: 3, count: 1 },
      { age: 5, count: 4 },
      { age: 9, count: 0 },
    ];
    expect(collapsedBins(bins)).toEqual([
      { age: 3, count: 1 },
      { age: 5, count: 6 },
    ]);
  });

  it('gathers ages known to the day by month once there are many', () => {
    const bins = Array.from({ length: 3000 }, (_, i) => ({ age: i / 30, count: 1 }));
    expect(collapsedBins(bins)).toHaveLength(100);
    expect(total(collapsedBins(bins))).toBe(3000);
  });
});
