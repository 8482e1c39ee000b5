import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { celsiusFromFahrenheit } from '../basics/units.ts';
import { acidFromRestVolts, acidGravity } from './acid.ts';
import { batteryCelsius, batteryVolts, DEAD_CELL_VOLTS, USUAL_CELSIUS } from './restReading.ts';

/** Specific gravity at 80 F and the temperature at which that acid begins to freeze [F], as printed. */
const ROWS = [
  [1.0, 32],
  [1.05, 27],
  [1.1, 19],
  [1.15, 5],
  [1.2, -16],
  [1.225, -35],
  [1.25, -62],
  [1.265, -75],
  [1.28, -90],
] as const;

/** Over this no battery is at rest, whatever its acid [V]. */
const MOST_REST_VOLTS = 13;

/**
 * Temperature at which battery acid begins to freeze, from its specific gravity: straight lines between the rows of
 * the table, which is held at its last row for stronger acid.
 * @param gravity specific gravity at 80 F, 1.000 or more
 * @returns freezing point [C], -67.8 to 0
 * @source tm5-1185 freezing points for 1.000 to 1.280 (with OD1002 and vehicle manuals for 1.050, 1.225 and 1.265)
 * @example acidFreezesAt(1.2) // -26.7
 */
export function acidFreezesAt(gravity: number): number {
  const above = ROWS.findIndex((row) => row[0] > gravity);
  if (above === -1) return celsiusFromFahrenheit(ROWS[ROWS.length - 1]![1]);
  const [low, high] = [ROWS[Math.max(above - 1, 0)]!, ROWS[Math.max(above, 1)]!];
  const share = (gravity - low[0]) / (high[0] - low[0]);
  return celsiusFromFahrenheit(low[1] + share * (high[1] - low[1]));
}

/**
 * Temperature at which a 12 V battery's electrolyte begins to freeze, from its rest voltage and the temperature at which
 * that was read. Voltage and temperature give the acid's strength whatever the construction. Held at the table's last
 * row, -67.8 C, for acid of specific gravity over 1.280.
 * @param restVolts voltage after 3 h at rest or more, nothing connected [V], 6 to 16
 * @param celsius battery temperature when it was read [C], -40 to 60, default 25
 * @returns freezing point [C], -67.8 to 0
 * @problem badInput       when volts or temperature are no numbers, or the volts are those of a whole 24 V set
 * @problem outOfRange     when the volts are outside 6 to 16 V or the temperature outside -40 to 60 C
 * @problem notEnoughData  when the voltage is under 11.3 V (as good as water) or over 13.0 V (not rested)
 * @source tm5-1185 freezing points for 1.000 to 1.280
 * @source bode1977 acid from rest voltage (0.1 to 6 mol/kg)
 * @source perry specific gravity from acid (1 to 50 %)
 * @example freezingPoint(12.0, 25) // -13.6
 */
export function freezingPoint(restVolts: number, celsius: number = USUAL_CELSIUS): Outcome<number> {
  return andThen(batteryVolts(restVolts), (volts) =>
    andThen(batteryCelsius(celsius), (temperature) => {
      if (volts < DEAD_CELL_VOLTS) return problem('notEnoughData', 'asGoodAsWater', 'volts', volts);
      if (volts > MOST_REST_VOLTS) return problem('notEnoughData', 'notRested', 'volts', volts);
      return andThen(acidFromRestVolts(volts, temperature), (molality) =>
        answer(acidFreezesAt(acidGravity(molality))),
      );
    }),
  );
}
