import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addMonths, dayFromParts, isoDay } from '../../src/basics/calendar.ts';
import { orderBy } from '../../src/planning/orderBy.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';

const day = (year: number, month: number, of: number) => dayFromParts(year, month, of)!;

describe('orderBy', () => {
  it('goes back by calendar months, lead time and margin together', () => {
    expect(isoDay(valueOf(orderBy(day(2026, 10, 1), 4)))).toBe('2026-06-01');
    expect(isoDay(valueOf(orderBy(day(2026, 10, 1), 4, 1)))).toBe('2026-05-01');
  });

  it('takes the last day of a month that has no such day', () => {
    expect(isoDay(valueOf(orderBy(day(2027, 3, 31), 1)))).toBe('2027-02-28');
  });

  it('counts part of a month in days, rounded up to the earlier date', () => {
    // Half a month is 15.2 days: 16 days before 1 September.
    expect(isoDay(valueOf(orderBy(day(2026, 10, 1), 1.5)))).toBe('2026-08-16');
    expect(isoDay(valueOf(orderBy(day(2026, 10, 1), 0.5, 0.5)))).toBe('2026-09-01');
  });

  it('is the day of need without lead time, and never later with more', () => {
    const months = fc.double({ min: 0, max: 60, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 40_000, max: 60_000 }), months, months, (needed, lead, more) => {
        expect(valueOf(orderBy(needed, 0))).toBe(needed);
        const date = valueOf(orderBy(needed, lead));
        expect(date).toBeLessThanOrEqual(addMonths(needed, -Math.floor(lead)));
        expect(valueOf(orderBy(needed, lead + more))).toBeLessThanOrEqual(date + 3);
      }),
      { seed: 10, numRuns: 200 },
    );
  });

  it('refuses a negative lead time and one of more than ten years', () => {
    expect(refusal(orderBy(46_000, -1))).toEqual(['outOfRange', 'leadMonths is -1; allowed is 0 to 120']);
    expect(refusal(orderBy(46_000, 2, 121))[1]).toContain('safetyMonths is 121');
  });
});
