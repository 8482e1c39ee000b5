import type { LifeSample } from './lifeSample.ts';
import { logLikelihood } from './lifeLikelihood.ts';
import { normalLogSurvival, normalQuantile, standardNormal } from './standardLife.ts';

/** log of the share still good at an age, right far into the tail; mu and sigma are those of log age. */
export function lognormalLogSurvival(age: number, mu: number, sigma: number): number {
  return age > 0 ? normalLogSurvival((Math.log(age) - mu) / sigma) : 0;
}

/** Hazard at an age: failures per unit of time among those still good. */
export function lognormalHazard(age: number, mu: number, sigma: number): number {
  return age > 0 ? standardNormal.hazard((Math.log(age) - mu) / sigma) / (sigma * age) : 0;
}

/**
 * Cumulative hazard met between `age` and `age + months`; the chance to fail in between is -expm1(-gain). Where
 * next to nothing is met, the two log survivals would cancel: the hazard at the middle stands for the stretch.
 */
export function lognormalHazardGain(age: number, months: number, mu: number, sigma: number): number {
  const gain = lognormalLogSurvival(age, mu, sigma) - lognormalLogSurvival(age + months, mu, sigma);
  const narrow = months < 1e-6 * age;
  return narrow ? months * lognormalHazard(age + months / 2, mu, sigma) : gain;
}

/** The age by which a share has failed. */
export function lognormalQuantile(share: number, mu: number, sigma: number): number {
  return Math.exp(mu + sigma * normalQuantile(share));
}

/** Mean life. */
export function lognormalMean(mu: number, sigma: number): number {
  return Math.exp(mu + (sigma * sigma) / 2);
}

/** Log-likelihood of a sample under a lognormal life, for all four kinds of record with late entry. */
export function lognormalLogLikelihood(sample: LifeSample, mu: number, sigma: number): number {
  return logLikelihood(sample, standardNormal, mu, sigma);
}
