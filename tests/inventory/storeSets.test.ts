import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { DEFAULT_SETTINGS } from '../../src/inventory/settings.ts';
import { storeSets } from '../../src/inventory/storeSets.ts';
import type { Battery } from '../../src/service/battery.ts';
import { stocked } from './shelfStock.ts';

const LIMITS = DEFAULT_SETTINGS.store;
const read = (restVolts: number, reading: number): Partial<Battery> => ({ readings: { restVolts, reading } });
const setsOf = (batteries: readonly Battery[], limits = LIMITS): string[][] =>
  storeSets(batteries, limits).map((set) => set.batteries.map(({ serial }) => serial));

describe('storeSets by hand', () => {
  it('four alike make a four, three a pair, one none', () => {
    const four = ['a', 'b', 'c', 'd'].map((serial) => stocked(serial));
    expect(setsOf(four)).toEqual([['a', 'b', 'c', 'd']]);
    expect(setsOf(four.slice(0, 3))).toEqual([['a', 'b']]);
    expect(setsOf(four.slice(0, 1))).toEqual([]);
  });

  it('on each limit is inside, beyond it outside', () => {
    const made = (year: number, month: number, day: number) => ({ made: dayFromParts(year, month, day)! });
    const pair = (one: Partial<Battery>, other: Partial<Battery>) =>
      setsOf([stocked('a', one), stocked('b', other)]);
    expect(pair(read(12.8, 1000), read(12.7, 900))).toHaveLength(1);
    expect(pair(read(12.8, 1000), read(12.69, 900))).toHaveLength(0);
    expect(pair(read(12.8, 1000), read(12.8, 899))).toHaveLength(0);
    expect(pair(made(2024, 2, 1), made(2025, 2, 1))).toHaveLength(1);
    expect(pair(made(2024, 2, 1), made(2025, 2, 2))).toHaveLength(0);
  });

  it('never across sites, types, constructions, or amperes with volts; other spellings are one type', () => {
    const pair = (other: Partial<Battery>) => setsOf([stocked('a'), stocked('b', other)]);
    expect(pair({ type: '6T-agm' })).toHaveLength(1);
    expect(pair({ site: 'Harbour' })).toHaveLength(0);
    expect(pair({ type: '6T-AGM 2' })).toHaveLength(0);
    expect(pair({ construction: 'flooded' })).toHaveLength(0);
    expect(pair(read(12.75, 10.4))).toHaveLength(0);
  });

  it('nothing without what would have to be compared', () => {
    expect(setsOf([stocked('a', { made: undefined }), stocked('b')])).toEqual([]);
    expect(setsOf([stocked('a', { readings: { reading: 1000 } }), stocked('b')])).toEqual([]);
  });
});

describe('storeSets of any stock', () => {
  it('each battery stands in one set, and every set keeps the limits', () => {
    const any = fc.record({
      volts: fc.integer({ min: 1240, max: 1290 }),
      amps: fc.integer({ min: 700, max: 1200 }),
      made: fc.integer({ min: 0, max: 1500 }),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 40 }), (all) => {
        const stock = all
          .map(({ volts, amps, made }, row) =>
            stocked(`S${row}`, { row, made: 45_000 + made, ...read(volts / 100, amps) }),
          )
          .sort((a, b) => a.made! - b.made!);
        const sets = storeSets(stock, LIMITS);
        const used = sets.flatMap(({ batteries }) => batteries.map(({ row }) => row));
        expect(new Set(used).size).toBe(used.length);
        for (const { batteries, months, reading, volts } of sets) {
          expect([2, 4]).toContain(batteries.length);
          expect(months).toBeLessThanOrEqual(12);
          expect(reading).toBeLessThanOrEqual(0.1 + 1e-9);
          expect(volts).toBeLessThanOrEqual(0.1 + 1e-9);
        }
      }),
      { seed: 2026, numRuns: 200 },
    );
  });
});
