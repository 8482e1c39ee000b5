import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { Construction } from '../service/battery.ts';
import { acidFromMoleFraction, acidRestVolts } from './acid.ts';
import { acidsOf } from './constructions.ts';
import { batteryCelsius, USUAL_CELSIUS } from './restReading.ts';

/**
 * Rest voltage of a 12 V battery from its state of charge and temperature. The acid's mole fraction is taken on a
 * straight line between the construction's empty and full acids; the voltage is that of six like cells at rest in it.
 * Below 0 C the change with temperature is extrapolated.
 * @param charge state of charge, 0 to 1
 * @param celsius battery temperature [C], -40 to 60, default 25
 * @param construction AGM, flooded, gel, or own full rest voltage at 25 C [V], 12.0 to 13.5; default AGM
 * @returns rest voltage [V], about 11.8 to 13.5
 * @problem badInput    when the charge or the temperature is no number
 * @problem outOfRange  when the charge is outside 0 to 1, the temperature outside -40 to 60 C, or a number for the
 * construction outside 12.0 to 13.5 V
 * @source bode1977 at 25 C (0.1 to 6 mol/kg; used to about 6.6)
 * @source harnedHamer1935 against temperature, from memory (0 to 60 C)
 * @example restVoltage(0.5, -18, 'AGM') // 12.327
 */
export function restVoltage(
  charge: number,
  celsius: number = USUAL_CELSIUS,
  construction: Construction = 'AGM',
): Outcome<number> {
  if (!Number.isFinite(charge)) return problem('badInput', 'notANumber', 'charge', charge);
  if (charge < 0 || charge > 1)
    return problem('outOfRange', 'outOfLimits', 'charge', charge, { limits: [0, 1] });
  return andThen(batteryCelsius(celsius), (temperature) =>
    andThen(acidsOf(construction), ({ fullFraction, emptyFraction }) => {
      const fraction = emptyFraction + charge * (fullFraction - emptyFraction);
      return answer(acidRestVolts(acidFromMoleFraction(fraction), temperature));
    }),
  );
}
