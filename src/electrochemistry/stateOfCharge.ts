import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { Construction } from '../service/battery.ts';
import { acidFromRestVolts, acidMoleFraction, acidRestVolts } from './acid.ts';
import type { Acids } from './constructions.ts';
import { acidsOf } from './constructions.ts';
import {
  batteryCelsius,
  batteryVolts,
  DEAD_CELL_VOLTS,
  SURFACE_CHARGE_VOLTS,
  USUAL_CELSIUS,
} from './restReading.ts';

/** What is added to a limit so that a reading typed exactly on it stays inside. */
const ROUNDING_VOLTS = 1e-9;

/**
 * State of charge of a 12 V battery from its rested open-circuit voltage and temperature. The voltage gives the acid's
 * strength, and the acid's mole fraction stands on a straight line between the construction's empty and full acids.
 * Up to 0.15 V above this battery's full rest voltage the answer is 1, under its empty end down to 11.3 V it is 0;
 * nothing else is held. Good to about 7 points of a hundred (one sigma); chargeBand gives the band.
 * @param restVolts voltage after 3 h at rest or more, nothing connected [V], 6 to 16
 * @param celsius battery temperature [C], -40 to 60, default 25
 * @param construction AGM, flooded, gel, or own full rest voltage at 25 C [V], 12.0 to 13.5; default AGM
 * @returns state of charge, 0 to 1
 * @problem badInput       when volts or temperature are no numbers, or the volts are those of a whole 24 V set
 * @problem outOfRange     when the volts are outside 6 to 16 V, the temperature outside -40 to 60 C, or a number for the
 * construction outside 12.0 to 13.5 V
 * @problem notEnoughData  when the voltage is more than 0.15 V above full (not rested), or under 11.3 V (deeply
 * discharged or a dead cell)
 * @source bode1977 at 25 C (0.1 to 6 mol/kg; used to about 6.6)
 * @source harnedHamer1935 against temperature, from memory (0 to 60 C)
 * @example stateOfCharge(12.615, 25, 'AGM') // 0.750
 */
export function stateOfCharge(
  restVolts: number,
  celsius: number = USUAL_CELSIUS,
  construction: Construction = 'AGM',
): Outcome<number> {
  return andThen(batteryVolts(restVolts), (volts) =>
    andThen(batteryCelsius(celsius), (temperature) =>
      andThen(acidsOf(construction), (acids) => chargeBetween(volts, temperature, acids)),
    ),
  );
}

function chargeBetween(volts: number, celsius: number, acids: Acids): Outcome<number> {
  if (volts < DEAD_CELL_VOLTS) return problem('notEnoughData', 'deadCell', 'volts', volts);
  const full = acidRestVolts(acids.full, celsius);
  if (volts > full + SURFACE_CHARGE_VOLTS + ROUNDING_VOLTS)
    return problem('notEnoughData', 'notRested', 'volts', volts);
  if (volts >= full) return answer(1);
  if (volts <= acidRestVolts(acids.empty, celsius)) return answer(0);
  return andThen(acidFromRestVolts(volts, celsius, acids.empty, acids.full), (molality) =>
    answer((acidMoleFraction(molality) - acids.emptyFraction) / (acids.fullFraction - acids.emptyFraction)),
  );
}
