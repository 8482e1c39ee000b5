import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { aboveZero, every, properShare } from './lifeArguments.ts';
import { smallestExtremeValue } from './standardLife.ts';

/** A Weibull life. */
export type WeibullLife = { readonly shape: number; readonly scale: number };

/**
 * The Weibull life through two rules of thumb, such as "10 % gone by 36 months, half by 54". It says nothing
 * about how sure the rules are.
 * @param share1  share failed by `month1`, above 0 and below 1
 * @param month1  age [months], above 0
 * @param share2  share failed by `month2`, above 0 and below 1
 * @param month2  age [months], above 0; the larger age goes with the larger share
 * @returns shape and scale [months]
 * @problem badInput    when a figure is no number, or more have failed by the smaller age
 * @problem outOfRange  when a share is not between 0 and 1 or an age is not above 0
 * @source weibull1951 equation of the distribution, solved for shape and scale
 * @example lifeFromRules(0.1, 36, 0.5, 54).value.shape // 4.646
 */
export function lifeFromRules(
  share1: number,
  month1: number,
  share2: number,
  month2: number,
): Outcome<WeibullLife> {
  const given = every(
    properShare(share1, 'share1'),
    aboveZero(month1, 'month1'),
    properShare(share2, 'share2'),
    aboveZero(month2, 'month2'),
  );
  return andThen(given, () => throughTwoPoints([share1, month1], [share2, month2]));
}

type Rule = readonly [share: number, month: number];

function throughTwoPoints(first: Rule, second: Rule): Outcome<WeibullLife> {
  const { quantile } = smallestExtremeValue;
  const shape = (quantile(second[0]) - quantile(first[0])) / Math.log(second[1] / first[1]);
  if (!(shape > 0 && Number.isFinite(shape))) {
    const [share1, month1, share2, month2] = [...first, ...second];
    return problem('badInput', 'rulesContradict', 'rules', undefined, {
      more: { share1, month1, share2, month2 },
    });
  }
  const scale = Math.exp(Math.log(first[1]) - quantile(first[0]) / shape);
  return answer({ shape, scale });
}
