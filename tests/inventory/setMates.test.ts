import { describe, expect, it } from 'vitest';
import { setMates } from '../../src/inventory/setMates.ts';
import type { Battery } from '../../src/service/battery.ts';
import { battery } from '../planning/inventedFleet.ts';
import { day } from './sheets.ts';

const inSet = (row: number, more: Partial<Battery> = {}): Battery =>
  battery(row, { vehicle: 'NF-1', set: 'A', site: 'North', ...more });

const made = { made: day('2024-03-01') };
const one = inSet(1, { ...made, ageMonths: 20, verdict: 'Condemned' });
const mate = inSet(2, { ...made, ageMonths: 25, readings: { testedOn: day('2026-05-01'), reading: 1000 } });

describe('the set of a battery', () => {
  it('is the others in service in the same set of the same vehicle, the oldest first', () => {
    const others = [
      inSet(3, { ageMonths: 30 }),
      inSet(4, { set: 'B' }),
      inSet(5, { vehicle: 'NF-2' }),
      inSet(6, { whereabouts: 'removed' }),
    ];
    const { name, mates } = setMates(one, [one, mate, ...others]);
    expect(name).toBe('set A of NF-1');
    expect(mates.map(({ row }) => row)).toEqual([3, 2]);
    expect(mates[1]).toMatchObject({
      made: day('2024-03-01'),
      months: 25,
      testedOn: day('2026-05-01'),
      reading: 1000,
    });
  });

  it('is its vehicle where the sheet knows no sets', () => {
    const [a, b] = [inSet(1, { set: '' }), inSet(2, { set: '' })];
    expect(setMates(a, [a, b])).toMatchObject({ name: 'vehicle NF-1', mates: [{ row: 2 }], advice: [] });
  });

  it('is none for a battery on a shelf, or without a set', () => {
    const shelf = inSet(7, { whereabouts: 'inStock' });
    expect(setMates(shelf, [shelf, one])).toEqual({ name: '', mates: [], advice: [] });
    const alone = inSet(8, { set: '' });
    expect(setMates(alone, [alone, one]).name).toBe('');
  });

  it('is renewed whole, or gets a used one of like age and reading, when one is condemned', () => {
    const { advice } = setMates(one, [one, mate]);
    expect(advice).toEqual([
      'Renew the whole set and test its mate for stock: a new one among old ones is worn down by them.',
      'Or fit a used one of like age and reading (made 2023-03 to 2025-03, reading 900 to 1100 A). Never fit a flooded one to it.',
    ]);
    expect(setMates(one, [one, mate], 'Serviceable').advice).toEqual([]);
  });

  it('asks for one construction where it is mixed, but not where AGM was only taken', () => {
    const flooded = inSet(3, { construction: 'flooded' });
    expect(setMates(one, [one, flooded], 'Serviceable').advice[0]).toMatch(/^This set mixes AGM and flooded/);
    const taken = inSet(3, { construction: 'flooded', constructionAssumed: true });
    expect(setMates(one, [one, taken], 'Serviceable').advice).toEqual([]);
    expect(setMates({ ...one, construction: 12.9 }, [one, mate], 'Serviceable').advice).toEqual([]);
  });

  it('says when a condemned one has no mate on record', () => {
    expect(setMates(one, [one]).advice).toEqual(['No mate of it is on record: replace it by itself.']);
  });
});
