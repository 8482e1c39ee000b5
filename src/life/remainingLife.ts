import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { aboveZero, every, properShare, zeroOrMore } from './lifeArguments.ts';
import { weibullCumulativeHazard } from './weibull.ts';

/**
 * Months until a share of the batteries of an age, still good, has failed, under a Weibull life.
 * @param age    age in service [months], 0 or more
 * @param shape  Weibull shape (wear-out: 1 none, 3 strong), above 0
 * @param scale  Weibull scale, the age by which 63.2 % have failed [months], above 0
 * @param share  share that has failed by then, above 0 and below 1; default one half
 * @returns months from now, above 0
 * @problem badInput    when a figure is no number
 * @problem outOfRange  when the age is negative, shape or scale is not above 0, or the share is not between 0 and 1
 * @source weibull1951 equation of the distribution, solved for the age
 * @example remainingLife(36, 3, 60) // 22.12
 */
export function remainingLife(age: number, shape: number, scale: number, share = 0.5): Outcome<number> {
  const given = every(
    zeroOrMore(age, 'age'),
    aboveZero(shape, 'shape'),
    aboveZero(scale, 'scale'),
    properShare(share, 'share'),
  );
  return andThen(given, () => answer(monthsToHazard(age, shape, scale, -Math.log1p(-share))));
}

/** Months in which the cumulative hazard grows by `gain`; each form keeps its digits where the other loses them. */
function monthsToHazard(age: number, shape: number, scale: number, gain: number): number {
  const met = weibullCumulativeHazard(age, shape, scale);
  if (met < gain) return scale * (met + gain) ** (1 / shape) - age;
  return age * Math.expm1(Math.log1p(gain / met) / shape);
}
