import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fahrenheitFromCelsius } from '../../src/basics/units.ts';
import { acidGravity } from '../../src/electrochemistry/acid.ts';
import { acidsOf } from '../../src/electrochemistry/constructions.ts';
import { acidFreezesAt, freezingPoint } from '../../src/electrochemistry/freezingPoint.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import { refusal, SEED, valueOf } from './outcomes.ts';

const LAST_ROW = ((-90 - 32) * 5) / 9;

describe('freezingPoint', () => {
  it('by hand: 1.110 is a fifth of the way from 1.100 (19 F) to 1.150 (5 F), so 16.2 F', () => {
    expect(fahrenheitFromCelsius(acidFreezesAt(1.11))).toBeCloseTo(16.2, 6);
  });

  it('by hand: 20 % acid rests at 11.9906 V and weighs 1.13914, 19 F less 0.7828 of 14 F', () => {
    expect(fahrenheitFromCelsius(valueOf(freezingPoint(11.9906, 25)))).toBeCloseTo(19 - 0.7828 * 14, 1);
  });

  it('holds its last row for stronger acid', () => {
    expect(acidFreezesAt(1.28)).toBeCloseTo(LAST_ROW, 9);
    expect(acidFreezesAt(1.3)).toBeCloseTo(LAST_ROW, 9);
    expect(valueOf(freezingPoint(13))).toBeCloseTo(LAST_ROW, 9);
  });

  it('is that of the acid, so of the charge, whatever the temperature of the reading', () => {
    const acids = valueOf(acidsOf('flooded'));
    for (const celsius of [-30, 0, 25, 50]) {
      const volts = valueOf(restVoltage(0, celsius, 'flooded'));
      expect(valueOf(freezingPoint(volts, celsius))).toBeCloseTo(acidFreezesAt(acidGravity(acids.empty)), 6);
    }
  });

  it('falls as the volts rise and rises with the temperature of the reading', () => {
    const volts = fc.double({ min: 11.3, max: 12.7, noNaN: true });
    const celsius = fc.double({ min: -40, max: 50, noNaN: true });
    const property = fc.property(volts, volts, celsius, (a, b, t) => {
      const [weak, strong] = [Math.min(a, b), Math.max(a, b)].map((each) => valueOf(freezingPoint(each, t)));
      expect(weak!).toBeGreaterThanOrEqual(strong! - 1e-9);
      if (a < 11.6) return;
      expect(valueOf(freezingPoint(a, t + 10))).toBeGreaterThanOrEqual(valueOf(freezingPoint(a, t)) - 1e-9);
    });
    fc.assert(property, { seed: SEED, numRuns: 500 });
  });

  it('stays within the table', () => {
    const property = fc.property(
      fc.double({ min: 11.3, max: 13, noNaN: true }),
      fc.double({ min: -40, max: 60, noNaN: true }),
      (volts, t) => {
        const point = valueOf(freezingPoint(volts, t));
        expect(point >= LAST_ROW - 1e-9 && point < 0).toBe(true);
      },
    );
    fc.assert(property, { seed: SEED });
  });

  it('refuses water, a battery not rested, and slips', () => {
    const [kind, text] = refusal(freezingPoint(11.29));
    expect(kind).toBe('notEnoughData');
    expect(text).toContain('as good as water: keep it above 0 C');
    expect(refusal(freezingPoint(13.01))[1]).toContain('on charge, on float or not rested');
    expect(refusal(freezingPoint(13.01))[0]).toBe('notEnoughData');
    expect(refusal(freezingPoint(24.8))[0]).toBe('badInput');
    expect(refusal(freezingPoint(3))[0]).toBe('outOfRange');
    expect(refusal(freezingPoint(12, 61))[0]).toBe('outOfRange');
  });
});
