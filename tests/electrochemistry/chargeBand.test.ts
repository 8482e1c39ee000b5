import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CHARGE_BAND_HALF_WIDTH,
  CHARGE_BAND_PARTS,
  CHARGE_BAND_SIGMA,
  chargeBand,
} from '../../src/electrochemistry/chargeBand.ts';
import { stateOfCharge } from '../../src/electrochemistry/stateOfCharge.ts';
import { refusal, SEED, valueOf } from './outcomes.ts';

describe('chargeBand', () => {
  it('the parts together are the sigma', () => {
    const squares = Object.values(CHARGE_BAND_PARTS).reduce((sum, part) => sum + part ** 2, 0);
    expect(Math.sqrt(squares)).toBeCloseTo(CHARGE_BAND_SIGMA, 3);
    expect(CHARGE_BAND_HALF_WIDTH).toBeCloseTo(1.645 * 0.066, 12);
  });

  it('lies evenly about the best, away from the ends', () => {
    const { low, best, high } = valueOf(chargeBand(12.37, 10, 'AGM'));
    expect(best).toBe(valueOf(stateOfCharge(12.37, 10, 'AGM')));
    expect(best - low).toBeCloseTo(0.10857, 6);
    expect(high - best).toBeCloseTo(0.10857, 6);
  });

  it('is held to 0 to 1', () => {
    expect(valueOf(chargeBand(12.95))).toEqual({ low: 1 - CHARGE_BAND_HALF_WIDTH, best: 1, high: 1 });
    expect(valueOf(chargeBand(11.5))).toEqual({ low: 0, best: 0, high: CHARGE_BAND_HALF_WIDTH });
  });

  it('is in order for any reading', () => {
    const property = fc.property(fc.double({ min: 11.3, max: 12.7, noNaN: true }), (volts) => {
      const { low, best, high } = valueOf(chargeBand(volts, 25, 'flooded'));
      expect(low >= 0 && low <= best && best <= high && high <= 1).toBe(true);
    });
    fc.assert(property, { seed: SEED });
  });

  it('refuses as stateOfCharge does', () => {
    expect(refusal(chargeBand(13.4))).toEqual(refusal(stateOfCharge(13.4)));
    expect(refusal(chargeBand(11))).toEqual(refusal(stateOfCharge(11)));
    expect(refusal(chargeBand(25))).toEqual(refusal(stateOfCharge(25)));
    expect(refusal(chargeBand(12.5, 99))).toEqual(refusal(stateOfCharge(12.5, 99)));
  });
});
