import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elementString, gs1CheckDigit } from '../../src/label/elementString.ts';
import { refusal, sentence, valueOf } from './sayings.ts';

const ITEM = '0109521234500018';
const read = (text: string): Record<string, string> =>
  Object.fromEntries(
    valueOf(elementString(text.replaceAll('|', '\x1d'))).map(({ key, value }) => [key, value]),
  );

describe('gs1CheckDigit', () => {
  it('by hand: 3 and 1 in turn from the right, up to the next ten', () => {
    // 1 x 3 + 0 + 0 x 3 + 0 + 5 x 3 + 4 + 3 x 3 + 2 + 1 x 3 + 2 + 5 x 3 + 9 + 0 x 3 = 62
    expect(gs1CheckDigit('0952123450001')).toBe(8);
    expect(gs1CheckDigit('0000000000000')).toBe(0);
  });

  it('catches any one wrong figure', () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^\d{13}$/),
        fc.nat(12),
        fc.integer({ min: 1, max: 9 }),
        (key, at, by) => {
          const other = key.slice(0, at) + ((Number(key[at]) + by) % 10) + key.slice(at + 1);
          expect(gs1CheckDigit(other)).not.toBe(gs1CheckDigit(key));
        },
      ),
      { seed: 42, numRuns: 300 },
    );
  });
});

describe('elementString', () => {
  it('needs no separator behind the keys of a fixed length', () => {
    expect(read(`${ITEM}1124031517270315310200123410L7|21A9`)).toEqual({
      ...{ '01': ITEM.slice(2), '11': '240315', '17': '270315', '3102': '001234', '10': 'L7', '21': 'A9' },
    });
  });

  it('allows a separator behind them too, at the beginning and at the end', () => {
    expect(read(`|${ITEM}|11240315||21A9|`)).toEqual({ '01': ITEM.slice(2), '11': '240315', '21': 'A9' });
  });

  it('reads stock number, origin, asset and own fields', () => {
    expect(read(`${ITEM}70016140990000123|422826|240BX6T-100|91norrfell`)).toMatchObject({
      ...{ '7001': '6140990000123', '422': '826', '240': 'BX6T-100', '91': 'norrfell' },
    });
    expect(read('80030952123450001877')).toEqual({ '8003': '0952123450001877' });
  });

  it.each([
    ['0109521234500019', 'checkDigit'],
    ['010952123450001', 'fieldShape'],
    ['01A9521234500018', 'fieldShape'],
    [`${ITEM}21${'9'.repeat(21)}`, 'fieldShape'],
    [`${ITEM}21`, 'fieldShape'],
    [`${ITEM}21a b`, 'fieldShape'],
    [`${ITEM}7001614099000012`, 'fieldShape'],
    ['2100099', 'aiNeeds'],
    ['10L117', 'aiNeeds'],
    ['11240315', 'aiNeeds'],
    ['0209521234500018', 'aiNeeds'],
    [`${ITEM}250A7`, 'aiNeeds'],
    [`${ITEM}9912|6677`, 'aiUnknown'],
    ['99', 'fieldShape'],
    ['9', 'aiUnknown'],
  ])('refuses %s', (text, because) => {
    expect(refusal(elementString(text.replaceAll('|', '\x1d')))).toBe(because);
  });

  it('says what must stand beside an identifier', () => {
    expect(sentence(elementString('2100099'))).toContain('AI 21 needs 01, 03 or 8006');
  });
});
