import gammainc from '@stdlib/math-base-special-gammainc';
import { rootBetween } from '../basics/solve.ts';
import { lognormalHazard, lognormalLogSurvival, lognormalMean, lognormalQuantile } from './lognormal.ts';
import { standardNormal } from './standardLife.ts';
import { weibullHazard, weibullLogSurvival, weibullMean, weibullQuantile } from './weibull.ts';

/** A life with known parameters, as functions of age. */
export type ParametricLife = {
  readonly logSurvival: (age: number) => number;
  readonly hazard: (age: number) => number;
  readonly quantile: (share: number) => number;
  readonly mean: number;
  /** Mean time in service of batteries that are taken out at an age at the latest. */
  readonly meanToAge: (age: number) => number;
  /** Until which age the hazard rises; Infinity where it always does, 0 where it never does. */
  readonly hazardRisesTo: number;
};

/** A Weibull life of known shape and scale. */
export function weibullLife(shape: number, scale: number): ParametricLife {
  const mean = weibullMean(shape, scale);
  return {
    logSurvival: (age) => weibullLogSurvival(age, shape, scale),
    hazard: (age) => weibullHazard(age, shape, scale),
    quantile: (share) => weibullQuantile(share, shape, scale),
    mean,
    meanToAge: (age) => mean * gammainc((age / scale) ** shape, 1 / shape),
    hazardRisesTo: shape > 1 ? Number.POSITIVE_INFINITY : 0,
  };
}

/** A lognormal life of known mu and sigma of log age. */
export function lognormalLife(mu: number, sigma: number): ParametricLife {
  const mean = lognormalMean(mu, sigma);
  const below = (z: number): number => Math.exp(standardNormal.logSurvival(-z));
  return {
    logSurvival: (age) => lognormalLogSurvival(age, mu, sigma),
    hazard: (age) => lognormalHazard(age, mu, sigma),
    quantile: (share) => lognormalQuantile(share, mu, sigma),
    mean,
    meanToAge: (age) => {
      const z = (Math.log(age) - mu) / sigma;
      return age * Math.exp(standardNormal.logSurvival(z)) + mean * below(z - sigma);
    },
    hazardRisesTo: Math.exp(mu + sigma * steepestZ(sigma)),
  };
}

/** Where the hazard of a lognormal life is largest: its normal hazard exceeds z by just sigma there. */
function steepestZ(sigma: number): number {
  const excess = (z: number): number => Math.log(standardNormal.hazard(z) - z) - Math.log(sigma);
  const root = rootBetween(excess, -sigma - 10, 1 / sigma + 10, 1e-10, 'hazard');
  return root.ok ? root.value : 1 / sigma;
}
