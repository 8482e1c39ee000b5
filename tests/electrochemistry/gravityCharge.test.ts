import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { celsiusFromFahrenheit } from '../../src/basics/units.ts';
import { acidGravity, CELSIUS_AT_80_F } from '../../src/electrochemistry/acid.ts';
import { acidsOf } from '../../src/electrochemistry/constructions.ts';
import { gravityAt80F, gravityCharge } from '../../src/electrochemistry/gravityCharge.ts';
import { refusal, SEED, valueOf } from './outcomes.ts';

const at80 = (gravity: number): number => valueOf(gravityCharge(gravity, CELSIUS_AT_80_F));

describe('gravityCharge', () => {
  it('by hand: 1.250 at 110 F is 3 steps warm, so 1.262; at 20 F 6 steps cold, so 1.226', () => {
    expect(gravityAt80F(1.25, celsiusFromFahrenheit(110))).toBeCloseTo(1.262, 9);
    expect(gravityAt80F(1.25, celsiusFromFahrenheit(20))).toBeCloseTo(1.226, 9);
    expect(gravityAt80F(1.25, CELSIUS_AT_80_F)).toBe(1.25);
  });

  it('by hand: 30 % acid (1.2181, X 0.072976) between X 0.0372930 and 0.0908896 is 0.6658', () => {
    expect(at80(1.21806)).toBeCloseTo(0.6658, 3);
  });

  it('answers 1 from 1.265 to 1.300 as printed, and refuses more', () => {
    expect([1.265, 1.28, 1.3].map(at80)).toEqual([1, 1, 1]);
    const [kind, text] = refusal(gravityCharge(1.301, CELSIUS_AT_80_F));
    expect(kind).toBe('notEnoughData');
    expect(text).toContain('1.301 (corrected to 80 F) is over 1.300');
  });

  it('judges the corrected reading, not the raw one', () => {
    expect(refusal(gravityCharge(1.295, celsiusFromFahrenheit(110)))[0]).toBe('notEnoughData');
    expect(valueOf(gravityCharge(1.305, celsiusFromFahrenheit(40)))).toBe(1);
  });

  it('has no step where its two rules meet', () => {
    const full = acidGravity(valueOf(acidsOf('flooded')).full);
    expect(full).toBeLessThan(1.265);
    expect(at80(full - 1e-6)).toBeCloseTo(1, 4);
    expect(at80(full + 1e-6)).toBe(1);
  });

  it('answers 0 for the empty acid and weaker down to 1.030, then refuses', () => {
    expect(at80(1.12)).toBe(0);
    expect(at80(1.03)).toBe(0);
    const [kind, text] = refusal(gravityCharge(1.02, CELSIUS_AT_80_F));
    expect(kind).toBe('notEnoughData');
    expect(text).toContain('nearly water: deeply discharged or a dead cell');
  });

  it('takes 25 C where no temperature is given', () => {
    expect(gravityCharge(1.2)).toEqual(gravityCharge(1.2, 25));
    expect(valueOf(gravityCharge(1.2))).toBeLessThan(at80(1.2));
  });

  it('never falls as the gravity rises, and rises with the temperature of the reading', () => {
    const gravity = fc.double({ min: 1.07, max: 1.26, noNaN: true });
    const property = fc.property(
      gravity,
      gravity,
      fc.double({ min: -20, max: 45, noNaN: true }),
      (a, b, t) => {
        expect(valueOf(gravityCharge(Math.min(a, b), t))).toBeLessThanOrEqual(
          valueOf(gravityCharge(Math.max(a, b), t)),
        );
        expect(valueOf(gravityCharge(a, t))).toBeLessThanOrEqual(valueOf(gravityCharge(a, t + 5)));
      },
    );
    fc.assert(property, { seed: SEED, numRuns: 500 });
  });

  it('refuses 1265, 0.9 and what is no number', () => {
    expect(refusal(gravityCharge(1265))).toEqual([
      'outOfRange',
      'a specific gravity is 1265; allowed is 1.000 to 1.400, written like 1.265 and not 1265',
    ]);
    expect(refusal(gravityCharge(0.9))[0]).toBe('outOfRange');
    expect(refusal(gravityCharge(Number.NaN))[0]).toBe('badInput');
    expect(refusal(gravityCharge(1.2, 80))[0]).toBe('outOfRange');
  });
});
