import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lifeSampleFromColumns, lifeTable, lifeTableOfSample, lifeTableQuantile } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { anyFleet, failedAt, failedBetween, goodAt, SEED } from './lives.ts';

describe('lifeTable by hand', () => {
  const lives = [failedAt(12), goodAt(12), failedAt(24, 6), goodAt(30, 24), failedAt(36), failedAt(36)];

  it('at risk are the lives under record before an age and not out before it', () => {
    const { rows, startAge } = valueOf(lifeTable(lives));
    expect(rows.map(({ month, atRisk, failed }) => [month, atRisk, failed])).toEqual([
      [12, 5, 1],
      [24, 3, 1],
      [36, 2, 2],
    ]);
    expect(rows.map(({ surviving }) => surviving)).toEqual([0.8, expect.closeTo(0.8 * (2 / 3), 15), 0]);
    expect(startAge).toBe(0);
  });

  it('Greenwood errors and log-log limits; none where nothing is left', () => {
    const [first, , last] = valueOf(lifeTable(lives, { level: 0.9 })).rows;
    const error = Math.sqrt(1 / (5 * 4));
    expect(first!.standardError).toBeCloseTo(0.8 * error, 15);
    const reach = Math.exp((1.6448536269514722 * error) / Math.log(0.8));
    expect(first!.low).toBeCloseTo(0.8 ** (1 / reach), 12);
    expect(first!.high).toBeCloseTo(0.8 ** reach, 12);
    expect(last).toMatchObject({ standardError: undefined, low: undefined, high: undefined });
  });

  it('plain limits stay within 0 and 1', () => {
    const { rows } = valueOf(
      lifeTable([failedAt(1), failedAt(2), goodAt(3)], { limits: 'plain', level: 0.99 }),
    );
    expect(rows.map(({ low, high }) => [low, high])).toEqual([
      [0, 1],
      [0, 1],
    ]);
  });

  it('a life that ended as it came under record was never at risk', () => {
    const { rows } = valueOf(lifeTable([failedAt(12), goodAt(20), failedAt(15, 15)]));
    expect(rows.map(({ month }) => month)).toEqual([12]);
  });
});

describe('a table that falls to 0 while younger records go on', () => {
  const later = Array.from({ length: 20 }, (_, row) =>
    row % 2 === 0 ? failedAt(60 + row, 50) : goodAt(80, 50),
  );
  const lives = [failedAt(10), ...later];

  it('says where', () => {
    expect(valueOf(lifeTable(lives))).toMatchObject({ fellToZeroAt: 10 });
    expect(valueOf(lifeTable([failedAt(10), failedAt(12)])).fellToZeroAt).toBeUndefined();
  });

  it('starts where enough are at risk, when asked', () => {
    const { rows, startAge, fellToZeroAt } = valueOf(lifeTable(lives, { startAge: 'enoughAtRisk' }));
    expect(startAge).toBe(50);
    expect(fellToZeroAt).toBeUndefined();
    expect(rows[0]).toMatchObject({ month: 60, atRisk: 20, surviving: 0.95 });
    expect(valueOf(lifeTable([failedAt(10), goodAt(12)], { startAge: 'enoughAtRisk' })).startAge).toBe(0);
  });

  it('counts from a start age the lives that go beyond it, whenever they came under record', () => {
    expect(
      valueOf(lifeTable([failedAt(10), failedAt(20), goodAt(30, 5)], { startAge: 15 })).rows,
    ).toMatchObject([{ month: 20, atRisk: 2, surviving: 0.5 }]);
  });
});

describe('lifeTable properties', () => {
  const fleet = anyFleet.map((rows) => rows.filter(({ kind }) => kind === 'exact' || kind === 'right'));

  it('falls, stays within its limits, and without censoring is the share left', () => {
    fc.assert(
      fc.property(fleet, (lives) => {
        const { rows } = valueOf(lifeTable(lives));
        rows.forEach(({ surviving, low, high }, index) => {
          expect(surviving).toBeLessThan(rows[index - 1]?.surviving ?? 1);
          if (low !== undefined) expect(low).toBeLessThanOrEqual(surviving);
          if (high !== undefined) expect(high).toBeGreaterThanOrEqual(surviving);
        });
        const complete = lives.map(({ to, count }) => failedAt(to, 0, count));
        const all = complete.reduce((sum, { count }) => sum + count, 0);
        valueOf(lifeTable(complete)).rows.forEach(({ month, surviving }) => {
          const left = complete.reduce((sum, { to, count }) => (to > month ? sum + count : sum), 0);
          expect(surviving).toBeCloseTo(left / all, 12);
        });
      }),
      SEED,
    );
  });

  it('a long uncounted sample gives the table of its rows', () => {
    const months = Float64Array.from({ length: 20_000 }, (_, row) => 1 + ((row * 7919) % 20_000) / 300);
    const failed = months.map((_, row) => Number(row % 3 === 0));
    const entry = months.map((age, row) => (row % 5 === 0 ? age / 2 : 0));
    const rows = [...months].map((age, row) =>
      failed[row] === 1 ? failedAt(age, entry[row]) : goodAt(age, entry[row]),
    );
    const ours = valueOf(lifeTableOfSample(lifeSampleFromColumns({ months, failed, entry })));
    expect(ours).toEqual(valueOf(lifeTable(rows)));
  });
});

describe('quantiles of a table', () => {
  it('are the first age low enough, or the middle of a flat stretch', () => {
    const table = valueOf(lifeTable([failedAt(10), failedAt(20), failedAt(30), failedAt(40)]));
    expect(lifeTableQuantile(table, 0.4).age).toBe(20);
    expect(lifeTableQuantile(table, 0.5).age).toBe(25);
    const short = valueOf(lifeTable([failedAt(10), goodAt(20)]));
    expect(lifeTableQuantile(short, 0.5).age).toBe(15);
    expect(lifeTableQuantile(short, 0.6)).toEqual({ age: undefined, low: 10, high: undefined });
  });
});

describe('refusals', () => {
  it.each([
    ['spans', [failedBetween(3, 9)], {}, 'badInput', 'agesNotExact'],
    ['no failure', [goodAt(3)], {}, 'notEnoughData', 'noFailures'],
    ['no failure after the start', [failedAt(3), goodAt(9)], { startAge: 5 }, 'notEnoughData', 'noFailures'],
    ['no life', [], {}, 'notEnoughData', 'noLives'],
    ['a level of 1', [failedAt(3)], { level: 1 }, 'outOfRange', 'mustBeProperShare'],
    ['an impossible life', [failedAt(-3)], {}, 'badInput', 'impossibleLife'],
  ])('%s', (_, lives, options, kind, because) => {
    expect(lifeTable(lives, options)).toMatchObject({ problem: { kind, because } });
  });
});
