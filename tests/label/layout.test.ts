import { describe, expect, it } from 'vitest';
import { compileLayout, DEFAULT_LAYOUT } from '../../src/label/layout.ts';
import { refusal, sentence, valueOf } from './sayings.ts';
import { LAYOUTS } from './writtenCodes.ts';

describe('compileLayout', () => {
  it('reads the pieces from the left, the longest first', () => {
    expect(valueOf(compileLayout('yyyyMMdd')).pieces).toEqual(['yyyy', 'MM', 'dd']);
    expect(valueOf(compileLayout('a12yy-lot')).pieces).toEqual(['a12', 'yy', 'lot']);
    expect(valueOf(compileLayout('Ay')).pieces).toEqual(['A', 'y']);
    expect(valueOf(compileLayout('kkWW')).calendar).toBe('week');
    expect(valueOf(compileLayout('oooyy')).calendar).toBe('ordinal');
    expect(valueOf(compileLayout(DEFAULT_LAYOUT)).calendar).toBe('month');
  });

  it('counts the digits that a code without its lot has', () => {
    const digits = (text: string): number => valueOf(compileLayout(text)).digits;
    expect([digits('MMyy-lot'), digits('Ay'), digits('yyyyMMdd'), digits('1MMyy')]).toEqual([4, 1, 8, 5]);
  });

  it('has an example for each of its own layouts', () => {
    for (const [text] of LAYOUTS) {
      const layout = valueOf(compileLayout(text));
      expect(layout.pattern.test(layout.example), text).toBe(true);
    }
  });

  it.each([
    ['', 'nothing'],
    ['lot', 'no date'],
    ['MMYY-lot', 'capital Y is no piece'],
    ['MMyyyyy', 'two years'],
    ['MM', 'no year'],
    ['yy', 'no month'],
    ['yydd', 'a day without a month'],
    ['yyWW', 'a week of a calendar year'],
    ['kkMM', 'a month of a week year'],
    ['yyoooMM', 'two ways to name the day'],
    ['AMMyy', 'two months'],
    ['lotMMyy-lot', 'two lots'],
    [`MMyy-${'x'.repeat(40)}`, 'too long'],
  ])('refuses "%s": %s', (text) => {
    expect(refusal(compileLayout(text))).toBe('notALayout');
  });

  it('says which pieces there are', () => {
    expect(sentence(compileLayout('MMYY'))).toContain('yyyy yy y MM dd ooo kk WW A a12 lot');
  });

  it('takes characters that mean something in a pattern for themselves', () => {
    const layout = valueOf(compileLayout('(MM.yy)+lot'));
    expect(layout.pattern.test('(03.24)+117')).toBe(true);
    expect(layout.pattern.test('(03x24)+117')).toBe(false);
  });
});
