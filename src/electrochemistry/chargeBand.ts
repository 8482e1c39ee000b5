import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import type { Construction } from '../service/battery.ts';
import { USUAL_CELSIUS } from './restReading.ts';
import { stateOfCharge } from './stateOfCharge.ts';

/** A state of charge with the band it lies in nine times out of ten, all 0 to 1. */
export type ChargeBand = { readonly low: number; readonly best: number; readonly high: number };

/**
 * What makes a charge from a rest voltage uncertain, one sigma, as shares of full charge. Own judgement: a meter good
 * to 10 mV, an acid fill of 0.005 specific gravity, a rest cut short, the shape of the curve, a battery 5 K from the
 * temperature given.
 */
export const CHARGE_BAND_PARTS = {
  meter: 0.01,
  acidFill: 0.03,
  rest: 0.035,
  curve: 0.045,
  temperature: 0.007,
} as const;

/** The parts together, root of the sum of their squares, one sigma. */
export const CHARGE_BAND_SIGMA = 0.066;

/** Standard deviations that hold nine in ten. */
const NINE_IN_TEN = 1.645;

/** Half the width of the band, as a share of full charge: about 0.109. */
export const CHARGE_BAND_HALF_WIDTH = NINE_IN_TEN * CHARGE_BAND_SIGMA;

/**
 * State of charge with a band of nine in ten, from a rested open-circuit voltage and temperature. The half width is the
 * same 0.109 everywhere (own judgement) and the band is held to 0 to 1; it is too narrow for a battery whose own full
 * rest voltage is given as less than 12.5 V, where the same millivolts are more points of charge.
 * @param restVolts voltage after 3 h at rest or more, nothing connected [V], 6 to 16
 * @param celsius battery temperature [C], -40 to 60, default 25
 * @param construction AGM, flooded, gel, or own full rest voltage at 25 C [V], 12.0 to 13.5; default AGM
 * @returns low, best and high state of charge, 0 to 1
 * @problem badInput       as stateOfCharge
 * @problem outOfRange     as stateOfCharge
 * @problem notEnoughData  as stateOfCharge
 * @source bode1977 as stateOfCharge
 * @example andThen(chargeBand(12.615, 25, 'AGM'), (band) => answer(band.low)) // 0.641
 */
export function chargeBand(
  restVolts: number,
  celsius: number = USUAL_CELSIUS,
  construction: Construction = 'AGM',
): Outcome<ChargeBand> {
  return andThen(stateOfCharge(restVolts, celsius, construction), (best) =>
    answer({
      low: Math.max(0, best - CHARGE_BAND_HALF_WIDTH),
      best,
      high: Math.min(1, best + CHARGE_BAND_HALF_WIDTH),
    }),
  );
}
