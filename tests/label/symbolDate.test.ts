import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { momentOfDay } from '../../src/basics/calendar.ts';
import type { SymbolDateLayout } from '../../src/label/symbolDate.ts';
import { symbolDate } from '../../src/label/symbolDate.ts';
import { on, refusal, valueOf } from './sayings.ts';

const DAYS: readonly SymbolDateLayout[] = [
  'yyMMdd',
  'ddMMyy',
  'MMddyy',
  'yyooo',
  'yyyyMMdd',
  'ddMMyyyy',
  'yyMMd0',
];

describe('symbolDate', () => {
  it('gives back every day from 1970 to 2069, in every layout that names a day', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: on(1970, 1, 1), max: on(2069, 12, 31) }),
        fc.constantFrom(...DAYS),
        (day, layout) => {
          const written = momentOfDay(day).toFormat(layout.replace('d0', 'dd'));
          expect(valueOf(symbolDate(written, layout, 'date'))).toEqual({ day, to: 'day' });
        },
      ),
      { seed: 43, numRuns: 600 },
    );
  });

  it('gives the Monday of a week', () => {
    fc.assert(
      fc.property(fc.integer({ min: on(1971, 1, 1), max: on(2069, 12, 1) }), (day) => {
        const moment = momentOfDay(day);
        const monday = day - (moment.weekday - 1);
        expect(valueOf(symbolDate(moment.toFormat('kkWW'), 'kkWW', 'date'))).toEqual({
          day: monday,
          to: 'week',
        });
        expect(valueOf(symbolDate(moment.toFormat('kkkkWW'), 'kkkkWW', 'date')).day).toBe(monday);
      }),
      { seed: 44, numRuns: 300 },
    );
  });

  it('takes the day 00 for the month, in GS1 only', () => {
    expect(valueOf(symbolDate('240300', 'yyMMd0', 'made'))).toEqual({ day: on(2024, 3, 1), to: 'month' });
    expect(refusal(symbolDate('240300', 'yyMMdd', 'made'))).toBe('symbolDate');
  });

  it('refuses what is no date, too short, or in letters', () => {
    expect(refusal(symbolDate('240230', 'yyMMdd', 'made'))).toBe('symbolDate');
    expect(refusal(symbolDate('241330', 'yyMMdd', 'made'))).toBe('codeMonth');
    expect(refusal(symbolDate('24033', 'yyMMdd', 'made'))).toBe('symbolDate');
    expect(refusal(symbolDate('24O330', 'yyMMdd', 'made'))).toBe('symbolDate');
    expect(refusal(symbolDate('21010101', 'yyyyMMdd', 'made'))).toBe('symbolDate');
  });
});
