import { describe, expect, it } from 'vitest';
import { lifeTable, turnbullTable } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { failedAt, failedBefore, failedBetween, goodAt } from './lives.ts';

describe('turnbullTable', () => {
  it('by hand: one inspection of four', () => {
    const { steps, logLikelihood } = valueOf(turnbullTable([failedBefore(12, 3), goodAt(12)]));
    expect(steps).toEqual([
      { from: 0, to: 12, share: expect.closeTo(0.75, 9) },
      { from: 12, to: Number.POSITIVE_INFINITY, share: expect.closeTo(0.25, 9) },
    ]);
    expect(logLikelihood).toBeCloseTo(3 * Math.log(0.75) + Math.log(0.25), 9);
  });

  it('overlapping spans put all lives where they overlap', () => {
    const { steps } = valueOf(turnbullTable([failedBetween(3, 9), failedBetween(6, 12)]));
    expect(steps).toEqual([{ from: 6, to: 9, share: expect.closeTo(1, 9) }]);
  });

  it('with exact ages it is the life table', () => {
    const lives = [failedAt(12, 0, 2), goodAt(12), goodAt(15), failedAt(24), goodAt(30), failedAt(36)];
    const table = valueOf(lifeTable(lives)).rows;
    const { steps } = valueOf(turnbullTable(lives));
    let left = 1;
    table.forEach(({ month, surviving }, row) => {
      left -= steps[row]!.share;
      expect(steps[row]).toMatchObject({ from: month, to: month });
      expect(left).toBeCloseTo(surviving, 8);
    });
  });

  it.each([
    ['late records', [failedAt(12, 3)], 'lateRecords'],
    ['no failure', [goodAt(12)], 'noFailures'],
    ['an impossible life', [failedBetween(12, 3)], 'impossibleLife'],
  ])('refuses %s', (_, lives, because) => {
    expect(turnbullTable(lives)).toMatchObject({ problem: { because } });
  });
});
