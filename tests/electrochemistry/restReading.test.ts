import { describe, expect, it } from 'vitest';
import { batteryCelsius, batteryVolts } from '../../src/electrochemistry/restReading.ts';
import { refusal, valueOf } from './outcomes.ts';

describe('restReading', () => {
  it.each([6, 12.6, 16])('%d V can be one battery', (volts) =>
    expect(valueOf(batteryVolts(volts))).toBe(volts),
  );

  it.each([5.99, 16.01, 17.9, 32.1, 0, -12.6, 126])('%d V can not', (volts) => {
    expect(refusal(batteryVolts(volts))).toEqual(['outOfRange', `volts is ${volts}; allowed is 6 to 16 V`]);
  });

  it.each([18, 25.4, 32])('%d V is a whole set', (volts) => {
    const [kind, text] = refusal(batteryVolts(volts));
    expect(kind).toBe('badInput');
    expect(text).toContain('a whole 24 V set: measure each battery');
  });

  it('refuses what is no number', () => {
    expect(refusal(batteryVolts(Number.NaN))[0]).toBe('badInput');
    expect(refusal(batteryCelsius(Number.POSITIVE_INFINITY))[0]).toBe('badInput');
  });

  it('takes -40 to 60 C and guesses Fahrenheit aloud', () => {
    expect(valueOf(batteryCelsius(-40))).toBe(-40);
    expect(valueOf(batteryCelsius(60))).toBe(60);
    expect(refusal(batteryCelsius(-40.1))[0]).toBe('outOfRange');
    expect(refusal(batteryCelsius(77))).toEqual([
      'outOfRange',
      'temperature is 77 C; allowed is -40 to 60 C; for degrees Fahrenheit give the unit "F"',
    ]);
  });
});
