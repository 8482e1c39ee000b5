import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { aboveZero, every } from './lifeArguments.ts';
import { weibullLife } from './parametricLife.ts';
import { replacementPolicy } from './replacementPolicy.ts';

/**
 * Planned-replacement age of least long-run cost, under a Weibull life; ages a fifth to a quarter to either side often
 * cost within 2 % of it (`replacementPolicy` tells them).
 * @param shape        Weibull shape (wear-out: 1 none, 3 strong), above 0
 * @param scale        Weibull scale, the age by which 63.2 % have failed [months], above 0
 * @param plannedCost  cost of one planned replacement, above 0
 * @param failureCost  cost of one failure in service, towing and all, above 0, in the same money
 * @returns age [months]
 * @problem badInput    when a figure is no number
 * @problem outOfRange  when a figure is not above 0
 * @problem notEnoughData  when waiting for failure is always cheaper
 * @source barlowHunter1960 replacement by age: least cost per unit of time
 * @example replacementAge(2.4, 60, 350, 900) // 44.43
 */
export function replacementAge(
  shape: number,
  scale: number,
  plannedCost: number,
  failureCost: number,
): Outcome<number> {
  return andThen(every(aboveZero(shape, 'shape'), aboveZero(scale, 'scale')), () =>
    andThen(replacementPolicy(weibullLife(shape, scale), plannedCost, failureCost), ({ age }) => answer(age)),
  );
}
