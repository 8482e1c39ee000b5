import { describe, expect, it } from 'vitest';
import { codeMeanings } from '../../src/inventory/codeMeaning.ts';
import { AS_OF } from './sheets.ts';

describe('what codes mean in a layout', () => {
  it('is shown by one code where one reads differently in each', () => {
    expect(codeMeanings(['A5-117', 'J5-3'], ['Ay-lot', 'a12y-lot'], AS_OF)).toEqual([
      'J5-3 is September 2025',
      'J5-3 is October 2025',
    ]);
  });

  it.each([
    ['A5-117', 'Ay-lot', 'A5-117 is January 2025'],
    ['25015-3', 'yyooo-lot', '25015-3 is 15 January 2025'],
    ['20250115', 'yyyyMMdd-lot', '20250115 is 15 January 2025'],
    [2403, 'kkWW-lot', '2403 is the week from 15 January 2024'],
  ])('%s as %s: %s', (code, layout, meaning) => {
    expect(codeMeanings([code], [layout], AS_OF)).toEqual([meaning]);
  });

  it('is nothing where no code fits', () => {
    expect(codeMeanings(['A5-117'], ['Ay-lot', 'MMyy-lot'], AS_OF)).toEqual(['A5-117 is January 2025', '']);
    expect(codeMeanings([], ['MMyy-lot'], AS_OF)).toEqual(['']);
  });
});
