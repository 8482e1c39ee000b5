import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import { stateOfCharge } from '../../src/electrochemistry/stateOfCharge.ts';
import type { Construction } from '../../src/service/battery.ts';
import { refusal, SEED, valueOf } from './outcomes.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const celsius = fc.double({ min: -40, max: 60, noNaN: true });
const kind = fc.oneof(
  fc.constantFrom<Construction>('AGM', 'flooded', 'gel'),
  fc.double({ min: 12, max: 13.5, noNaN: true }),
);
const volts = fc.double({ min: 11.3, max: 12.6, noNaN: true });

describe('stateOfCharge, by hand', () => {
  it('acid of 1 mol/kg less than empty, acid of 5 mol/kg set between the AGM ends', () => {
    // 5 mol/kg rests at 6 x 2.08961 V; X = 0.0826302; (0.0826302 - 0.0349401) / (0.1062608 - 0.0349401) = 0.66868.
    const l = Math.log10(5);
    const cell = 1.922 + 0.148 * l + 0.063 * l ** 2 + 0.074 * l ** 3 + 0.034 * l ** 4;
    expect(valueOf(stateOfCharge(6 * cell, 25, 'AGM'))).toBeCloseTo(0.66868, 4);
    expect(valueOf(stateOfCharge(6 * 1.922, 25, 'AGM'))).toBe(0);
  });

  it('takes AGM at 25 C where nothing else is said', () => {
    expect(stateOfCharge(12.3)).toEqual(stateOfCharge(12.3, 25, 'AGM'));
  });
});

describe('stateOfCharge, its edges', () => {
  it('answers 1 up to 0.15 V above full, then refuses', () => {
    expect(valueOf(stateOfCharge(12.85))).toBe(1);
    expect(valueOf(stateOfCharge(13))).toBe(1);
    expect(refusal(stateOfCharge(13.01))).toEqual([
      'notEnoughData',
      '13.01 V is a battery on charge, on float or not rested: disconnect it, rest 3 h at least, 8 h better, and read again',
    ]);
    expect(refusal(stateOfCharge(13.4))[1]).toMatch(/^13\.40 V is a battery on charge/);
    expect(refusal(stateOfCharge(13.0001))[1]).toMatch(/^13\.0001 V is a battery on charge/);
  });

  it('measures that 0.15 V from this battery at this temperature', () => {
    expect(valueOf(stateOfCharge(12.94, -30))).toBe(1);
    expect(refusal(stateOfCharge(12.96, -30))[0]).toBe('notEnoughData');
    expect(valueOf(stateOfCharge(12.79, 80 / 3, 'flooded'))).toBe(1);
    expect(refusal(stateOfCharge(12.81, 80 / 3, 'flooded'))[0]).toBe('notEnoughData');
    expect(valueOf(stateOfCharge(13.65, 25, 13.5))).toBe(1);
    expect(refusal(stateOfCharge(12.16, 25, 12))[0]).toBe('notEnoughData');
  });

  it('answers 0 under the empty end down to 11.3 V, then refuses', () => {
    expect(valueOf(stateOfCharge(11.84))).toBe(0);
    expect(valueOf(stateOfCharge(11.3))).toBe(0);
    const [kindOfProblem, text] = refusal(stateOfCharge(11.29));
    expect(kindOfProblem).toBe('notEnoughData');
    expect(text).toContain('deeply discharged or a dead cell');
  });

  it('holds nothing just inside its ends', () => {
    expect(valueOf(stateOfCharge(12.849))).toBeLessThan(1);
    expect(valueOf(stateOfCharge(11.851))).toBeGreaterThan(0);
  });

  it('refuses slips of volts, temperature and construction', () => {
    expect(refusal(stateOfCharge(25.2))[1]).toContain('whole 24 V set');
    expect(refusal(stateOfCharge(126))[0]).toBe('outOfRange');
    expect(refusal(stateOfCharge(Number.NaN))[0]).toBe('badInput');
    expect(refusal(stateOfCharge(12.6, -41))[0]).toBe('outOfRange');
    expect(refusal(stateOfCharge(12.6, 25, 11))[0]).toBe('outOfRange');
  });
});

describe('stateOfCharge, properties', () => {
  it('is the inverse of restVoltage', () => {
    const property = fc.property(share, celsius, kind, (charge, t, construction) => {
      const back = valueOf(stateOfCharge(valueOf(restVoltage(charge, t, construction)), t, construction));
      expect(back).toBeCloseTo(charge, 7);
    });
    fc.assert(property, { seed: SEED, numRuns: 1000 });
  });

  it('never falls as the volts rise, and stays within 0 to 1', () => {
    const property = fc.property(
      volts,
      volts,
      celsius,
      fc.constantFrom<Construction>('AGM', 'flooded', 13),
      (a, b, t, c) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((each) =>
          valueOf(stateOfCharge(each, t, c)),
        );
        expect(low!).toBeLessThanOrEqual(high! + 1e-9);
        expect(low!).toBeGreaterThanOrEqual(0);
        expect(high!).toBeLessThanOrEqual(1);
      },
    );
    fc.assert(property, { seed: SEED, numRuns: 1000 });
  });

  it('the same volts are more charge in a colder battery', () => {
    const between = fc.double({ min: 11.95, max: 12.55, noNaN: true });
    const property = fc.property(between, celsius, celsius, (reading, one, other) => {
      if (Math.abs(one - other) < 1e-3) return;
      const [cold, warm] = [Math.min(one, other), Math.max(one, other)];
      expect(valueOf(stateOfCharge(reading, cold))).toBeGreaterThan(valueOf(stateOfCharge(reading, warm)));
    });
    fc.assert(property, { seed: SEED, numRuns: 1000 });
  });
});
