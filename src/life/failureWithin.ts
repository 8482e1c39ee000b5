import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { aboveZero, every, zeroOrMore } from './lifeArguments.ts';
import { weibullHazardGain } from './weibull.ts';

/**
 * Probability that a battery of an age, still good, fails within the next months, under a Weibull life. Right at any
 * age, also where next to none would have got so old.
 * @param age     age in service [months], 0 or more
 * @param months  months from now, 0 or more
 * @param shape   Weibull shape (wear-out: 1 none, 3 strong), above 0
 * @param scale   Weibull scale, the age by which 63.2 % have failed [months], above 0
 * @returns probability, 0 to 1
 * @problem badInput    when a figure is no number
 * @problem outOfRange  when age or months is negative, or shape or scale is not above 0
 * @source weibull1951 conditional probability from the equation of the distribution
 * @example failureWithin(36, 12, 3, 60) // 0.2562
 */
export function failureWithin(age: number, months: number, shape: number, scale: number): Outcome<number> {
  const given = every(
    zeroOrMore(age, 'age'),
    zeroOrMore(months, 'months'),
    aboveZero(shape, 'shape'),
    aboveZero(scale, 'scale'),
  );
  return andThen(given, () => answer(-Math.expm1(-weibullHazardGain(age, months, shape, scale))));
}
