import { describe, expect, it } from 'vitest';
import { labelScan } from '../../src/label/labelScan.ts';
import { lotNumber } from '../../src/label/lotNumber.ts';
import { makerCode } from '../../src/label/makerCode.ts';
import { manufactureDate } from '../../src/label/manufactureDate.ts';
import { stockNumber } from '../../src/label/stockNumber.ts';
import { AS_OF, on, refusal, sentence, valueOf } from './sayings.ts';

// What sheets do to identifiers that were not kept as text.
describe('trap: spreadsheet damage', () => {
  it('0324 turned to the number 324 gets its zero back; the text 324 stays refused', () => {
    expect(valueOf(manufactureDate(324, AS_OF))).toBe(on(2024, 3, 1));
    expect(refusal(manufactureDate('324', AS_OF))).toBe('codeNotInLayout');
  });

  it('a code turned to a date (03-24, a serial number of days) is refused, not read', () => {
    expect(refusal(manufactureDate(45_352, AS_OF))).toBe('codeNotInLayout');
  });

  it('a stock number turned to 6.14E+12 is refused with what to do; its 13 figures in a number are read', () => {
    for (const given of ['6.14E+12', '6,14099E+12', 6.14e12, 6.14099e12, 6.14e128]) {
      expect(refusal(stockNumber(given)), String(given)).toBe('stockNumberRounded');
      expect(sentence(stockNumber(given))).toContain('as text');
    }
    expect(valueOf(stockNumber(6_140_990_000_123))).toBe('6140-99-000-0123');
    // A letter E in the seventh place is no power of ten.
    expect(valueOf(stockNumber('614099E000123'))).toBe('6140-99-E00-0123');
  });

  it('a maker code 1E234 turned to 1E+234 is refused with what it was like', () => {
    expect(sentence(makerCode(1e234))).toContain('1E234');
    expect(sentence(makerCode('1.00E+234'))).toContain('1E234');
  });

  it('a maker code whose zero was eaten is refused, never filled up', () => {
    expect(sentence(makerCode(1234))).toContain('leading zero');
  });

  it('zeros of serials and lots that are text stay', () => {
    expect(valueOf(labelScan('000777')).serial).toBe('000777');
    expect(valueOf(lotNumber('0324-007'))).toBe('007');
  });

  it('a dash turned to an en dash is read, to an em dash refused', () => {
    expect(valueOf(lotNumber('0324\u2013117'))).toBe('117');
    expect(refusal(lotNumber('0324\u2014117'))).toBe('codeNotInLayout');
  });
});
