import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { estimateOfSample, lifeEstimate, lifeSample } from '../../src/index.ts';
import { readLives } from './reference/readLives.ts';
import { waitingCases } from './reference/knownLifeRows.ts';
import { publications } from './reference/publications.ts';
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

describe('reference lives', () => {
  const folder = new URL('./reference/lives/', import.meta.url);
  const named = readdirSync(folder).map((file) => file.replace('.csv', ''));

  it('each file is listed with its publication', () => {
    expect(named.sort()).toEqual(Object.keys(publications).sort());
    const sources = new Set(referenceCases.flat().map(({ source }) => source));
    expect(
      [...sources].filter((key) => key !== 'computed here' && !Object.values(publications).includes(key)),
    ).toEqual([]);
  });

  it.each(named)('%s says in its first line where it is from', (name) => {
    const first = readFileSync(new URL(`${name}.csv`, folder), 'utf8').split('\n')[0]!;
    expect(first).toMatch(
      publications[name] === 'madeUp' ? /^# Made up for this project/ : /^# .+\b(19|20)\d\d\b|NIST/,
    );
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
