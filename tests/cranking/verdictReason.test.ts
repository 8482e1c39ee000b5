import { describe, expect, it } from 'vitest';
import type { BatteryTest } from '../../src/cranking/batteryTest.ts';
import { isCloseToLeast, judge } from '../../src/cranking/verdict.ts';
import { reasonOf, verdictReason } from '../../src/cranking/verdictReason.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';

const reason = (test: BatteryTest): string => valueOf(verdictReason(test));

const charged: BatteryTest = { least: 980, volts: 12.8, celsius: 20 };

/** One test for each line, and both ways of the lines that have two. */
const EVERY_LINE: readonly BatteryTest[] = [
  { damage: true, celsius: 20 },
  { volts: 11.7, celsius: -9 },
  { volts: 12.6, celsius: 55 },
  { volts: 13.4, celsius: 20 },
  { reading: 1_150, least: 980, celsius: 20 },
  { reading: 400, least: 980, celsius: 20 },
  { volts: 12.2, celsius: 20 },
  { volts: 12.2, celsius: 20, retest: 1 },
  { volts: 12.2, celsius: 20, retest: 2 },
  charged,
  { ...charged, reading: 1_150 },
  { ...charged, reading: 700, celsius: -5 },
  { ...charged, reading: 700 },
  { ...charged, reading: 700, retest: 1 },
  { ...charged, reading: 950, retest: 1 },
];

describe('verdictReason, its shape', () => {
  it('is one sentence and the next step, with no stop at the end', () => {
    for (const test of EVERY_LINE) {
      const sentences = reason(test).split(/\. (?=[A-Z])/);
      expect(sentences).toHaveLength(2);
      for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z0-9].*[^.]$/);
      expect(reason(test)).not.toMatch(/undefined|NaN|Infinity/);
    }
  });

  it('ends "temperature not given" where that is so, and only there', () => {
    for (const test of EVERY_LINE) {
      expect(reason(test)).not.toContain('temperature not given');
      const { celsius, ...rest } = test;
      if (celsius! > 0 && celsius! <= 50) expect(reason(rest)).toMatch(/; temperature not given$/);
    }
    expect(reason({ volts: 12.2, celsius: 0.1 })).not.toContain('temperature not given');
  });

  it('reads from the same judgement as the verdict', () => {
    for (const test of EVERY_LINE) expect(reasonOf(valueOf(judge(test)))).toBe(reason(test));
  });

  it('is refused where the verdict is', () => {
    expect(refusal(verdictReason({}))[0]).toBe('missing');
    expect(refusal(verdictReason({ ...charged, reading: 9.4 }))[0]).toBe('badInput');
    expect(refusal(verdictReason({ ...charged, volts: 24 }))[0]).toBe('badInput');
  });
});

describe('verdictReason, cautions where someone could be hurt', () => {
  it('damage: no test, charge or jump; face shield, gloves, neutraliser; ships as UN2794', () => {
    const text = reason({ damage: true });
    for (const word of ['Do not test, charge or jump', 'face shield', 'gloves', 'neutraliser', 'UN2794'])
      expect(text).toContain(word);
  });

  it('frost: neither charge nor jump nor test; thaw slowly, look for cracks', () => {
    const text = reason({ volts: 11.7, celsius: -9 });
    for (const word of ['-9 C', '11.70 V', 'Do not charge, jump or test', 'burst', 'thaw it slowly indoors'])
      expect(text).toContain(word);
    expect(text).toContain('look for cracks');
    expect(reason({ volts: 10.2, celsius: -3 })).toContain('freezes from about 0 C');
  });

  it('heat: off the charger, open air, a fault inside', () => {
    const text = reason({ volts: 12.6, celsius: 55 });
    for (const word of ['55 C', 'over 50 C', 'charger off', 'stand clear', 'open air', 'fault inside'])
      expect(text).toContain(word);
  });

  it('charging: ventilation, no flames, 50 C; and frost where no temperature tells', () => {
    for (const test of [
      { volts: 12.2, celsius: 20 },
      { ...charged, reading: 700 },
    ]) {
      for (const word of ['ventilate', 'no flames or sparks (hydrogen)', 'stop at 50 C', 'charger set for'])
        expect(reason(test)).toContain(word);
      expect(reason(test)).not.toContain('frost');
      expect(reason({ ...test, celsius: undefined })).toContain('if it has been in frost, thaw it');
    }
    expect(reason({ volts: 13.4 })).toContain('no flames or sparks');
  });
});

describe('verdictReason, what it tells', () => {
  it('how to charge before the next test', () => {
    expect(reason({ volts: 12.2, celsius: 20 })).toContain(
      'Charge it alone until it takes under 1 A for an hour, rest it 8 h and test again',
    );
    const next = reason({ ...charged, reading: 700 });
    for (const word of [
      'failed once',
      'ull charge',
      '8 h rest',
      'clean posts',
      'read it alone',
      'test again',
    ])
      expect(next).toContain(word);
  });

  it('the charge in steps of 5 %, and never as the 75 % that it has not', () => {
    expect(reason({ volts: 12.2, celsius: 25 })).toContain('a charge of about 35 %');
    expect(reason({ volts: 12.6, celsius: 25 })).toContain('a charge just under 75 %');
    expect(reason({ volts: 11.5, celsius: 25 })).toContain('no charge left');
  });

  it('that a battery does not come up, after which charge', () => {
    expect(reason({ volts: 12.2, celsius: 20, retest: 2 })).toMatch(
      /^After a second full charge .*does not come up/,
    );
    expect(reason({ volts: 10.8, celsius: 20, retest: 1 })).toMatch(/^After a full charge .*under 11\.0 V/);
  });

  it('reading and least apart even when they nearly agree, in their unit', () => {
    expect(reason({ ...charged, reading: 979.99 })).toContain('979.99 A is under the least accepted, 980 A');
    expect(reason({ reading: 9.3, least: 9.31, volts: 12.8, celsius: 5 })).toContain('9.3 V is under');
  });

  it('to read once more within 5 % of the least, and not further off', () => {
    const again = 'read once more, same tester, before acting';
    expect(reason({ ...charged, reading: 931, retest: 1 })).toContain(again);
    expect(reason({ ...charged, reading: 930.9, retest: 1 })).not.toContain(again);
    expect(reason({ ...charged, reading: 931 })).not.toContain(again);
    expect(isCloseToLeast({ reading: 9.12, least: 9.6, unit: 'V' })).toBe(true);
    expect(isCloseToLeast({ reading: 9.11, least: 9.6, unit: 'V' })).toBe(false);
  });
});
