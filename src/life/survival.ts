import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { aboveZero, every, zeroOrMore } from './lifeArguments.ts';
import { weibullLogSurvival } from './weibull.ts';

/**
 * Share of batteries still good at an age, under a Weibull life. It assumes that nothing else takes them out.
 * @param month  age in service [months], 0 or more
 * @param shape  Weibull shape (wear-out: 1 none, 3 strong), above 0
 * @param scale  Weibull scale, the age by which 63.2 % have failed [months], above 0
 * @returns share still good, 0 to 1
 * @problem badInput    when a figure is no number
 * @problem outOfRange  when the age is negative, or shape or scale is not above 0
 * @source weibull1951 equation of the distribution
 * @example survival(36, 3, 60) // 0.8057
 */
export function survival(month: number, shape: number, scale: number): Outcome<number> {
  return andThen(
    every(zeroOrMore(month, 'month'), aboveZero(shape, 'shape'), aboveZero(scale, 'scale')),
    () => answer(Math.exp(weibullLogSurvival(month, shape, scale))),
  );
}
