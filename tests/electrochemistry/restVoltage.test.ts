import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import type { Construction } from '../../src/service/battery.ts';
import { refusal, SEED, valueOf } from './outcomes.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const celsius = fc.double({ min: -40, max: 60, noNaN: true });
const kind = fc.oneof(
  fc.constantFrom<Construction>('AGM', 'flooded', 'gel'),
  fc.double({ min: 12, max: 13.5, noNaN: true }),
);

describe('restVoltage', () => {
  it('by hand: half charge between 10 mol/kg (13.446 V) and the AGM empty end', () => {
    // X = 10 Mw / (1 + 10 Mw) = 0.1526522 full, 0.0349401 empty, 0.0937961 half; m = X / ((1 - X) Mw) = 5.745.
    const l = Math.log10(0.0937961 / ((1 - 0.0937961) * 0.0180153));
    const cell = 1.922 + 0.148 * l + 0.063 * l ** 2 + 0.074 * l ** 3 + 0.034 * l ** 4;
    expect(valueOf(restVoltage(0.5, 25, 13.446))).toBeCloseTo(6 * cell, 4);
  });

  it('takes AGM at 25 C where nothing else is said', () => {
    expect(restVoltage(1)).toEqual(restVoltage(1, 25, 'AGM'));
    expect(valueOf(restVoltage(1))).toBeCloseTo(12.85, 9);
  });

  it('rises with charge', () => {
    const property = fc.property(share, share, celsius, kind, (one, other, t, construction) => {
      if (Math.abs(one - other) < 1e-6) return;
      const rise = valueOf(restVoltage(one, t, construction)) - valueOf(restVoltage(other, t, construction));
      expect(Math.sign(rise)).toBe(Math.sign(one - other));
    });
    fc.assert(property, { seed: SEED, numRuns: 1000 });
  });

  it('rises with temperature, by 0.4 to 2.2 mV a kelvin between -40 and 60 C', () => {
    const property = fc.property(
      share,
      fc.double({ min: -40, max: 59, noNaN: true }),
      kind,
      (c, t, construction) => {
        const perKelvin =
          valueOf(restVoltage(c, t + 1, construction)) - valueOf(restVoltage(c, t, construction));
        expect(perKelvin).toBeGreaterThan(0.0004);
        expect(perKelvin).toBeLessThan(0.0022);
      },
    );
    fc.assert(property, { seed: SEED, numRuns: 1000 });
  });

  it.each([-0.01, 1.01, 75])('refuses a charge of %d', (charge) => {
    expect(refusal(restVoltage(charge))).toEqual(['outOfRange', `charge is ${charge}; allowed is 0 to 1`]);
  });

  it('refuses what is no number, another climate and another construction', () => {
    expect(refusal(restVoltage(Number.NaN))[0]).toBe('badInput');
    expect(refusal(restVoltage(0.5, Number.NaN))[0]).toBe('badInput');
    expect(refusal(restVoltage(0.5, 61))[0]).toBe('outOfRange');
    expect(refusal(restVoltage(0.5, 25, 14))[0]).toBe('outOfRange');
  });
});
