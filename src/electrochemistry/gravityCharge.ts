import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { acidFromGravity, acidMoleFraction, CELSIUS_AT_80_F } from './acid.ts';
import { acidsOf } from './constructions.ts';
import { batteryCelsius, USUAL_CELSIUS } from './restReading.ts';

/** Specific gravities that a hydrometer in battery acid can show. */
const LEAST_GRAVITY = 1;
const MOST_GRAVITY = 1.4;

/** Gravity at 80 F from which a flooded battery counts as full, and over which the reading or the acid is wrong. */
const FULL_GRAVITY = 1.265;
const STRONGEST_GRAVITY = 1.3;

/** Under this the acid is nearly water; about the acid of a battery that rests at 11.3 V. */
const DEAD_CELL_GRAVITY = 1.03;

/** The hydrometer rule: 0.004 for each 10 F off 80 F. */
const CORRECTION_PER_STEP = 0.004;
const STEP_KELVIN = 50 / 9;

/**
 * Specific gravity at 80 F from a hydrometer reading at another temperature: 0.004 more for each 10 F (5.6 K) above
 * 80 F (26.7 C), as much less below. Right for charged acid; for discharged acid it is about 0.0007 a step too much.
 * @param gravity hydrometer reading, 1.000 to 1.400
 * @param celsius temperature of the acid [C]
 * @returns specific gravity at 80 F
 * @source tm5-4210-230-14 rule of 0.004 per 10 F
 * @example gravityAt80F(1.25, celsiusFromFahrenheit(20)) // 1.226
 */
export function gravityAt80F(gravity: number, celsius: number): number {
  return gravity + (CORRECTION_PER_STEP * (celsius - CELSIUS_AT_80_F)) / STEP_KELVIN;
}

/**
 * A hydrometer reading that can be one: the reading itself where it lies within 1.000 to 1.400.
 * @param gravity specific gravity, 1.000 to 1.400
 * @returns the same
 * @problem badInput    when it is no number
 * @problem outOfRange  when it is outside 1.000 to 1.400, such as 1265 written without its point
 * @example hydrometerGravity(1.265) // 1.265
 */
export function hydrometerGravity(gravity: number): Outcome<number> {
  if (!Number.isFinite(gravity)) return problem('badInput', 'notANumber', 'gravity', gravity);
  if (gravity >= LEAST_GRAVITY && gravity <= MOST_GRAVITY) return answer(gravity);
  return problem('outOfRange', 'gravityLimits', 'gravity', gravity, { limits: ['1.000', '1.400'] });
}

/**
 * State of charge of a flooded battery from a hydrometer reading and the acid's temperature. The reading is corrected to
 * 80 F; from 1.265 to 1.300 the answer is 1; below that the acid's mole fraction is set between the full and the empty
 * acid of a flooded battery (1.262 and 1.120), held to 0 to 1 down to 1.030.
 * @param gravity hydrometer reading, 1.000 to 1.400
 * @param celsius temperature of the acid [C], -40 to 60, default 25
 * @returns state of charge, 0 to 1
 * @problem badInput       when gravity or temperature are no numbers
 * @problem outOfRange     when the gravity is outside 1.000 to 1.400 or the temperature outside -40 to 60 C
 * @problem notEnoughData  when the corrected gravity is over 1.300 (not a battery's full acid) or under 1.030 (nearly
 * water)
 * @source tm5-4210-230-14 correction to 80 F
 * @source perry acid from specific gravity (1 to 50 %)
 * @source bciCredited full and empty flooded battery at 80 F
 * @example gravityCharge(1.19, celsiusFromFahrenheit(80)) // 0.46
 */
export function gravityCharge(gravity: number, celsius: number = USUAL_CELSIUS): Outcome<number> {
  return andThen(hydrometerGravity(gravity), (reading) =>
    andThen(batteryCelsius(celsius), (temperature) => chargeAt80F(gravityAt80F(reading, temperature))),
  );
}

// Readings are printed to 0.001; a correction must not push 1.300 over its own limit by a rounding.
const ROUNDING = 1e-9;

function chargeAt80F(gravity: number): Outcome<number> {
  if (gravity > STRONGEST_GRAVITY + ROUNDING)
    return problem('notEnoughData', 'acidTooStrong', 'gravity', gravity);
  if (gravity < DEAD_CELL_GRAVITY - ROUNDING)
    return problem('notEnoughData', 'acidNearlyWater', 'gravity', gravity);
  if (gravity >= FULL_GRAVITY - ROUNDING) return answer(1);
  return andThen(acidsOf('flooded'), ({ fullFraction, emptyFraction }) =>
    andThen(acidFromGravity(gravity), (molality) => {
      const share = (acidMoleFraction(molality) - emptyFraction) / (fullFraction - emptyFraction);
      return answer(Math.min(1, Math.max(0, share)));
    }),
  );
}
