import { describe, expect, it } from 'vitest';
import { fixedShapeLife } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { failedAt, failedBetween, goodAt } from './lives.ts';

describe('fixedShapeLife', () => {
  it('by hand: no failure in 300 lives of a year, shape 2', () => {
    const life = valueOf(fixedShapeLife([goodAt(12, 0, 300)], 2, 0.95));
    expect(life.exposure).toBeCloseTo(300 * 144, 7);
    // Chance of none at the limit: exp(-exposure / scale^2) = 0.05.
    expect(Math.exp(-life.exposure / life.low ** 2)).toBeCloseTo(0.05, 10);
    expect(life).not.toHaveProperty('scale');
    expect(life).not.toHaveProperty('high');
  });

  it('by hand: exposure less that of ages at which lives came under record', () => {
    const life = valueOf(fixedShapeLife([failedAt(20, 10), goodAt(30)], 2));
    expect(life.exposure).toBeCloseTo(400 - 100 + 900, 9);
    expect(life.scale).toBeCloseTo(Math.sqrt(1200), 9);
    expect(life.low).toBeLessThan(life.scale!);
    expect(life.high).toBeGreaterThan(life.scale!);
  });

  it('a power too large for a number still has its limits', () => {
    const life = valueOf(fixedShapeLife([failedAt(900), goodAt(1000, 0, 5)], 300));
    expect(life.exposure).toBe(Number.POSITIVE_INFINITY);
    expect(life.scale).toBeCloseTo(1000 * 5 ** (1 / 300), 6);
    expect(life.low).toBeCloseTo(1000 * (5 / 4.743864518390585) ** (1 / 300), 6);
  });

  it.each([
    [[goodAt(12)], 0, 0.95, 'outOfRange', 'mustBeAboveZero'],
    [[goodAt(12)], 2, 1, 'outOfRange', 'mustBeProperShare'],
    [[failedBetween(3, 9)], 2, 0.95, 'badInput', 'agesNotExact'],
    [[goodAt(-12)], 2, 0.95, 'badInput', 'impossibleLife'],
    [[goodAt(12, 12)], 2, 0.95, 'notEnoughData', 'noLives'],
  ])('refuses %o, shape %d, level %d', (lives, shape, level, kind, because) => {
    expect(fixedShapeLife(lives, shape, level)).toMatchObject({ problem: { kind, because } });
  });
});
