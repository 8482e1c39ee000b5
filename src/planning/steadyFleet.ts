import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { lifeFromAges } from '../life/lifeFromAges.ts';
import { posteriorMean } from '../life/lifePosterior.ts';
import type { LifePrior } from '../life/lifePrior.ts';
import { posteriorAge } from '../life/posteriorQuantiles.ts';
import { weibullMean } from '../life/weibull.ts';
import type { Battery } from '../service/battery.ts';
import type { Banded } from './lifeFigures.ts';

/** What ages alone say of a fleet whose number of places has long been the same. */
export type SteadyFleet = {
  /** Batteries in service whose age is known. */
  readonly aged: number;
  /** Age by which half have left, for whatever reason [months], 90 % band. */
  readonly halfGone: Banded;
  /** Batteries that have to be bought in a year to keep all places filled. */
  readonly purchasesAYear: number;
};

const MONTHS = 12;

/**
 * How long batteries stay, and how many a year keep the places filled, from the ages in service alone. To be set
 * beside what was really bought: where the two differ much, the fleet was not steady. Days count as half a day old.
 * @param batteries  as they stand at as-of
 * @param prior      belief before the ages
 * @problem notEnoughData  when no battery in service has an age
 */
export function steadyFleet(batteries: readonly Battery[], prior: LifePrior): Outcome<SteadyFleet> {
  const places = batteries.filter(({ whereabouts }) => whereabouts === 'inService');
  const ages = places.flatMap(({ ageMonths }) =>
    ageMonths === undefined ? [] : [Math.max(ageMonths, 1 / 61)],
  );
  return andThen(lifeFromAges(ages, prior), (life) => {
    const half = posteriorAge(life, 0.5);
    return answer({
      aged: ages.length,
      halfGone: { best: half(0.5), low: half(0.05), high: half(0.95) },
      purchasesAYear: (places.length * MONTHS) / posteriorMean(life, weibullMean),
    });
  });
}
