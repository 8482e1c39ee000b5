import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { celsiusFromFahrenheit } from '../../src/basics/units.ts';
import { loadTestFloor } from '../../src/cranking/loadTestFloor.ts';
import { refusal, SEED, valueOf } from '../electrochemistry/outcomes.ts';

const atFahrenheit = (degrees: number): number => valueOf(loadTestFloor(celsiusFromFahrenheit(degrees)));
const celsius = fc.double({ min: -18, max: 60, noNaN: true });

describe('loadTestFloor, by hand', () => {
  it('stands on the printed rows, which are in Fahrenheit', () => {
    expect([0, 10, 20, 30, 40, 50, 60, 70].map(atFahrenheit)).toEqual(
      [8.5, 8.7, 8.9, 9.1, 9.3, 9.4, 9.5, 9.6].map((volts) => expect.closeTo(volts, 9)),
    );
  });

  it('goes straight between them', () => {
    expect(atFahrenheit(45)).toBeCloseTo(9.35, 9);
    // 5 C is 41 F, a tenth of the way from 40 (9.3 V) to 50 F (9.4 V).
    expect(valueOf(loadTestFloor(5))).toBeCloseTo(9.31, 9);
    expect(atFahrenheit(15)).toBeCloseTo(8.8, 9);
  });

  it('stays at 9.6 V above the last row', () => {
    expect([70.1, 95, 140].map(atFahrenheit)).toEqual([9.6, 9.6, 9.6]);
  });

  it('takes -18 C for the row of 0 F, as the table prints it', () => {
    expect(valueOf(loadTestFloor(-18))).toBe(8.5);
    expect(valueOf(loadTestFloor(-17.9))).toBe(8.5);
    expect(atFahrenheit(1)).toBeCloseTo(8.52, 9);
  });
});

describe('loadTestFloor, properties', () => {
  it('never falls as it gets warmer and stays within the table', () => {
    fc.assert(
      fc.property(celsius, celsius, (one, other) => {
        const [cold, warm] = [Math.min(one, other), Math.max(one, other)];
        expect(valueOf(loadTestFloor(warm))).toBeGreaterThanOrEqual(valueOf(loadTestFloor(cold)) - 1e-12);
        expect(valueOf(loadTestFloor(cold))).toBeGreaterThanOrEqual(8.5);
        expect(valueOf(loadTestFloor(warm))).toBeLessThanOrEqual(9.6);
      }),
      { seed: SEED },
    );
  });
});

describe('loadTestFloor, refusals', () => {
  it('asks for a warmer battery below -18 C', () => {
    for (const degrees of [-18.1, -40]) {
      const [kind, text] = refusal(loadTestFloor(degrees));
      expect(kind).toBe('notEnoughData');
      expect(text).toContain(`temperature is ${degrees} C`);
      expect(text).toContain('warm the battery');
    }
  });

  it('refuses what is no battery temperature', () => {
    expect(refusal(loadTestFloor(-41))[0]).toBe('outOfRange');
    expect(refusal(loadTestFloor(61))[0]).toBe('outOfRange');
    expect(refusal(loadTestFloor(Number.NaN))[0]).toBe('badInput');
  });
});
