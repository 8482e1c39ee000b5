import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CODIFICATION_BUREAUS } from '../../src/label/codificationBureaus.codsp3.ts';
import { stockNumber } from '../../src/label/stockNumber.ts';
import { refusal, sentence, valueOf } from './sayings.ts';

const WRITTEN = '6140-99-000-0123';

describe('stockNumber', () => {
  it.each([
    ...['6140-99-000-0123', '6140990000123', '6140 99 000 0123', ' 6140-990000123 ', 'NSN 6140-99-000-0123'],
    ...['nsn: 6140-99-000-0123', '6140\u201399\u2013000\u20130123', '6140 - 99 - 000 - 0123'],
  ])('writes "%s" 4-2-3-4', (text) => {
    expect(valueOf(stockNumber(text))).toBe(WRITTEN);
  });

  it('takes a number that has all 13 figures', () => {
    expect(valueOf(stockNumber(6_140_990_000_123))).toBe(WRITTEN);
  });

  it('takes a letter in the seventh place, and in no other', () => {
    expect(valueOf(stockNumber('6140-99-a00-0123'))).toBe('6140-99-A00-0123');
    expect(refusal(stockNumber('6140-99-0A0-0123'))).toBe('stockNumberShape');
    expect(refusal(stockNumber('614O-99-000-0123'))).toBe('stockNumberShape');
  });

  it('gives its parts', () => {
    expect(valueOf(stockNumber(WRITTEN, 'class'))).toBe('6140');
    expect(valueOf(stockNumber(WRITTEN, 'country'))).toBe('United Kingdom');
    expect(valueOf(stockNumber(WRITTEN, 'item'))).toBe('99-000-0123');
    expect(valueOf(stockNumber('6140-12-000-0123', 'country'))).toBe('Germany');
    expect(valueOf(stockNumber('6140-01-000-0123', 'country'))).toBe('United States');
  });

  it('has no country for a bureau that is not listed, and still writes the number', () => {
    const outcome = stockNumber('6140-69-000-0123', 'country');
    expect(outcome).toMatchObject({
      ok: false,
      problem: { kind: 'notEnoughData', because: 'bureauUnknown' },
    });
    expect(sentence(outcome)).toContain('bureau 69');
    expect(valueOf(stockNumber('6140-69-000-0123'))).toBe('6140-69-000-0123');
  });

  it('lists each bureau once, by two figures', () => {
    const bureaus = Object.values(CODIFICATION_BUREAUS).flatMap((list) => Object.keys(list));
    expect(new Set(bureaus).size).toBe(bureaus.length);
    expect(bureaus.every((bureau) => /^\d{2}$/.test(bureau))).toBe(true);
    // 74 rows, two of which (United States, Canada) have two bureaus.
    expect(bureaus).toHaveLength(76);
  });

  it.each([
    ['6140-99-000-012', 'stockNumberLength'],
    ['6140-99-000-01234', 'stockNumberLength'],
    ['batteries', 'stockNumberLength'],
    [614_099_000_123, 'stockNumberLength'],
    ['614-099-000-0123', 'stockNumberShape'],
    ['61409-9-000-0123', 'stockNumberShape'],
    ['6140--99-000-0123', 'stockNumberShape'],
    [true, 'stockNumberShape'],
  ])('refuses %j', (text, because) => {
    expect(refusal(stockNumber(text))).toBe(because);
  });

  it('is the same again when read again, in every way of writing', () => {
    const groups = fc.tuple(
      fc.stringMatching(/^\d{4}$/),
      fc.stringMatching(/^\d{2}$/),
      fc.stringMatching(/^[0-9A-Z]\d{2}$/),
      fc.stringMatching(/^\d{4}$/),
    );
    fc.assert(
      fc.property(groups, fc.constantFrom('', '-', ' ', '\u2013', ' - '), (parts, between) => {
        const written = valueOf(stockNumber(parts.join(between)));
        expect(written).toBe(parts.join('-'));
        expect(valueOf(stockNumber(written))).toBe(written);
        expect(`${valueOf(stockNumber(written, 'class'))}-${valueOf(stockNumber(written, 'item'))}`).toBe(
          written,
        );
      }),
      { seed: 32, numRuns: 500 },
    );
  });
});
