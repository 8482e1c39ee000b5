import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  acidFromGravity,
  acidFromMoleFraction,
  acidFromPercent,
  acidFromRestVolts,
  acidGravity,
  acidMoleFraction,
  acidPercent,
  acidRestVolts,
} from '../../src/electrochemistry/acid.ts';
import { cellVoltageBode1977 } from '../../src/electrochemistry/acid.bode1977.ts';
import { temperatureTermHarnedHamer1935 } from '../../src/electrochemistry/acid.harnedHamer1935.ts';
import { acidDensityPerry } from '../../src/electrochemistry/acid.perry.ts';
import { refusal, SEED, valueOf } from './outcomes.ts';

const acid = fc.double({ min: 0.3, max: 11, noNaN: true });
const celsius = fc.double({ min: -40, max: 60, noNaN: true });

describe('acid, by hand', () => {
  it('at 1 mol/kg the logarithm is 0 and the constants 1.628 + 0.294 are all', () => {
    expect(cellVoltageBode1977(1)).toBeCloseTo(1.628 + 0.294, 12);
  });

  it('at 10 mol/kg the logarithm is 1 and all coefficients add', () => {
    expect(cellVoltageBode1977(10)).toBeCloseTo(1.922 + 0.148 + 0.063 + 0.074 + 0.034, 12);
  });

  it('a row of the temperature table stands for itself', () => {
    const [a, b] = [167e-6, 87e-8];
    expect(temperatureTermHarnedHamer1935(5, 35)).toBeCloseTo(a * (35 - 25) + b * (35 * 35 - 25 * 25), 12);
  });

  it('halfway between rows 1 and 2 both columns are halved', () => {
    const [a, b] = [(56.1e-6 + 159e-6) / 2, (108e-8 + 103e-8) / 2];
    expect(temperatureTermHarnedHamer1935(1.5, 0)).toBeCloseTo(a * -25 + b * -625, 12);
  });

  it('outside the temperature table its first and last rows hold', () => {
    expect(temperatureTermHarnedHamer1935(10, 0)).toBe(temperatureTermHarnedHamer1935(7, 0));
    expect(temperatureTermHarnedHamer1935(0.01, 0)).toBe(temperatureTermHarnedHamer1935(0.05, 0));
  });

  it('six cells make the battery', () => {
    expect(acidRestVolts(1, 25)).toBeCloseTo(6 * 1.922, 12);
  });

  it('density is a straight line in kelvin on a row and between rows', () => {
    const [at30, at35] = [1.42185 - 0.000693492 * 293.15, 1.4705 - 0.000718251 * 293.15];
    expect(acidDensityPerry(30, 20)).toBeCloseTo(at30, 12);
    expect(acidDensityPerry(32.5, 20)).toBeCloseTo((at30 + at35) / 2, 12);
    expect(acidDensityPerry(50, 20)).toBeCloseTo(1.61834 - 0.000761493 * 293.15, 12);
  });
});

describe('acid, properties', () => {
  it('the acid comes back from its rest voltage', () => {
    const property = fc.property(acid, celsius, (molality, t) => {
      expect(valueOf(acidFromRestVolts(acidRestVolts(molality, t), t))).toBeCloseTo(molality, 7);
    });
    fc.assert(property, { seed: SEED });
  });

  it('the rest voltage rises with the acid at every temperature', () => {
    const property = fc.property(acid, acid, celsius, (one, other, t) => {
      if (Math.abs(one - other) < 1e-6) return;
      expect(Math.sign(acidRestVolts(one, t) - acidRestVolts(other, t))).toBe(Math.sign(one - other));
    });
    fc.assert(property, { seed: SEED, numRuns: 1000 });
  });

  it('mole fraction, weight and gravity give their acid back', () => {
    const property = fc.property(fc.double({ min: 0.2, max: 9, noNaN: true }), (molality) => {
      expect(acidFromMoleFraction(acidMoleFraction(molality))).toBeCloseTo(molality, 9);
      expect(acidFromPercent(acidPercent(molality))).toBeCloseTo(molality, 9);
      expect(valueOf(acidFromGravity(acidGravity(molality)))).toBeCloseTo(molality, 6);
    });
    fc.assert(property, { seed: SEED });
  });
});

describe('acid, refusals', () => {
  it('says so where no acid has such a voltage or gravity', () => {
    expect(refusal(acidFromRestVolts(5, 25))[0]).toBe('noConvergence');
    expect(refusal(acidFromGravity(2))[0]).toBe('noConvergence');
  });
});
