import { describe, expect, it } from 'vitest';
import { competingRemoval, failureWithin } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';

describe('competingRemoval', () => {
  it('by hand: two constant rates share the chance in their proportion', () => {
    const { failed, removedGood, monthsInService } = valueOf(competingRemoval(30, 12, 1, 50, 0.01));
    const gone = 1 - Math.exp(-0.03 * 12);
    expect(failed).toBeCloseTo((gone * 0.02) / 0.03, 12);
    expect(removedGood).toBeCloseTo((gone * 0.01) / 0.03, 12);
    expect(monthsInService).toBeCloseTo(gone / 0.03, 11);
  });

  it('without other removals it is the chance to fail; in no time nothing happens', () => {
    const { failed, removedGood } = valueOf(competingRemoval(36, 12, 3, 60, 0));
    expect(failed).toBe(valueOf(failureWithin(36, 12, 3, 60)));
    expect(removedGood).toBe(0);
    expect(valueOf(competingRemoval(36, 0, 3, 60, 0.01))).toEqual({
      failed: 0,
      removedGood: 0,
      monthsInService: 0,
    });
  });

  it.each([
    [-1, 12, 3, 60, 0, 'age'],
    [1, -1, 3, 60, 0, 'months'],
    [1, 12, 0, 60, 0, 'shape'],
    [1, 12, 3, 0, 0, 'scale'],
    [1, 12, 3, 60, -0.1, 'otherRate'],
  ])('refuses competingRemoval(%d, %d, %d, %d, %d)', (age, months, shape, scale, rate, argument) => {
    expect(competingRemoval(age, months, shape, scale, rate)).toMatchObject({
      problem: { kind: 'outOfRange', argument },
    });
  });
});
