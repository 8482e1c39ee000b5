import erfcinv from '@stdlib/math-base-special-erfcinv';
import erfcx from '@stdlib/math-base-special-erfcx';
import normalLogcdf from '@stdlib/stats-base-dists-normal-logcdf';

/**
 * The law of z = (log age - mu) / sigma, the same whatever mu and sigma are. Everything that a likelihood
 * and its derivatives need of a model of life.
 */
export type StandardLife = {
  /** log S(z), right far into both tails. */
  readonly logSurvival: (z: number) => number;
  /** log of the density of z. */
  readonly logDensity: (z: number) => number;
  /** First and second derivative of `logDensity`. */
  readonly densitySlope: (z: number) => number;
  readonly densityCurve: (z: number) => number;
  /** Hazard of z, minus the slope of `logSurvival`, and its own slope. */
  readonly hazard: (z: number) => number;
  readonly hazardSlope: (z: number) => number;
  /** The z below which a share p lies. */
  readonly quantile: (share: number) => number;
};

const LOG_SQRT_TWO_PI = 0.5 * Math.log(2 * Math.PI);
const SQRT_TWO_OVER_PI = Math.sqrt(2 / Math.PI);

/** log(1 - exp(x)) for x < 0 without loss near 0 and far below it. */
export function logOneMinusExp(x: number): number {
  return x > -Math.LN2 ? Math.log(-Math.expm1(x)) : Math.log1p(-Math.exp(x));
}

/** Quantile of the standard normal law, with every digit in the lower tail. */
export function normalQuantile(share: number): number {
  return share > 0.5 ? Math.SQRT2 * erfcinv(2 * (1 - share)) : -Math.SQRT2 * erfcinv(2 * share);
}

/** log of the share of the standard normal law above z. */
export function normalLogSurvival(z: number): number {
  return normalLogcdf(-z, 0, 1);
}

function normalHazard(z: number): number {
  return SQRT_TWO_OVER_PI / erfcx(z * Math.SQRT1_2);
}

/** Law of z under a Weibull life: smallest extreme value, S = exp(-e^z), shape = 1/sigma, scale = e^mu. */
export const smallestExtremeValue: StandardLife = {
  logSurvival: (z) => -Math.exp(z),
  logDensity: (z) => z - Math.exp(z),
  densitySlope: (z) => -Math.expm1(z),
  densityCurve: (z) => -Math.exp(z),
  hazard: Math.exp,
  hazardSlope: Math.exp,
  quantile: (share) => Math.log(-Math.log1p(-share)),
};

/** Law of z under a lognormal life: standard normal. */
export const standardNormal: StandardLife = {
  logSurvival: normalLogSurvival,
  logDensity: (z) => -0.5 * z * z - LOG_SQRT_TWO_PI,
  densitySlope: (z) => -z,
  densityCurve: () => -1,
  hazard: normalHazard,
  hazardSlope: (z) => {
    const hazard = normalHazard(z);
    return hazard * (hazard - z);
  },
  quantile: normalQuantile,
};
