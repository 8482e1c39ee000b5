import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { celsiusFromFahrenheit, DAYS_PER_MONTH } from '../../src/basics/units.ts';
import { acidGravity } from '../../src/electrochemistry/acid.ts';
import { acidsOf } from '../../src/electrochemistry/constructions.ts';
import { chargeLostPerDay, gravityLostPerDay, selfDischarge } from '../../src/storage/selfDischarge.ts';
import type { Construction } from '../../src/service/battery.ts';
import { refusal, SEED, valueOf } from '../electrochemistry/outcomes.ts';

const days = fc.double({ min: 0, max: 3000, noNaN: true });
const celsius = fc.double({ min: -40, max: 50, noNaN: true });
const kind = fc.constantFrom<Construction>('AGM', 'flooded', 'gel', 12.9);

describe('selfDischarge', () => {
  it('by hand: AGM, one month at 25 C 2 %, at 35 C 4 %, at 5 C 0.5 %', () => {
    expect(valueOf(selfDischarge(DAYS_PER_MONTH, 25))).toBeCloseTo(0.02, 12);
    expect(valueOf(selfDischarge(DAYS_PER_MONTH, 35))).toBeCloseTo(0.04, 12);
    expect(valueOf(selfDischarge(DAYS_PER_MONTH, 5))).toBeCloseTo(0.005, 12);
  });

  it('by hand: flooded at 80 F, 30 days of 0.001 in a span of 0.141', () => {
    const { full, empty } = valueOf(acidsOf('flooded'));
    const span = acidGravity(full) - acidGravity(empty);
    expect(span).toBeCloseTo(0.141, 3);
    expect(valueOf(selfDischarge(30, celsiusFromFahrenheit(80), 'flooded'))).toBeCloseTo(0.03 / span, 9);
  });

  it('flooded: midway between 50 and 80 F is the geometric mean, and the ends are held', () => {
    expect(gravityLostPerDay(celsiusFromFahrenheit(65))).toBeCloseTo(Math.sqrt(0.0003 * 0.001), 9);
    expect(gravityLostPerDay(-30)).toBeCloseTo(0.0003, 12);
    expect(gravityLostPerDay(60)).toBeCloseTo(0.0025, 12);
  });

  it('gel and a number lose as AGM', () => {
    expect(selfDischarge(100, 30, 'gel')).toEqual(selfDischarge(100, 30, 'AGM'));
    expect(selfDischarge(100, 30, 12.7)).toEqual(selfDischarge(100, 30, 'AGM'));
  });

  it('runs in a straight line, never above 1 and never less when warmer', () => {
    const property = fc.property(days, celsius, kind, (time, t, construction) => {
      const lost = valueOf(selfDischarge(time, t, construction));
      expect(lost).toBeCloseTo(Math.min(1, time * valueOf(chargeLostPerDay(t, construction))), 12);
      expect(lost >= 0 && lost <= 1).toBe(true);
      expect(valueOf(selfDischarge(time, t + 10, construction))).toBeGreaterThanOrEqual(lost);
    });
    fc.assert(property, { seed: SEED });
  });

  it('refuses days before the charge, other climates and slips', () => {
    expect(refusal(selfDischarge(-1, 25))).toEqual(['outOfRange', 'days is -1; allowed is 0 or more']);
    expect(refusal(selfDischarge(Number.NaN, 25))[0]).toBe('badInput');
    expect(refusal(selfDischarge(10, 77))[1]).toContain('give the unit "F"');
    expect(refusal(selfDischarge(10, Number.NaN))[0]).toBe('badInput');
    expect(refusal(selfDischarge(10, 25, 11))[0]).toBe('outOfRange');
  });
});
