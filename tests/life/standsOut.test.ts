import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GroupedLife } from '../../src/life/standsOut.ts';
import { chanceOfAtLeast, standsOut } from '../../src/life/standsOut.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';

type LotLife = GroupedLife & { readonly lot: string; readonly site: string };

const groupings = [
  { kind: 'lot', groupOf: ({ lot }: LotLife) => lot },
  { kind: 'site', groupOf: ({ site }: LotLife) => site },
];

/** Lives of 40 lots on 5 sites, watched for 60 months; one lot may fail much earlier. */
function fleetOf(seed: number, badScale: number): LotLife[] {
  const uniform = uniformNumbers(seed);
  return Array.from({ length: 2000 }, (_, i) => {
    const bad = i % 40 === 7;
    const age = weibullLife(uniform, bad ? 1.2 : 2.4, bad ? badScale : 62);
    const watched = 60 * uniform();
    return {
      entry: 0,
      from: Math.min(age, watched),
      failed: age <= watched,
      lot: `lot ${i % 40}`,
      site: `site ${i % 5}`,
    };
  });
}

describe('chanceOfAtLeast', () => {
  it('by hand: two trials of 0.4 and 0.5', () => {
    expect(chanceOfAtLeast(0, [0.4, 0.5])).toBe(1);
    expect(chanceOfAtLeast(1, [0.4, 0.5])).toBeCloseTo(0.7, 14);
    expect(chanceOfAtLeast(2, [0.4, 0.5])).toBeCloseTo(0.2, 14);
    expect(chanceOfAtLeast(3, [0.4, 0.5])).toBe(0);
  });

  it('falls with the count and grows with every chance', () => {
    const chances = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 30 });
    fc.assert(
      fc.property(chances, fc.integer({ min: 0, max: 20 }), (given, count) => {
        const chance = chanceOfAtLeast(count, given);
        expect(chanceOfAtLeast(count + 1, given)).toBeLessThanOrEqual(chance + 1e-12);
        expect(chanceOfAtLeast(count, [...given, 0.5])).toBeGreaterThanOrEqual(chance - 1e-12);
      }),
      { seed: 15, numRuns: 200 },
    );
  });
});

describe('standsOut', () => {
  it('by hand: three of three failures in a group that lived a quarter of the months', () => {
    // Each failure falls on the group with chance 1/4; all three by luck: 1/64, for two groups looked at 1 - (63/64)^2.
    const lives: LotLife[] = Array.from({ length: 12 }, (_, i) => ({
      entry: 0,
      from: i < 3 ? 10 : 24,
      failed: i < 3,
      lot: i < 3 ? 'A' : 'B',
      site: '',
    }));
    const [odd] = standsOut(lives, groupings, { earlyMonths: 24, leastFailures: 3, level: 1 });
    expect(odd).toMatchObject({ kind: 'lot', name: 'A', lives: 3, failures: 3 });
    expect(odd!.expected).toBeCloseTo(0.75, 12);
    expect(odd!.chance).toBeCloseTo(1 / 64, 12);
    expect(odd!.chanceAnywhere).toBeCloseTo(1 - (63 / 64) ** 2, 12);
  });

  it('names a bad lot, first of all', () => {
    const [odd] = standsOut(fleetOf(1, 25), groupings);
    expect(odd).toMatchObject({ kind: 'lot', name: 'lot 7' });
    expect(odd!.failures).toBeGreaterThan(2 * odd!.expected);
  });

  it('raises a false alarm in no more than one search of twenty', () => {
    const fleets = Array.from({ length: 200 }, (_, seed) => fleetOf(100 + seed, 62)).map((lives) =>
      lives.map((life) => ({ ...life, lot: life.lot === 'lot 7' ? '' : life.lot })),
    );
    const alarms = fleets.filter((lives) => standsOut(lives, groupings).length > 0).length;
    expect(alarms).toBeLessThanOrEqual(17);
  });

  it('does not name two failures, old failures, or lives that came under record old', () => {
    const life = (from: number, lot: string, entry = 0): LotLife => ({
      entry,
      from,
      failed: true,
      lot,
      site: '',
    });
    const rest = Array.from({ length: 200 }, () => ({ ...life(30, 'B'), failed: false }));
    expect(standsOut([life(3, 'A'), life(4, 'A'), ...rest], groupings)).toEqual([]);
    expect(standsOut([25, 26, 27, 28].map((age) => life(age, 'A')).concat(rest), groupings)).toEqual([]);
    expect(standsOut([30, 31, 32].map((age) => life(age, 'A', 25)).concat(rest), groupings)).toEqual([]);
    expect(standsOut([], groupings)).toEqual([]);
  });

  it('counts a failure at the very end of a month, and at the end of what is early', () => {
    const lives: LotLife[] = [12, 18, 24].map((from) => ({
      entry: 0,
      from,
      failed: true,
      lot: 'A',
      site: '',
    }));
    const rest = Array.from({ length: 60 }, () => ({
      entry: 0,
      from: 40,
      failed: false,
      lot: 'B',
      site: '',
    }));
    expect(standsOut([...lives, ...rest], groupings)[0]).toMatchObject({ name: 'A', failures: 3 });
  });
});
