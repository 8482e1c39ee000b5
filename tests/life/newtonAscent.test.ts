import { describe, expect, it } from 'vitest';
import { invertPositive, newtonAscent, solvePositive } from '../../src/life/newtonAscent.ts';

const anywhere = { longestStep: [1, 1], mayEnter: () => true };

describe('newtonAscent', () => {
  it('finds the top of a hill from where the surface is none', () => {
    // exp(-(x - 3)^2 / 2 - (y + 1)^2): far out it curves upwards.
    const surface = ([x, y]: readonly number[]) => {
      const [a, b] = [x! - 3, y! + 1];
      const value = Math.exp(-(a * a) / 2 - b * b);
      const cross = 2 * a * b * value;
      return {
        value,
        gradient: [-a * value, -2 * b * value],
        hessian: [
          [(a * a - 1) * value, cross],
          [cross, (4 * b * b - 2) * value],
        ],
      };
    };
    const peak = newtonAscent(surface, [0.5, 1], anywhere)!;
    expect(peak.point[0]).toBeCloseTo(3, 6);
    expect(peak.point[1]).toBeCloseTo(-1, 6);
    expect(peak.spread[1]![1]).toBeCloseTo(0.5, 6);
  });

  it('finds none on a slope that never ends, or outside what it may enter', () => {
    const slope = ([x]: readonly number[]) => ({ value: x!, gradient: [1], hessian: [[-1e-9]] });
    expect(newtonAscent(slope, [0], { longestStep: [1], mayEnter: ([x]) => x! < 20 })).toBeUndefined();
    expect(newtonAscent(slope, [0], { longestStep: [1], mayEnter: () => true })).toBeUndefined();
    const nowhere = () => ({ value: Number.NaN, gradient: [0], hessian: [[0]] });
    expect(newtonAscent(nowhere, [0], { longestStep: [1], mayEnter: () => true })).toBeUndefined();
  });

  it('solves and inverts by hand; not where a matrix is not positive', () => {
    const matrix = [
      [4, 2],
      [2, 3],
    ];
    expect(solvePositive(matrix, [8, 7])).toEqual([expect.closeTo(1.25, 14), expect.closeTo(1.5, 14)]);
    expect(invertPositive(matrix)).toEqual([
      [expect.closeTo(0.375, 14), expect.closeTo(-0.25, 14)],
      [expect.closeTo(-0.25, 14), expect.closeTo(0.5, 14)],
    ]);
    expect(
      solvePositive(
        [
          [1, 1],
          [1, 1],
        ],
        [1, 1],
      ),
    ).toBeUndefined();
    expect(invertPositive([[-1]])).toBeUndefined();
  });
});
