import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addMonths, dayFromParts } from '../../src/basics/calendar.ts';
import { calendarMonths, monthsInService } from '../../src/service/monthsInService.ts';

const day = (year: number, month: number, date: number): number => dayFromParts(year, month, date)!;
const months = (from: number, to: number, out?: number): number => {
  const outcome = monthsInService(from, to, out);
  if (!outcome.ok) throw new Error(outcome.problem.because);
  return outcome.value;
};

describe('monthsInService', () => {
  it('by hand', () => {
    expect(months(day(2024, 1, 1), day(2024, 2, 1))).toBe(1);
    expect(months(day(2024, 1, 15), day(2026, 1, 15))).toBe(24);
    // 5 whole months, then 14 of the 31 days from 15 July to 15 August
    expect(months(day(2024, 2, 15), day(2024, 7, 29))).toBeCloseTo(5 + 14 / 31, 12);
  });

  it('31 January + 1 month is 28 February, or the 29th of a leap year', () => {
    expect(months(day(2023, 1, 31), day(2023, 2, 28))).toBe(1);
    expect(months(day(2024, 1, 31), day(2024, 2, 29))).toBe(1);
    expect(months(day(2024, 1, 31), day(2024, 2, 28))).toBeCloseTo(28 / 29, 12);
  });

  it('takes out the months that were spent out of the vehicle', () => {
    expect(months(day(2024, 1, 1), day(2025, 1, 1), 5)).toBe(7);
  });

  it('refuses a removal before the installation and more months out than there were', () => {
    expect(monthsInService(100_00 + 40_000, 49_000)).toMatchObject({
      ok: false,
      problem: { because: 'installedLater' },
    });
    expect(monthsInService(day(2024, 1, 1), day(2024, 3, 1), 3)).toMatchObject({
      ok: false,
      problem: { because: 'monthsOutLimits' },
    });
  });

  it('never falls with time and meets every whole month', () => {
    const days = fc.integer({ min: day(1990, 1, 1), max: day(2090, 1, 1) });
    fc.assert(
      fc.property(
        days,
        fc.integer({ min: 0, max: 3000 }),
        fc.integer({ min: 0, max: 600 }),
        (from, more, whole) => {
          expect(calendarMonths(from, from + more)).toBeLessThanOrEqual(
            calendarMonths(from, from + more + 1),
          );
          expect(calendarMonths(from, addMonths(from, whole))).toBe(whole);
        },
      ),
      { seed: 11, numRuns: 500 },
    );
  });

  it('is what counting month by month gives', () => {
    const counted = (from: number, to: number): number => {
      let whole = 0;
      while (addMonths(from, whole + 1) <= to) whole += 1;
      const [begins, ends] = [addMonths(from, whole), addMonths(from, whole + 1)];
      return whole + (to - begins) / (ends - begins);
    };
    const days = fc.integer({ min: day(1990, 1, 1), max: day(2090, 1, 1) });
    fc.assert(
      fc.property(days, fc.integer({ min: 0, max: 1500 }), (from, more) => {
        expect(calendarMonths(from, from + more)).toBeCloseTo(counted(from, from + more), 12);
      }),
      { seed: 12, numRuns: 400 },
    );
  });
});
