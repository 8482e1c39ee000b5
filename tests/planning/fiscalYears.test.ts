import { describe, expect, it } from 'vitest';
import { dayFromParts, isoDay } from '../../src/basics/calendar.ts';
import { fiscalYears, planMonths } from '../../src/planning/fiscalYears.ts';

const asOf = dayFromParts(2026, 6, 30)!;
const shown = (periods: ReturnType<typeof fiscalYears>) =>
  periods.map(({ label, from, to }) => `${label} ${isoDay(from)} ${isoDay(to)}`);

describe('fiscalYears', () => {
  it('begins with what is left of the year that holds as-of', () => {
    expect(shown(fiscalYears(asOf, 1, 3))).toEqual([
      'FY2026 2026-06-30 2026-12-31',
      'FY2027 2027-01-01 2027-12-31',
      'FY2028 2028-01-01 2028-12-31',
    ]);
  });

  it('is named by the year in which it ends (US government: 1 October)', () => {
    expect(shown(fiscalYears(asOf, 10, 2))).toEqual([
      'FY2026 2026-06-30 2026-09-30',
      'FY2027 2026-10-01 2027-09-30',
    ]);
    expect(shown(fiscalYears(dayFromParts(2026, 10, 1)!, 10, 1))).toEqual(['FY2027 2026-10-01 2027-09-30']);
  });

  it('leaves no gap and no overlap in months from as-of', () => {
    const years = fiscalYears(asOf, 7, 4);
    expect(years[0]!.startMonth).toBe(0);
    for (let i = 1; i < years.length; i += 1)
      expect(years[i]!.startMonth).toBeCloseTo(years[i - 1]!.endMonth, 12);
  });

  it('keeps a year of which nothing is left, for what is due now', () => {
    expect(fiscalYears(asOf, 7, 2)[0]).toMatchObject({ label: 'FY2026', startMonth: 0, endMonth: 0 });
  });
});

describe('planMonths', () => {
  it('starts with the month that has days left and ends with the last day', () => {
    const months = planMonths(asOf, dayFromParts(2026, 9, 30)!);
    expect(shown(months)).toEqual([
      '2026-07 2026-07-01 2026-07-31',
      '2026-08 2026-08-01 2026-08-31',
      '2026-09 2026-09-01 2026-09-30',
    ]);
    expect(months[0]!.startMonth).toBe(0);
  });

  it('begins with the rest of a begun month', () => {
    const [first] = planMonths(dayFromParts(2026, 6, 12)!, dayFromParts(2026, 7, 31)!);
    expect(isoDay(first!.from)).toBe('2026-06-12');
    expect(first!.endMonth).toBeCloseTo(18 / 30.4375, 12);
  });
});
