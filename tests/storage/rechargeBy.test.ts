import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addMonths, dayFromParts, isoDay } from '../../src/basics/calendar.ts';
import { rechargeBy } from '../../src/storage/rechargeBy.ts';
import { selfDischarge } from '../../src/storage/selfDischarge.ts';
import type { Construction } from '../../src/service/battery.ts';
import { refusal, SEED, valueOf } from '../electrochemistry/outcomes.ts';

const day = (year: number, month: number, date: number): number => dayFromParts(year, month, date)!;
const due = (...given: Parameters<typeof rechargeBy>): string => isoDay(valueOf(rechargeBy(...given)));

describe('rechargeBy', () => {
  it('by hand: AGM at 25 C would take 304 days, so its six months come first', () => {
    expect(due(day(2026, 1, 15), 25)).toBe('2026-07-15');
    expect(due(day(2026, 1, 15), 25, 'AGM', 12)).toBe('2026-11-15');
  });

  it('by hand: AGM at 40 C loses 2 % x 2.83 a month, 20 % in 107.6 days', () => {
    expect(due(day(2026, 1, 1), 40)).toBe(isoDay(day(2026, 1, 1) + 107));
  });

  it('flooded: 28 days at 80 F, three months in the cold', () => {
    expect(due(day(2026, 1, 1), 80 / 3, 'flooded')).toBe('2026-01-29');
    expect(due(day(2026, 1, 1), 0, 'flooded')).toBe('2026-04-01');
  });

  it('a missing day of the month is its last', () => {
    expect(due(day(2026, 8, 31), 10)).toBe('2027-02-28');
    expect(due(day(2027, 8, 31), 10)).toBe('2028-02-29');
  });

  it('is on or before both limits, and a day later would be past one of them', () => {
    const charged = fc.integer({ min: 40_000, max: 60_000 });
    const celsius = fc.double({ min: -20, max: 45, noNaN: true });
    const kind = fc.constantFrom<Construction>('AGM', 'flooded', 13);
    const property = fc.property(
      charged,
      celsius,
      kind,
      fc.integer({ min: 1, max: 24 }),
      (from, t, c, months) => {
        const by = valueOf(rechargeBy(from, t, c, months));
        const lost = (until: number): number => valueOf(selfDischarge(until - from, t, c));
        const last = addMonths(from, months);
        expect(Number.isInteger(by) && by >= from && by <= last).toBe(true);
        expect(lost(by)).toBeLessThanOrEqual(0.2 + 1e-9);
        expect(by === last || lost(by + 1) > 0.2).toBe(true);
      },
    );
    fc.assert(property, { seed: SEED, numRuns: 500 });
  });

  it.each([0, 61, -3])('refuses %d months', (months) => {
    expect(refusal(rechargeBy(46_023, 20, 'AGM', months))).toEqual([
      'outOfRange',
      `mostMonths is ${months}; allowed is 1 to 60`,
    ]);
  });

  it('refuses part months, other climates and constructions', () => {
    expect(refusal(rechargeBy(46_023, 20, 'AGM', 1.5))).toEqual([
      'badInput',
      'mostMonths is 1.5; allowed are whole months, 1 to 60',
    ]);
    expect(refusal(rechargeBy(46_023, 75))[0]).toBe('outOfRange');
    expect(refusal(rechargeBy(46_023, Number.NaN))[0]).toBe('badInput');
    expect(refusal(rechargeBy(46_023, 20, 14))[0]).toBe('outOfRange');
  });
});
