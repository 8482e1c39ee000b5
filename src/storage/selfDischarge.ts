import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { celsiusFromFahrenheit, DAYS_PER_MONTH } from '../basics/units.ts';
import type { Construction } from '../service/battery.ts';
import { acidGravity } from '../electrochemistry/acid.ts';
import { acidsOf } from '../electrochemistry/constructions.ts';
import { batteryCelsius, USUAL_CELSIUS } from '../electrochemistry/restReading.ts';

/** AGM: share of full charge lost in a month at 25 C, and the warming that doubles it [K]. Common practice. */
const AGM_LOSS_PER_MONTH = 0.02;
const DOUBLING_KELVIN = 10;

/** Flooded: temperature [F] and specific gravity lost in a day, as printed for antimony plates in the first ten days. */
const FLOODED_ROWS = [
  [50, 0.0003],
  [80, 0.001],
  [100, 0.0025],
] as const;

const FLOODED = FLOODED_ROWS.map(([fahrenheit, perDay]) => ({
  celsius: celsiusFromFahrenheit(fahrenheit),
  log: Math.log(perDay),
}));

/**
 * Specific gravity that a stored flooded battery loses in a day, from its temperature: straight lines in the logarithm
 * between 10, 26.7 and 37.8 C, held at the first and last.
 * @param celsius battery temperature [C]
 * @returns specific gravity a day, 0.0003 to 0.0025
 * @source tm9-6140-200-14 page 4-14: antimony plates, first ten days (10 to 37.8 C)
 * @example gravityLostPerDay(celsiusFromFahrenheit(80)) // 0.0010
 */
export function gravityLostPerDay(celsius: number): number {
  const above = FLOODED.findIndex((row) => row.celsius > celsius);
  if (above <= 0) return Math.exp(FLOODED[above === 0 ? 0 : FLOODED.length - 1]!.log);
  const [low, high] = [FLOODED[above - 1]!, FLOODED[above]!];
  const share = (celsius - low.celsius) / (high.celsius - low.celsius);
  return Math.exp(low.log + share * (high.log - low.log));
}

/**
 * Share of full charge that a stored, disconnected battery loses in a day, from its temperature. AGM, gel and a number:
 * 2 % a month of 30.4375 days at 25 C, doubling for each 10 K; flooded: the specific gravity lost, as a share of the
 * span between full and empty acid.
 * @param celsius battery temperature [C], -40 to 60
 * @param construction AGM, flooded, gel, or own full rest voltage at 25 C [V], 12.0 to 13.5; default AGM
 * @returns share of full charge a day
 * @problem badInput    when the temperature is no number
 * @problem outOfRange  when the temperature is outside -40 to 60 C, or a number for the construction outside 12.0 to
 * 13.5 V
 * @source tm9-6140-200-14 page 4-14, flooded (10 to 37.8 C)
 * @example chargeLostPerDay(25, 'AGM') // 0.000657
 */
export function chargeLostPerDay(celsius: number, construction: Construction = 'AGM'): Outcome<number> {
  return andThen(batteryCelsius(celsius), (temperature) =>
    andThen(acidsOf(construction), ({ full, empty }) => {
      if (construction === 'flooded')
        return answer(gravityLostPerDay(temperature) / (acidGravity(full) - acidGravity(empty)));
      const doublings = (temperature - USUAL_CELSIUS) / DOUBLING_KELVIN;
      return answer((AGM_LOSS_PER_MONTH / DAYS_PER_MONTH) * 2 ** doublings);
    }),
  );
}

/**
 * State of charge that a battery loses in storage, from days and temperature. Disconnected, from full, in a straight
 * line with time and at most 1; an older battery, antimony plates in an AGM case or a vehicle's standing load lose more.
 * @param days days stored [d], 0 or more
 * @param celsius battery temperature [C], -40 to 60
 * @param construction AGM, flooded, gel, or own full rest voltage at 25 C [V], 12.0 to 13.5; default AGM
 * @returns state of charge lost, 0 to 1
 * @problem badInput    when days or temperature are no numbers
 * @problem outOfRange  when the days are negative, the temperature outside -40 to 60 C, or a number for the construction
 * outside 12.0 to 13.5 V
 * @source tm9-6140-200-14 page 4-14, flooded (10 to 37.8 C, first ten days)
 * @example selfDischarge(91, 25, 'AGM') // 0.060
 */
export function selfDischarge(
  days: number,
  celsius: number,
  construction: Construction = 'AGM',
): Outcome<number> {
  if (!Number.isFinite(days)) return problem('badInput', 'notANumber', 'days', days);
  if (days < 0) return problem('outOfRange', 'negativeDays', 'days', days);
  return andThen(chargeLostPerDay(celsius, construction), (perDay) => answer(Math.min(1, days * perDay)));
}
