import { describe, expect, it } from 'vitest';
import { fiscalPeriod, monthsInService, monthsOnShelf } from '../../functions/service.ts';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { call, errorOf } from './call.ts';

describe('CRANK.MONTHSINSERVICE', () => {
  it('one cell, a column, blanks and a bad row', () => {
    expect(call(monthsInService, '2024-01-31', '2026-06-30', null)).toEqual([[29 - 1 + 30 / 30]]);
    const column = [['2024-01-01'], [null], [0], ['01/02/2024'], [dayFromParts(2025, 6, 30)!]];
    const answers = call(monthsInService, column, '2026-06-30', null);
    expect(answers.map(([cell]) => (typeof cell === 'object' ? errorOf(cell).error : cell))).toEqual([
      expect.closeTo(29 + 29 / 30, 9),
      '',
      '',
      '#VALUE!',
      12,
    ]);
  });

  it('says in words what is wrong', () => {
    const [[cell]] = call(monthsInService, '2026-07-01', '2026-06-30', null) as [[unknown]];
    expect(errorOf(cell as never).message).toContain('2026-07-01');
    expect(errorOf(call(monthsInService, '2024-07-01', '', null)[0]![0]).message).toContain('until');
  });

  it('passes an error through in its own row', () => {
    const error = { error: '#REF!', message: '' };
    expect(call(monthsInService, [[error], ['2025-06-30']], '2026-06-30', null)).toEqual([[error], [12]]);
  });
});

describe('CRANK.MONTHSONSHELF', () => {
  it('counts from manufacture', () => {
    expect(call(monthsOnShelf, '2025-11-01', [['2026-06-01'], ['2026-11-01']])).toEqual([[7], [12]]);
  });
});

describe('CRANK.FISCALPERIOD', () => {
  it('takes its single arguments once for a column', () => {
    expect(call(fiscalPeriod, [['2026-09-30'], ['2026-10-01']], 10, 'QUARTER')).toEqual([
      ['FY2026 Q4'],
      ['FY2027 Q1'],
    ]);
    expect(call(fiscalPeriod, '2026-09-30', null, null)).toEqual([['FY2026']]);
  });

  it('refuses a length that is none', () => {
    expect(errorOf(call(fiscalPeriod, '2026-09-30', 1, 'week')[0]![0]).message).toContain('"quarter"');
  });
});
