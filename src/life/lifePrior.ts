import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { lifeFromRules } from './lifeFromRules.ts';
import { smallestExtremeValue } from './standardLife.ts';
import { weibullQuantile } from './weibull.ts';

/**
 * What is believed about a Weibull life before any of its records: an age by which a share has failed, and the
 * spread sigma = 1/shape, each log-normal and independent of the other.
 */
export type LifePrior = {
  /** Age by which half (or `share`) have failed; the middle of the belief [months]. */
  readonly medianMonths: number;
  /** Standard deviation of the natural log of that age. */
  readonly spreadLogMedian: number;
  /** Middle of the belief about sigma, 1 / shape. */
  readonly sigma: number;
  /** Standard deviation of the natural log of sigma. */
  readonly spreadLogSigma: number;
  /** The share failed that `medianMonths` stands for; one half where it isn't given. */
  readonly share?: number;
};

/**
 * The belief that stands until a depot enters its own: half gone by 54 months (7.6 to 383), shape 2.5 (0.94 to
 * 6.7). The middle is a judgement about heavy 12 V batteries, wide on purpose.
 */
export const DEFAULT_LIFE_PRIOR: LifePrior = {
  medianMonths: 54,
  spreadLogMedian: 1,
  sigma: 0.4,
  spreadLogSigma: 0.5,
};

/** Spreads of a belief that its owner is sure of. */
const SURE = { spreadLogMedian: 0.3, spreadLogSigma: 0.2 };

/**
 * The belief whose middle is the Weibull life through two rules of thumb.
 * @param share1  share failed by `month1`, above 0 and below 1
 * @param month1  age [months], above 0
 * @param share2  share failed by `month2`, above 0 and below 1
 * @param month2  age [months], above 0; the larger age goes with the larger share
 * @param sure    the owner is sure of the rules: narrower spreads (0.3 and 0.2 instead of 1.0 and 0.5)
 * @returns a prior; its spread does not depend on the rules
 * @problem badInput    when a figure is no number, or more have failed by the smaller age
 * @problem outOfRange  when a share is not between 0 and 1 or an age is not above 0
 * @example priorFromRules(0.1, 25, 0.5, 54).value.sigma // 0.409
 */
export function priorFromRules(
  share1: number,
  month1: number,
  share2: number,
  month2: number,
  sure = false,
): Outcome<LifePrior> {
  return andThen(lifeFromRules(share1, month1, share2, month2), ({ shape, scale }) => {
    const middle = { medianMonths: weibullQuantile(0.5, shape, scale), sigma: 1 / shape };
    return answer({ ...DEFAULT_LIFE_PRIOR, ...(sure ? SURE : {}), ...middle });
  });
}

/** Log of the prior's density in (mu, log sigma). */
export function logPriorDensity(prior: LifePrior, mu: number, logSigma: number): number {
  const logAge = mu + Math.exp(logSigma) * smallestExtremeValue.quantile(prior.share ?? 0.5);
  return (
    logNormalDensity(logAge - Math.log(prior.medianMonths), prior.spreadLogMedian) +
    logNormalDensity(logSigma - Math.log(prior.sigma), prior.spreadLogSigma)
  );
}

function logNormalDensity(distance: number, spread: number): number {
  return -0.5 * (distance / spread) ** 2 - Math.log(spread) - 0.5 * Math.log(2 * Math.PI);
}
