import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';

/** Volts that a 12 V battery can show at its posts; anything else is a slip of pen, meter or column. */
const LEAST_VOLTS = 6;
const MOST_VOLTS = 16;

/** What two batteries in series show: a reading of a whole 24 V set. */
const WHOLE_SET_VOLTS = [18, 32] as const;

/** Battery temperatures for which voltages are answered [C]: fitted from 0 to 60, extrapolated below 0. */
export const COLDEST_CELSIUS = -40;
export const WARMEST_CELSIUS = 60;

/** The temperature that is taken where none is given [C]. */
export const USUAL_CELSIUS = 25;

/** So far above its full rest voltage a battery may still carry charge at the plates' surface [V]. Own judgement. */
export const SURFACE_CHARGE_VOLTS = 0.15;

/** Under this a battery is deeply discharged or has a dead cell [V]. Common practice. */
export const DEAD_CELL_VOLTS = 11.3;

/**
 * A battery voltage that can be one: the reading itself where it lies within 6 to 16 V.
 * @param volts voltage at the posts of a 12 V battery [V], 6 to 16
 * @returns the same [V]
 * @problem badInput    when it is no number, or is the voltage of a whole 24 V set (18 to 32 V)
 * @problem outOfRange  when it is outside 6 to 16 V
 * @example batteryVolts(12.6) // 12.6
 */
export function batteryVolts(volts: number): Outcome<number> {
  if (!Number.isFinite(volts)) return problem('badInput', 'notANumber', 'volts', volts);
  if (volts >= LEAST_VOLTS && volts <= MOST_VOLTS) return answer(volts);
  if (volts >= WHOLE_SET_VOLTS[0] && volts <= WHOLE_SET_VOLTS[1])
    return problem('badInput', 'wholeSet', 'volts', volts);
  return problem('outOfRange', 'outOfLimits', 'volts', volts, { limits: [LEAST_VOLTS, `${MOST_VOLTS} V`] });
}

/**
 * A battery temperature for which voltages are answered: the temperature itself where it lies within -40 to 60 C.
 * @param celsius battery temperature [C], -40 to 60
 * @returns the same [C]
 * @problem badInput    when it is no number
 * @problem outOfRange  when it is outside -40 to 60 C
 * @example batteryCelsius(-18) // -18
 */
export function batteryCelsius(celsius: number): Outcome<number> {
  if (!Number.isFinite(celsius)) return problem('badInput', 'notANumber', 'temperature', celsius);
  if (celsius >= COLDEST_CELSIUS && celsius <= WARMEST_CELSIUS) return answer(celsius);
  return problem('outOfRange', 'temperatureLimits', 'temperature', Number(celsius.toFixed(1)), {
    limits: [COLDEST_CELSIUS, WARMEST_CELSIUS],
  });
}
