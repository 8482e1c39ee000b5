import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isUsMakerCode, makerCode } from '../../src/label/makerCode.ts';
import { refusal, sentence, valueOf } from './sayings.ts';

describe('makerCode', () => {
  it('takes both shapes, in upper case and without blanks around', () => {
    expect(valueOf(makerCode(' 9zz98 '))).toBe('9ZZ98');
    expect(valueOf(makerCode('K9ZZ9'))).toBe('K9ZZ9');
    expect(valueOf(makerCode('9zz9g'))).toBe('9ZZ9G');
    expect(valueOf(makerCode('A9Z9B'))).toBe('A9Z9B');
    expect(valueOf(makerCode('S99I9'))).toBe('S99I9');
    expect(valueOf(makerCode('01234'))).toBe('01234');
    expect(valueOf(makerCode(27_340))).toBe('27340');
  });

  it.each([
    ['9ZO98', 'makerCodeUs'],
    ['9ZI98', 'makerCodeUs'],
    ['1I234', 'makerCodeUs'],
    ['K9O99', 'makerCodeO'],
    ['9ZZ9O', 'makerCodeO'],
    ['OZZ99', 'makerCodeO'],
    ['I9Z9B', 'makerCodeEnds'],
    ['L9Z9B', 'makerCodeEnds'],
    ['S9Z9B', 'makerCodeEnds'],
    ['9ZZ8', 'makerCodeLength'],
    ['9ZZ988', 'makerCodeLength'],
    [1234, 'makerCodeLength'],
    ['9Z-98', 'makerCodeText'],
    ['9Z 98', 'makerCodeText'],
    ['9ZÄ98', 'makerCodeText'],
    [true, 'makerCodeText'],
  ])('refuses %j', (code, because) => {
    expect(refusal(makerCode(code))).toBe(because);
  });

  it('explains what a sheet has made of a code that looks like a power of ten', () => {
    for (const given of [1e234, '1E+234', '1.00E+234', '1,00E+234', 1e23, 1.5]) {
      expect(sentence(makerCode(given)), String(given)).toContain('1E234');
    }
    // The code itself, kept as text, is a good one.
    expect(valueOf(makerCode('1E234'))).toBe('1E234');
  });

  it('answers nothing but five characters of the code itself', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[0-9A-Za-z]{4,6}$/), (text) => {
        const outcome = makerCode(text);
        if (!outcome.ok) return;
        expect(outcome.value).toBe(text.toUpperCase());
        expect(outcome.value).toMatch(/^[0-9A-NP-Z]{5}$/);
        expect(valueOf(makerCode(outcome.value))).toBe(outcome.value);
        if (/^\d.*\d$/.test(outcome.value)) expect(isUsMakerCode(outcome.value)).toBe(true);
      }),
      { seed: 31, numRuns: 2000 },
    );
  });
});
