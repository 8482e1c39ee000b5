import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandPath, everyNth, linearScale, linePath, niceTicks } from '../../../taskpane/plot/plotScale.ts';

describe('round marks of an axis', () => {
  it.each([
    [0, 1, [0, 1]],
    [0, 4, [0, 1, 2, 3, 4]],
    [0, 37, [0, 10, 20, 30, 40]],
    [0, 140_400, [0, 50_000, 100_000, 150_000]],
    [-30, 100, [-50, 0, 50, 100]],
    [0, 0, [0, 1]],
  ])('from %d to %d', (low, high, marks) => expect(niceTicks(low, high)).toEqual(marks));

  it('hold every value, rise by one whole step, and are never more than a dozen', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 0, noNaN: true }),
        fc.double({ min: 0, max: 1e8, noNaN: true }),
        (low, high) => {
          const marks = niceTicks(low, high);
          const steps = marks.slice(1).map((mark, index) => mark - marks[index]!);
          expect(marks[0]!).toBeLessThanOrEqual(low + steps[0]! * 1e-6);
          expect(marks.at(-1)!).toBeGreaterThanOrEqual(high - steps[0]! * 1e-6);
          expect(marks.every(Number.isInteger)).toBe(true);
          expect(new Set(steps).size).toBe(1);
          expect(marks.length).toBeLessThanOrEqual(12);
        },
      ),
      { seed: 20260630 },
    );
  });
});

describe('places on a picture', () => {
  it('a straight scale meets both ends, and one value has a place too', () => {
    const scale = linearScale([0, 40], [160, 20]);
    expect([0, 10, 40].map(scale)).toEqual([160, 125, 20]);
    expect(linearScale([0, 0], [5, 9])(0)).toBe(5);
  });

  it('lines and the area between two of them', () => {
    const low = [
      [0, 10],
      [5, 8],
    ] as const;
    const high = [
      [0, 2],
      [5, 1.234],
    ] as const;
    expect(linePath(low)).toBe('M0 10L5 8');
    expect(bandPath(low, high)).toBe('M0 2L5 1.2L5 8L0 10Z');
    expect(bandPath([], [])).toBe('');
  });

  it('labels are left out evenly', () => {
    expect([1, 6, 7, 30].map((count) => everyNth(count, 6))).toEqual([1, 1, 2, 5]);
  });
});
