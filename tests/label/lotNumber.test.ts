import { describe, expect, it } from 'vitest';
import { lotNumber } from '../../src/label/lotNumber.ts';
import { refusal, valueOf } from './sayings.ts';

describe('lotNumber', () => {
  it.each([
    ['0324-117', undefined, '117'],
    ['0324-007', undefined, '007'],
    ['0324 \u2013 a 07', undefined, 'A07'],
    ['0324/11-7', undefined, '11-7'],
    ['0324', undefined, ''],
    [324, undefined, ''],
    ['0117-0324', 'lot-MMyy', '0117'],
    ['0324117', 'MMyylot', '117'],
    ['C4L9', 'AyLlot', '9'],
    ['0324', 'MMyy', ''],
  ])('by hand: %j in %s', (code, layout, lot) => {
    expect(valueOf(lotNumber(code, layout))).toBe(lot);
  });

  it('refuses a code that does not fit, and a layout that is none', () => {
    expect(refusal(lotNumber('117', 'MMyy-lot'))).toBe('codeNotInLayout');
    expect(refusal(lotNumber('0324-117', 'MMyy'))).toBe('codeNotInLayout');
    expect(refusal(lotNumber('0324-117', 'lot'))).toBe('notALayout');
  });
});
