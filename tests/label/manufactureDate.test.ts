import { describe, expect, it } from 'vitest';
import { manufactureDate } from '../../src/label/manufactureDate.ts';
import { AS_OF, on, refusal, sentence, valueOf } from './sayings.ts';

describe('manufactureDate', () => {
  it.each([
    ['0324-117', undefined, on(2024, 3, 1)],
    ['0324', undefined, on(2024, 3, 1)],
    ['2403', 'yyMM', on(2024, 3, 1)],
    ['24060', 'yyooo', on(2024, 2, 29)],
    ['2410', 'kkWW', on(2024, 3, 4)],
    ['20240315', 'yyyyMMdd', on(2024, 3, 15)],
    ['c4', 'Ay', on(2024, 3, 1)],
    [324, undefined, on(2024, 3, 1)],
  ])('by hand: %j in %s', (code, layout, day) => {
    expect(valueOf(manufactureDate(code, AS_OF, layout))).toBe(day);
  });

  it('allows 31 days ahead of as-of, and not one more', () => {
    expect(valueOf(manufactureDate('260415', AS_OF, 'yyMMdd'))).toBe(AS_OF + 31);
    expect(refusal(manufactureDate('260416', AS_OF, 'yyMMdd'))).toBe('codeTooOld');
    expect(valueOf(manufactureDate('0426', AS_OF))).toBe(on(2026, 4, 1));
    expect(refusal(manufactureDate('0526', AS_OF))).toBe('codeTooOld');
  });

  it('allows 30 years back, and not a day more', () => {
    expect(valueOf(manufactureDate('960315', AS_OF, 'yyMMdd'))).toBe(on(1996, 3, 15));
    expect(refusal(manufactureDate('960314', AS_OF, 'yyMMdd'))).toBe('codeTooOld');
  });

  it('says which two years there are', () => {
    expect(sentence(manufactureDate('0328', AS_OF))).toContain(
      '2028-03 is after as-of, 1928-03 is 98 years old',
    );
    expect(sentence(manufactureDate('28060', AS_OF, 'yyooo'))).toContain(
      'day 060 of 2028 is after as-of, day 060 of 1928 is 98 years old',
    );
  });

  it('takes a one-digit year for the latest, however old', () => {
    expect(valueOf(manufactureDate('C6', AS_OF, 'Ay'))).toBe(on(2026, 3, 1));
    expect(valueOf(manufactureDate('E6', AS_OF, 'Ay'))).toBe(on(2016, 5, 1));
    expect(valueOf(manufactureDate('C7', AS_OF, 'Ay'))).toBe(on(2017, 3, 1));
  });

  it('moves on with as-of: the same code is another year ten or a hundred years later', () => {
    expect(valueOf(manufactureDate('C4', on(2033, 6, 1), 'Ay'))).toBe(on(2024, 3, 1));
    expect(valueOf(manufactureDate('C4', on(2034, 6, 1), 'Ay'))).toBe(on(2034, 3, 1));
    expect(valueOf(manufactureDate('0399', on(2005, 6, 1)))).toBe(on(1999, 3, 1));
    expect(valueOf(manufactureDate('0399', on(2099, 6, 1)))).toBe(on(2099, 3, 1));
  });

  it('refuses a layout that is none', () => {
    expect(refusal(manufactureDate('0324', AS_OF, 'month year'))).toBe('notALayout');
  });

  it('never tries a second layout: 1324 is no year 13, month 24 and no week either', () => {
    expect(refusal(manufactureDate('1324', AS_OF))).toBe('codeMonth');
    expect(refusal(manufactureDate('2403', AS_OF))).toBe('codeMonth');
  });
});
