import { weibullHazardGain } from '../life/weibull.ts';
import { posteriorMean } from '../life/lifePosterior.ts';
import type { LifeBelief } from './lattice.ts';
import { isPosterior } from './lattice.ts';

/**
 * Chance that one battery of each month of age fails within some months, averaged over what is believed about
 * its life.
 * @param life     a Weibull life or a belief about one
 * @param meanAge  age [months] for each month of age
 * @param horizons  months from now
 * @returns for each month of age the chances, 0 to 1
 */
export function failureChances(
  life: LifeBelief,
  meanAge: ReadonlyMap<number, number>,
  horizons: readonly number[],
): Map<number, readonly number[]> {
  const within = (age: number, months: number) => (shape: number, scale: number) =>
    -Math.expm1(-weibullHazardGain(age, months, shape, scale));
  const chance = (age: number, months: number): number =>
    isPosterior(life)
      ? posteriorMean(life, within(age, months))
      : within(age, months)(life.shape, life.scale);
  return new Map([...meanAge].map(([month, age]) => [month, horizons.map((months) => chance(age, months))]));
}
