import { describe, expect, it } from 'vitest';
import { estimateOfSample, lifeEstimate, lifeSample } from '../../src/index.ts';
import { readLives } from './reference/readLives.ts';
import { waitingCases } from './reference/knownLifeRows.ts';
import { rowAgrees } from './reference/referenceRow.ts';
import { referenceCases } from './reference/referenceRows.ts';

const titled = referenceCases.map((rows) => ({ id: rows[0]!.id, title: rows[0]!.title, rows }));

describe('life statistics against other programs and publications', () => {
  it('holds at least fifty cases and two thousand values', () => {
    expect(titled.length).toBeGreaterThanOrEqual(50);
    expect(titled.reduce((sum, { rows }) => sum + rows.length, 0)).toBeGreaterThan(2000);
  });

  it.each(titled)('$id $title', ({ rows }) => {
    const wrong = rows.filter((row) => row.knownMiss === undefined && !rowAgrees(row));
    expect(wrong.map((row) => [row.quantity, row.expected, row.ours()])).toEqual([]);
  });

  it('known misses still miss, each with its reason', () => {
    const misses = referenceCases.flat().filter((row) => row.knownMiss !== undefined);
    expect(misses).toHaveLength(1);
    for (const miss of misses) {
      expect(rowAgrees(miss), `${miss.id} ${miss.quantity} now agrees`).toBe(false);
      expect(miss.knownMiss!.length).toBeGreaterThan(40);
    }
  });

  it.each(waitingCases)('$id $title', ({ costRate, ours, policy }) => {
    expect(Math.abs(ours() - costRate[0]!)).toBeLessThanOrEqual(costRate[1]);
    expect(policy()).toMatchObject({ ok: false, problem: { kind: 'notEnoughData' } });
  });
});

describe('lives that have no estimate', () => {
  it('D-NOMLE-01 no failures', () => {
    expect(lifeEstimate(readLives('noFailures'))).toMatchObject({
      problem: { kind: 'notEnoughData', because: 'noFailures' },
    });
  });

  it('D-NOMLE-02 all failures at the oldest age: the shape is unbounded', () => {
    const lives = readLives('oneFailureAgeNothingOlder');
    expect(lifeEstimate(lives)).toMatchObject({
      problem: { kind: 'notEnoughData', because: 'oneAgeFitsAll' },
    });
    expect(lifeEstimate(lives, 'lognormal')).toMatchObject({ problem: { because: 'oneAgeFitsAll' } });
    expect(lifeEstimate(lives, 'exponential').ok).toBe(true);
  });

  it('an estimate takes a counted sample too', () => {
    const sample = lifeSample(readLives('ballBearings'));
    expect(sample.ok && estimateOfSample(sample.value)).toEqual(lifeEstimate(readLives('ballBearings')));
  });
});
