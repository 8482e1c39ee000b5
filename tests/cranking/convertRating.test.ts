import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convertRating } from '../../src/cranking/convertRating.ts';
import { refusal, SEED, valueOf } from '../electrochemistry/outcomes.ts';

const rounded = (value: number, from: string, to: string): number[] => {
  const { low, high } = valueOf(convertRating(value, from, to));
  return [low, high].map((amps) => Number(amps.toFixed(2)));
};

describe('convertRating, by hand', () => {
  it('DIN to SAE and back: 1.5 x DIN + 40 and 1.7 x DIN', () => {
    expect(rounded(400, 'DIN', 'SAE')).toEqual([640, 680]);
    // (680 - 40) / 1.5 = 426.67 and 680 / 1.7 = 400.
    expect(rounded(680, 'SAE', 'DIN')).toEqual([400, 426.67]);
  });

  it('sorts the two rules where they change places, at 200 A', () => {
    expect(rounded(200, 'DIN', 'SAE')).toEqual([340, 340]);
    expect(rounded(100, 'DIN', 'SAE')).toEqual([170, 190]);
  });

  it('SAE to EN, DIN to IEC, SAE to CA and back', () => {
    expect(rounded(1_000, 'SAE', 'EN')).toEqual([920, 1_000]);
    expect(rounded(920, 'EN', 'SAE')).toEqual([920, 1_000]);
    expect(rounded(500, 'DIN', 'IEC')).toEqual([550, 600]);
    expect(rounded(600, 'IEC', 'DIN')).toEqual([500, 545.45]);
    expect(rounded(1_000, 'SAE', 'CA')).toEqual([1_200, 1_300]);
    expect(rounded(1_300, 'CA', 'SAE')).toEqual([1_000, 1_083.33]);
  });

  it('takes any case and blanks around', () => {
    expect(rounded(400, ' din', 'Sae ')).toEqual([640, 680]);
  });

  it('says where its rules are from memory', () => {
    expect(convertRating(400, 'SAE', 'EN')).toMatchObject({
      notes: [expect.stringContaining('from memory')],
    });
    expect(convertRating(400, 'DIN', 'SAE')).not.toHaveProperty('notes');
  });
});

describe('convertRating, properties', () => {
  const pairs = ['DIN-SAE', 'SAE-DIN', 'SAE-EN', 'EN-SAE', 'DIN-IEC', 'IEC-DIN', 'SAE-CA', 'CA-SAE'];
  it('there and back holds the rating that it began with', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: 200, max: 2_000, noNaN: true }),
        (pair, amps) => {
          const [from, to] = pair.split('-') as [string, string];
          const there = valueOf(convertRating(amps, from, to));
          expect(there.low).toBeLessThanOrEqual(there.high);
          expect(valueOf(convertRating(there.low, to, from)).low).toBeLessThanOrEqual(amps + 1e-6);
          expect(valueOf(convertRating(there.high, to, from)).high).toBeGreaterThanOrEqual(amps - 1e-6);
        },
      ),
      { seed: SEED },
    );
  });
});

describe('convertRating, the trap of judging on a converted rating', () => {
  it('answers two figures that lie 6 % apart at 400 A DIN', () => {
    const { low, high } = valueOf(convertRating(400, 'DIN', 'SAE'));
    expect(high / low - 1).toBeGreaterThan(0.06);
  });

  it('is out of reach of everything that judges', () => {
    for (const file of ['batteryTest', 'verdict', 'verdictReason', 'conditionCode'])
      expect(readFileSync(`src/cranking/${file}.ts`, 'utf8')).not.toContain('convertRating');
  });
});

describe('convertRating, refusals', () => {
  it('knows no other pair', () => {
    const others = [
      ['DIN', 'EN'],
      ['SAE', 'IEC'],
      ['SAE', 'SAE'],
      ['EN', 'CA'],
      ['watts', 'SAE'],
    ] as const;
    for (const [from, to] of others) {
      const [kind, text] = refusal(convertRating(400, from, to));
      expect(kind).toBe('notEnoughData');
      expect(text).toContain(`"${from} to ${to}"`);
      expect(text).toContain('known, both ways: DIN-SAE, SAE-EN, DIN-IEC, SAE-CA');
    }
  });

  it('says that a JIS rank is no number of amperes', () => {
    for (const [from, to] of [
      ['JIS', 'SAE'],
      ['SAE', 'jis'],
    ] as const) {
      const [kind, text] = refusal(convertRating(400, from, to));
      expect(kind).toBe('notEnoughData');
      expect(text).toContain('a JIS performance rank is no number of amperes');
    }
  });

  it('refuses what is no rating', () => {
    expect(refusal(convertRating(49.9, 'SAE', 'EN'))).toEqual([
      'outOfRange',
      'value is 49.9; allowed is 50 to 5000 A',
    ]);
    expect(refusal(convertRating(Number.POSITIVE_INFINITY, 'SAE', 'EN'))[0]).toBe('badInput');
  });
});
