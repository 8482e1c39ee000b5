import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { fahrenheitFromCelsius } from '../basics/units.ts';
import { batteryCelsius } from '../electrochemistry/restReading.ts';

/** Battery temperature [F] and least volts at the end of the test, as printed. */
const ROWS = [
  [0, 8.5],
  [10, 8.7],
  [20, 8.9],
  [30, 9.1],
  [40, 9.3],
  [50, 9.4],
  [60, 9.5],
  [70, 9.6],
] as const;

/** The table's coldest row as its own Celsius column prints it (0 F is -17.8 C). */
const COLDEST_CELSIUS = -18;

/**
 * Least voltage of a charged 12 V battery at the end of a 15 s test at half its cold-cranking rating, from its
 * temperature: straight lines between the printed rows, which are in Fahrenheit, and the last row's 9.6 V above 70 F.
 * The battery must hold 75 % of its charge or more; otherwise charge it first.
 * @param celsius battery temperature [C], -18 to 60
 * @returns least voltage while the load still draws, after 15 s [V], 8.5 to 9.6
 * @problem badInput       when the temperature is no number
 * @problem outOfRange     when it is outside -40 to 60 C
 * @problem notEnoughData  when it is below -18 C: the table ends there
 * @source vehicleServiceTexts load-test table, 0 to 70 F
 * @source tm9-6115-730-24 9.6 V after 15 s at 550 A, about 70 F, for the 6T AGM
 * @example loadTestFloor(7.2222) // 9.35
 */
export function loadTestFloor(celsius: number): Outcome<number> {
  return andThen(batteryCelsius(celsius), (given) => {
    if (given < COLDEST_CELSIUS)
      return problem('notEnoughData', 'tooColdForLoadTest', 'temperature', Number(given.toFixed(1)));
    return answer(floorAt(fahrenheitFromCelsius(given)));
  });
}

function floorAt(fahrenheit: number): number {
  const above = ROWS.findIndex((row) => row[0] >= fahrenheit);
  if (above === -1) return ROWS[ROWS.length - 1]![1];
  if (above === 0) return ROWS[0][1];
  const [low, high] = [ROWS[above - 1]!, ROWS[above]!];
  return low[1] + ((fahrenheit - low[0]) / (high[0] - low[0])) * (high[1] - low[1]);
}
