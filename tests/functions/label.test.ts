import { describe, expect, it } from 'vitest';
import { labelScan, lotNumber, makerCode, manufactureDate, stockNumber } from '../../functions/label.ts';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { call, errorOf } from './call.ts';

const march = dayFromParts(2024, 3, 1);
const REF = { error: '#REF!', message: '' };
const SYMBOL = '[)>{RS}06{GS}17V9ZZ98{GS}1PBX6T-100{GS}S0001234{RS}{EOT}';

describe('CRANK.MANUFACTUREDATE', () => {
  it('takes one cell, a column, blanks, an error and a bad row', () => {
    const column = [['0324-117'], [324], [null], [0], [' '], [REF], ['1324']];
    const answers = call(manufactureDate, column, '2026-03-15', null).flat();
    expect(answers.slice(0, 6)).toEqual([march, march, '', '', '', REF]);
    expect(errorOf(answers[6]).message).toContain('month is 13');
    expect(call(manufactureDate, 'C4', 46_096, 'Ay')).toEqual([[march]]);
  });

  it('takes as-of as a column too', () => {
    expect(call(manufactureDate, [['C4'], ['C4']], [['2026-03-15'], ['2036-03-15']], 'Ay')).toEqual([
      [march],
      [dayFromParts(2034, 3, 1)],
    ]);
  });

  it('needs as-of, as a date that reads one way', () => {
    for (const asOf of [null, '', 0])
      expect(errorOf(call(manufactureDate, '0324', asOf, null)[0]![0]).message).toBe('asOf is missing');
    expect(errorOf(call(manufactureDate, '0324', '03/04/2026', null)[0]![0]).message).toContain('two ways');
    expect(errorOf(call(manufactureDate, '0324', '2026-03-15', 'MMYY')[0]![0]).message).toContain('a12');
  });

  it('takes 200,000 codes of as many lots in one go', () => {
    const codes = Array.from({ length: 200_000 }, (_, row) => [
      `${String(1 + (row % 12)).padStart(2, '0')}${10 + (row % 16)}-${row}`,
    ]);
    const answers = call(manufactureDate, codes, '2026-03-15', null);
    expect(answers).toHaveLength(200_000);
    expect(answers.every(([cell]) => typeof cell === 'number')).toBe(true);
  });
});

describe('CRANK.LOTNUMBER', () => {
  it('answers text, and empty text where there is no lot', () => {
    expect(call(lotNumber, [['0324-007'], ['0324'], [null]], null)).toEqual([['007'], [''], ['']]);
    expect(call(lotNumber, '007-0324', 'lot-MMyy')).toEqual([['007']]);
  });
});

describe('CRANK.STOCKNUMBER', () => {
  it('answers the number or a part', () => {
    expect(call(stockNumber, [['6140990000123'], [null]], null)).toEqual([['6140-99-000-0123'], ['']]);
    expect(call(stockNumber, '6140990000123', 'Country')).toEqual([['United Kingdom']]);
    expect(errorOf(call(stockNumber, '6140690000123', 'country')[0]![0]).error).toBe('#N/A');
    expect(errorOf(call(stockNumber, '6140690000123', 'niin')[0]![0]).message).toContain('"item"');
  });
});

describe('CRANK.MAKERCODE', () => {
  it('answers the code or what is wrong', () => {
    const answers = call(makerCode, [['9zz98'], [null], [1e234]]).flat();
    expect(answers.slice(0, 2)).toEqual(['9ZZ98', '']);
    expect(errorOf(answers[2])).toMatchObject({ error: '#VALUE!' });
  });
});

describe('CRANK.LABELSCAN', () => {
  it('answers a table with its header', () => {
    expect(call(labelScan, SYMBOL, null)).toEqual([
      ['field', 'value'],
      ['serial', '0001234'],
      ['part', 'BX6T-100'],
      ['maker', '9ZZ98'],
      ['uii', 'D9ZZ98BX6T-1000001234'],
      ['read as', 'ISO/IEC 15434 format 06'],
    ]);
    expect(call(labelScan, [[SYMBOL]], '')).toHaveLength(6);
  });

  it('answers one field down a column, empty where a label lacks it', () => {
    const column = [[SYMBOL], ['0324-117'], [null], ['[)>'], [REF]];
    const lots = call(labelScan, column, 'LOT').flat();
    expect(lots.slice(0, 3)).toEqual(['', '117', '']);
    expect(errorOf(lots[3]).message).toContain('header');
    expect(lots[4]).toEqual(REF);
    expect(call(labelScan, column.slice(1, 2), 'made')).toEqual([[march]]);
  });

  it('refuses a column without a field, a field that is none, and a bad symbol', () => {
    expect(errorOf(call(labelScan, [[SYMBOL], [SYMBOL]], null)[0]![0]).message).toContain('given 2');
    expect(errorOf(call(labelScan, SYMBOL, 'colour')[0]![0]).message).toContain('"uii"');
    expect(errorOf(call(labelScan, '[)>', null)[0]![0]).message).toContain('header');
  });

  it('answers nothing for nothing, and an error for an error', () => {
    expect(call(labelScan, null, null)).toEqual([['']]);
    expect(call(labelScan, [[REF]], null)).toEqual([[REF]]);
  });
});
