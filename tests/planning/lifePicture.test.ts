import { describe, expect, it } from 'vitest';
import { DEFAULT_LIFE_PRIOR } from '../../src/life/lifePrior.ts';
import { lifePicture } from '../../src/planning/lifePicture.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { AS_OF, battery, inventedFleet, life } from './inventedFleet.ts';

describe('lifePicture', () => {
  it('by hand: four lives from new, two failed', () => {
    const lives = [
      life(1, 10, { removed: AS_OF - 1, meaning: 'failed', entry: 0 }),
      life(2, 20, { removed: AS_OF - 1, meaning: 'failed', entry: 0 }),
      life(3, 30, { entry: 0 }),
      life(4, 15, { removed: AS_OF - 1, meaning: 'good', entry: 0 }),
    ];
    const { steps } = valueOf(lifePicture([], lives, DEFAULT_LIFE_PRIOR));
    // 3 of 4 are left after 10 months; the good one leaves at 15; 1 of 2 is left after 20.
    expect(steps.map(({ age, share }) => [Math.round(age), share])).toEqual([
      [0, 1],
      [10, 0.75],
      [20, 0.375],
    ]);
  });

  it('the curve starts at 1, never rises, and lies inside its band', () => {
    const { batteries, lives } = inventedFleet();
    const { curve } = valueOf(lifePicture(batteries, lives, DEFAULT_LIFE_PRIOR));
    expect(curve[0]).toEqual({ age: 0, share: 1, low: 1, high: 1 });
    curve.slice(1).forEach((point, index) => {
      expect(point.share).toBeLessThanOrEqual(curve[index]!.share);
      expect(point.low!).toBeLessThanOrEqual(point.share);
      expect(point.high!).toBeGreaterThanOrEqual(point.share);
    });
  });

  it('counts each battery in service once, at its whole month of age', () => {
    const { batteries, lives } = inventedFleet();
    const shelved = battery(900, { whereabouts: 'inStock', ageMonths: 3 });
    const unknown = battery(901);
    const { inService } = valueOf(lifePicture([...batteries, shelved, unknown], lives, DEFAULT_LIFE_PRIOR));
    expect(inService.reduce((sum, count) => sum + count, 0)).toBe(120);
    expect(inService[2]).toBe(batteries.filter(({ ageMonths }) => Math.floor(ageMonths!) === 2).length);
  });

  it('a failure known to its month only stands at the month’s end', () => {
    const one = life(1, 10, { removed: AS_OF - 1, meaning: 'failed', entry: 0, from: 9, to: 10 });
    const { steps } = valueOf(lifePicture([], [one, life(2, 30, { entry: 0 })], DEFAULT_LIFE_PRIOR));
    expect(steps.map(({ age, share }) => [age, share])).toEqual([
      [0, 1],
      [10, 0.5],
    ]);
  });

  it('without any failure there are no steps, and a curve all the same', () => {
    const { steps, curve } = valueOf(lifePicture([], [life(1, 30)], DEFAULT_LIFE_PRIOR));
    expect(steps).toEqual([]);
    expect(curve.length).toBeGreaterThan(10);
  });
});
