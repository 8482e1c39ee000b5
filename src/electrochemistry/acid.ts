import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { rootBetween } from '../basics/solve.ts';
import { CELLS } from '../basics/units.ts';
import { cellVoltageBode1977 } from './acid.bode1977.ts';
import { temperatureTermHarnedHamer1935 } from './acid.harnedHamer1935.ts';
import { acidDensityPerry } from './acid.perry.ts';

/** Mass of a mole of water and of sulphuric acid [kg/mol]. */
const WATER_KG_PER_MOL = 0.0180153;
const ACID_KG_PER_MOL = 0.098079;

/** 80 F, the temperature to which hydrometer readings and the older voltage tables refer [C]. */
export const CELSIUS_AT_80_F = 80 / 3;

/** Density of water at 80 F [g/mL], to which specific gravity refers here. Common handbook value. */
const WATER_DENSITY_AT_80_F = 0.99661;

/** Acid within which a rest voltage is looked for [mol/kg]: about 11.0 to 13.7 V. */
const WEAKEST = 0.2;
const STRONGEST = 12;
const MOLALITY_TOLERANCE = 1e-10;

/**
 * Rest voltage of a 12 V battery from the strength of its acid and its temperature: six like cells, all at rest.
 * @param molality acid in water [mol/kg], 0.2 to 12
 * @param celsius battery temperature [C], -40 to 60
 * @returns rest voltage [V]
 * @source bode1977 at 25 C (0.1 to 6 mol/kg)
 * @source harnedHamer1935 against temperature (0.05 to 7 mol/kg, 0 to 60 C)
 * @example acidRestVolts(6.5996, 25) // 12.850
 */
export function acidRestVolts(molality: number, celsius: number): number {
  return CELLS * (cellVoltageBode1977(molality) + temperatureTermHarnedHamer1935(molality, celsius));
}

/**
 * Strength of the acid in a 12 V battery from its rest voltage and temperature, the inverse of acidRestVolts.
 * @param restVolts rest voltage [V], about 11.1 to 13.6
 * @param celsius battery temperature [C], -40 to 60
 * @param weakest where to look from [mol/kg], default 0.2
 * @param strongest where to look to [mol/kg], default 12
 * @returns acid in water [mol/kg]
 * @problem noConvergence  when the acid lies outside the bounds
 * @source bode1977 as acidRestVolts
 * @example acidFromRestVolts(12.85, 25) // 6.600
 */
export function acidFromRestVolts(
  restVolts: number,
  celsius: number,
  weakest = WEAKEST,
  strongest = STRONGEST,
): Outcome<number> {
  const excess = (molality: number): number => acidRestVolts(molality, celsius) - restVolts;
  return rootBetween(excess, weakest, strongest, MOLALITY_TOLERANCE, 'acid strength');
}

/**
 * Share of acid among the moles of acid and water. Charging turns no mole of them into anything else, so this share,
 * and no other measure of strength, rises in a straight line with charge.
 * @param molality acid in water [mol/kg], 0 or more
 * @returns mole fraction, 0 to 1
 * @example acidMoleFraction(5) // 0.08263
 */
export function acidMoleFraction(molality: number): number {
  return (molality * WATER_KG_PER_MOL) / (1 + molality * WATER_KG_PER_MOL);
}

/**
 * Strength of an acid from its mole fraction, the inverse of acidMoleFraction.
 * @param fraction mole fraction, 0 to less than 1
 * @returns acid in water [mol/kg]
 * @example acidFromMoleFraction(0.0826) // 4.998
 */
export function acidFromMoleFraction(fraction: number): number {
  return fraction / ((1 - fraction) * WATER_KG_PER_MOL);
}

/**
 * Acid by weight from its strength.
 * @param molality acid in water [mol/kg], 0 or more
 * @returns acid by weight [%], 0 to 100
 * @example acidPercent(5) // 32.90
 */
export function acidPercent(molality: number): number {
  return (100 * molality * ACID_KG_PER_MOL) / (1 + molality * ACID_KG_PER_MOL);
}

/**
 * Strength of an acid from its share by weight, the inverse of acidPercent.
 * @param percent acid by weight [%], 0 to less than 100
 * @returns acid in water [mol/kg]
 * @example acidFromPercent(35) // 5.490
 */
export function acidFromPercent(percent: number): number {
  return percent / ((100 - percent) * ACID_KG_PER_MOL);
}

/**
 * Specific gravity of an acid at 80 F against water at 80 F, from its strength. Some tables refer to water at 39 or
 * 60 F and read up to 0.0033 lower or higher; water at 80 F fits the common table of voltage and gravity best.
 * @param molality acid in water [mol/kg], 0.11 to 10
 * @returns specific gravity at 80 F, 1.00 to 1.40
 * @source perry density (1 to 50 %, 0 to 60 C)
 * @example acidGravity(5.4901) // 1.2594
 */
export function acidGravity(molality: number): number {
  return acidDensityPerry(acidPercent(molality), CELSIUS_AT_80_F) / WATER_DENSITY_AT_80_F;
}

/**
 * Strength of an acid from its specific gravity at 80 F against water at 80 F, the inverse of acidGravity.
 * @param gravity specific gravity at 80 F, 1.01 to 1.39
 * @returns acid in water [mol/kg]
 * @problem noConvergence  when the gravity is none of dilute acid
 * @source perry density (1 to 50 %, 0 to 60 C)
 * @example acidFromGravity(1.265) // 5.648
 */
export function acidFromGravity(gravity: number): Outcome<number> {
  const excess = (percent: number): number =>
    acidDensityPerry(percent, CELSIUS_AT_80_F) - gravity * WATER_DENSITY_AT_80_F;
  return andThen(rootBetween(excess, 1, 50, 1e-9, 'acid strength'), (percent) =>
    answer(acidFromPercent(percent)),
  );
}
