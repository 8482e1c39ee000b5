import { describe, expect, it } from 'vitest';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { fiscalPeriod, fiscalYearName } from '../../src/service/fiscalPeriod.ts';

const named = (year: number, month: number, first: number, by?: 'year' | 'quarter' | 'month'): string => {
  const outcome = fiscalPeriod(dayFromParts(year, month, 1)!, first, by);
  if (!outcome.ok) throw new Error(outcome.problem.because);
  return outcome.value;
};

describe('fiscalPeriod', () => {
  it('is the calendar year where it begins in January', () => {
    expect([named(2026, 1, 1), named(2026, 12, 1)]).toEqual(['FY2026', 'FY2026']);
  });

  it('is named by the year in which it ends', () => {
    expect([named(2025, 9, 10), named(2025, 10, 10)]).toEqual(['FY2025', 'FY2026']);
    expect([named(2026, 6, 7), named(2026, 7, 7)]).toEqual(['FY2026', 'FY2027']);
  });

  it('counts quarters and months from its beginning', () => {
    expect(named(2026, 10, 10, 'quarter')).toBe('FY2027 Q1');
    expect(named(2027, 9, 10, 'quarter')).toBe('FY2027 Q4');
    expect(named(2027, 2, 10, 'month')).toBe('FY2027 M05');
  });

  it('is named by the year in which it begins, or by both, where asked', () => {
    const day = dayFromParts(2026, 11, 1)!;
    const names = (['endYear', 'startYear', 'both'] as const).map((label) =>
      fiscalPeriod(day, 10, 'quarter', label),
    );
    expect(names).toMatchObject([{ value: 'FY2027 Q1' }, { value: 'FY2026 Q1' }, { value: 'FY2026/27 Q1' }]);
    expect([fiscalYearName(2100, 7, 'both'), fiscalYearName(2026, 1, 'both')]).toEqual([
      'FY2099/00',
      'FY2026',
    ]);
    expect(fiscalYearName(2026, 1, 'startYear')).toBe('FY2026');
  });

  it('refuses a first month that is none', () => {
    for (const first of [0, 13, 1.5]) {
      expect(fiscalPeriod(46_000, first)).toMatchObject({
        ok: false,
        problem: { because: 'wholeFirstMonth' },
      });
    }
  });
});
