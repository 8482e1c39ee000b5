import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileLayout } from '../../src/label/layout.ts';
import { readCode } from '../../src/label/readCode.ts';
import { AS_OF, on, refusal, valueOf } from './sayings.ts';
import { dayToldBy, dayWithin, LAYOUTS, lots, writtenCode } from './writtenCodes.ts';

const read = (code: unknown, layout: string, asOf = AS_OF) =>
  readCode(code, valueOf(compileLayout(layout)), asOf);

describe('readCode', () => {
  it('tells the day, the lot and whether a zero was put back', () => {
    expect(valueOf(read('0324-017', 'MMyy-lot'))).toEqual({
      ...{ day: on(2024, 3, 1), lot: '017', zeroAdded: false },
    });
    expect(valueOf(read(324, 'MMyy-lot'))).toEqual({ day: on(2024, 3, 1), lot: '', zeroAdded: true });
    expect(valueOf(read(1124, 'MMyy-lot'))).toEqual({ day: on(2024, 11, 1), lot: '', zeroAdded: false });
  });

  it.each(LAYOUTS)('gives back what %s wrote', (layout, reach) => {
    fc.assert(
      fc.property(dayWithin(reach), lots, (day, lot) => {
        const { day: told, lot: toldLot } = valueOf(read(writtenCode(layout, day, lot), layout));
        expect(told).toBe(dayToldBy(layout, day));
        expect(toldLot).toBe(layout.includes('lot') ? lot : '');
      }),
      { seed: 21, numRuns: 150 },
    );
  });

  it('takes blanks, small letters, an en dash, a slash or a blank for the dash', () => {
    const dashes = fc.constantFrom('-', '\u2013', '\u2010', '\u2011', '/', ' ', ' - ', ' \u2013', '/ ');
    const blanks = fc.constantFrom('', ' ', '\u00a0', '  ');
    fc.assert(
      fc.property(dayWithin(9000), lots, dashes, blanks, blanks, (day, lot, dash, within, around) => {
        const [month, year] = [writtenCode('MM', day, ''), writtenCode('yy', day, '')];
        const code = `${around}${month}${within}${year}${dash}${lot.toLowerCase()}${around}`;
        expect(valueOf(read(code, 'MMyy-lot')), code).toEqual(
          valueOf(read(`${month}${year}-${lot}`, 'MMyy-lot')),
        );
      }),
      { seed: 22, numRuns: 300 },
    );
  });

  it('puts one zero before a number, never before a text, and never two', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 25 }), (month, year) => {
        const number = month * 100 + year;
        const text = `0${number}`;
        expect(valueOf(read(number, 'MMyy-lot')).day).toBe(valueOf(read(text, 'MMyy-lot')).day);
        expect(refusal(read(String(number), 'MMyy-lot'))).toBe('codeNotInLayout');
        expect(refusal(read(number, 'yyyyMM'))).toBe('codeNotInLayout');
      }),
      { seed: 23, numRuns: 100 },
    );
    expect(refusal(read(24, 'MMyy-lot'))).toBe('codeNotInLayout');
  });

  it('never tells a two-digit year after as-of + 31 days or over 30 years back, and tells the latest', () => {
    const codes = fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 99 }));
    fc.assert(
      fc.property(
        codes,
        fc.integer({ min: on(2005, 1, 1), max: on(2098, 12, 31) }),
        ([month, year], asOf) => {
          const code = String(month).padStart(2, '0') + String(year).padStart(2, '0');
          const outcome = read(code, 'MMyy', asOf);
          if (!outcome.ok) {
            expect(outcome.problem.because).toBe('codeTooOld');
            return;
          }
          expect(outcome.value.day).toBeLessThanOrEqual(asOf + 31);
          expect(outcome.value.day).toBeGreaterThan(asOf - 30.01 * 365.25);
          expect(outcome.value.day + 36_524).toBeGreaterThan(asOf + 31);
        },
      ),
      { seed: 24, numRuns: 500 },
    );
  });

  it.each([
    ['1324-117', 'MMyy-lot', 'codeMonth'],
    ['0024', 'MMyy-lot', 'codeMonth'],
    ['I4', 'Ay', 'codeLetter'],
    ['M4', 'a12y', 'codeLetter'],
    ['N4', 'Ay', 'codeLetter'],
    ['240230', 'yyMMdd', 'codeNoSuchDay'],
    ['230229', 'yyMMdd', 'codeNoSuchDay'],
    ['240300', 'yyMMdd', 'codeNoSuchDay'],
    ['24000', 'yyooo', 'codeNoSuchDay'],
    ['23366', 'yyooo', 'codeNoSuchDay'],
    ['24367', 'yyooo', 'codeNoSuchDay'],
    ['2453', 'kkWW', 'codeNoSuchDay'],
    ['2400', 'kkWW', 'codeNoSuchDay'],
    ['5366', 'yooo', 'codeNoSuchDay'],
    ['0328', 'MMyy-lot', 'codeTooOld'],
    ['20260501', 'yyyyMMdd', 'codeOutside'],
    ['19690101', 'yyyyMMdd', 'codeOutside'],
    ['0324-', 'MMyy-lot', 'codeNotInLayout'],
    ['0324117', 'MMyy-lot', 'codeNotInLayout'],
    ['0324--117', 'MMyy-lot', 'codeNotInLayout'],
    ['0324\u2014117', 'MMyy-lot', 'codeNotInLayout'],
    ['324-117', 'MMyy-lot', 'codeNotInLayout'],
    ['', 'MMyy-lot', 'codeNotInLayout'],
    [45352, 'MMyy-lot', 'codeNotInLayout'],
    [3.24, 'MMyy-lot', 'notACode'],
    [-324, 'MMyy-lot', 'notACode'],
    [1e21, 'MMyy-lot', 'notACode'],
    [true, 'MMyy-lot', 'notACode'],
    [null, 'MMyy-lot', 'notACode'],
    ['0324-'.padEnd(61, '1'), 'MMyy-lot', 'notACode'],
  ])('refuses %j in %s', (code, layout, because) => {
    expect(refusal(read(code, layout))).toBe(because);
  });

  it('reads the week 53 and the day 366 of years that have them', () => {
    expect(valueOf(read('2053', 'kkWW')).day).toBe(on(2020, 12, 28));
    expect(valueOf(read('24366', 'yyooo')).day).toBe(on(2024, 12, 31));
    // 2026 has no day 366; the latest year with the digit 6 that has one is 2016.
    expect(valueOf(read('6366', 'yooo')).day).toBe(on(2016, 12, 31));
  });

  it('takes the year of a week that begins in the year before', () => {
    expect(valueOf(read('2501', 'kkWW')).day).toBe(on(2024, 12, 30));
  });
});
