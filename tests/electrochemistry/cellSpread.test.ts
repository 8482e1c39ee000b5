import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellSpread } from '../../src/electrochemistry/cellSpread.ts';
import { refusal, SEED, valueOf } from './outcomes.ts';

describe('cellSpread', () => {
  it('is the highest less the lowest, in any order', () => {
    expect(valueOf(cellSpread([1.26, 1.265, 1.24, 1.255]))).toBe(0.025);
    expect(valueOf(cellSpread([1.24, 1.265]))).toBe(0.025);
    expect(valueOf(cellSpread([1.25, 1.25, 1.25, 1.25, 1.25, 1.25]))).toBe(0);
  });

  it('meets a printed limit exactly although 1.265 less 1.240 does not', () => {
    expect(1.265 - 1.24).toBeLessThan(0.025);
    expect(valueOf(cellSpread([1.265, 1.24])) >= 0.025).toBe(true);
    expect(valueOf(cellSpread([1.27, 1.22])) > 0.05).toBe(false);
  });

  it('does not care in which order the cells are read', () => {
    const cells = fc.array(fc.double({ min: 1, max: 1.4, noNaN: true }), { minLength: 2, maxLength: 6 });
    const property = fc.property(cells, (readings) => {
      const spread = valueOf(cellSpread(readings));
      expect(spread).toBe(valueOf(cellSpread([...readings].reverse())));
      expect(spread >= 0 && spread <= 0.4).toBe(true);
    });
    fc.assert(property, { seed: SEED });
  });

  it('needs two to six readings of battery acid', () => {
    expect(refusal(cellSpread([1.265]))).toEqual([
      'notEnoughData',
      'readings in the row: 1; needed are those of two to six cells',
    ]);
    expect(refusal(cellSpread([]))[0]).toBe('notEnoughData');
    expect(refusal(cellSpread([1.2, 1.2, 1.2, 1.2, 1.2, 1.2, 1.2]))[0]).toBe('badInput');
    expect(refusal(cellSpread([1.2, 1240]))[0]).toBe('outOfRange');
    expect(refusal(cellSpread([1.2, Number.NaN]))[0]).toBe('badInput');
  });
});
