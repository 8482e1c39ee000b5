import { describe, expect, it } from 'vitest';
import { studentTChance, studentTLimit } from '../../src/cranking/studentT.ts';

describe('studentT, by hand', () => {
  it.each([-40, -1, 0, 0.3, 2, 500])('with 1 and 2 degrees of freedom has its closed forms at %d', (t) => {
    expect(studentTChance(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 13);
    expect(studentTChance(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 13);
  });

  it('holds at both ends and mirrors about 0', () => {
    for (const degrees of [1, 2, 3, 8, 31]) {
      expect(studentTChance(-Infinity, degrees)).toBeCloseTo(0, 13);
      expect(studentTChance(Infinity, degrees)).toBeCloseTo(1, 13);
      expect(studentTChance(-1.7, degrees) + studentTChance(1.7, degrees)).toBeCloseTo(1, 13);
    }
  });

  it('is the integral of its density', () => {
    // Density of 5 degrees of freedom: 8 / (3 pi sqrt 5) (1 + t^2 / 5)^-3; the middle rule from 0 to 2.
    const steps = 20_000;
    let area = 0;
    for (let i = 0; i < steps; i += 1) {
      const t = ((i + 0.5) * 2) / steps;
      area += ((8 / (3 * Math.PI * Math.sqrt(5))) * (1 + (t * t) / 5) ** -3 * 2) / steps;
    }
    expect(studentTChance(2, 5)).toBeCloseTo(0.5 + area, 8);
  });
});

describe('studentT, published', () => {
  it.each([
    [1, 6.314],
    [2, 2.92],
    [3, 2.353],
    [4, 2.132],
    [5, 2.015],
    [10, 1.812],
    [20, 1.725],
    [30, 1.697],
    [120, 1.658],
  ])('has the 95 %% point of the usual table (from memory) with %d degrees of freedom', (degrees, t) => {
    expect(studentTLimit(degrees)).toBeCloseTo(t, 3);
    expect(studentTChance(studentTLimit(degrees), degrees)).toBeCloseTo(0.95, 11);
  });
});
