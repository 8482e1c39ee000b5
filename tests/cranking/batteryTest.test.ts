import { describe, expect, it } from 'vitest';
import { compared, damageFrom, nothingGiven, retestFrom } from '../../src/cranking/batteryTest.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';

describe('retestFrom', () => {
  it('takes TRUE and FALSE, 0, 1 and 2, yes and no, and nothing', () => {
    for (const first of [false, 0, 'no', 'NO', 'false', '', '  ', null, undefined])
      expect(valueOf(retestFrom(first))).toBe(0);
    for (const retest of [true, 1, 'yes', ' Yes ', 'TRUE', 'true'])
      expect(valueOf(retestFrom(retest))).toBe(1);
    for (const second of [2, '2']) expect(valueOf(retestFrom(second))).toBe(2);
  });

  it('takes nothing else', () => {
    for (const other of [3, -1, 1.5, Number.NaN, 'second', 'y', 'charged', '2026-03-15']) {
      const [kind, text] = refusal(retestFrom(other));
      expect(kind).toBe('badInput');
      expect(text).toMatch(/^retest is .*allowed are FALSE or 0 \(first test\), TRUE or 1/);
    }
  });
});

describe('damageFrom', () => {
  it('is none for the words that say none, in any case, and for nothing', () => {
    for (const word of [
      'no',
      'none',
      'n',
      'nil',
      'ok',
      'good',
      '-',
      '0',
      'FALSE',
      'n/a',
      'N/A',
      ' OK ',
      'None',
    ])
      expect(damageFrom(word)).toBe(false);
    for (const nothing of [null, undefined, '', '   ', 0, false]) expect(damageFrom(nothing)).toBe(false);
  });

  it('is damage for TRUE, any number but 0 and any other text', () => {
    for (const word of [true, 1, -1, 0.5, 'TRUE', 'yes', 'case cracked', 'none seen', '1', 'x'])
      expect(damageFrom(word)).toBe(true);
  });
});

describe('compared', () => {
  it('finds the unit of both', () => {
    expect(valueOf(compared(900, 980)).unit).toBe('A');
    expect(valueOf(compared(9.4, 9.6)).unit).toBe('V');
    expect(valueOf(compared(15.99, 15.99)).unit).toBe('V');
    expect(valueOf(compared(16, 16)).unit).toBe('A');
  });

  it('gives a reading of 0 the unit of the least', () => {
    expect(valueOf(compared(0, 980)).unit).toBe('A');
    expect(valueOf(compared(0, 9.6)).unit).toBe('V');
  });

  it('refuses two units and a missing least', () => {
    expect(refusal(compared(0.1, 980))[0]).toBe('badInput');
    expect(refusal(compared(900, 9.6))[0]).toBe('badInput');
    expect(refusal(compared(900, undefined))[0]).toBe('missing');
  });
});

describe('nothingGiven', () => {
  it('looks at reading, volts and damage only', () => {
    expect(nothingGiven({ least: 980, celsius: 5, retest: 2, damage: false })).toBe(true);
    expect(nothingGiven({ reading: 0 })).toBe(false);
    expect(nothingGiven({ volts: 12 })).toBe(false);
    expect(nothingGiven({ damage: true })).toBe(false);
  });
});
