import gammaln from '@stdlib/math-base-special-gammaln';
import type { LifeSample } from './lifeSample.ts';
import { logOneMinusExp } from './standardLife.ts';

/** Cumulative hazard (age / scale)^shape: minus the log of the share still good at an age. */
export function weibullCumulativeHazard(age: number, shape: number, scale: number): number {
  return (age / scale) ** shape;
}

/** log of the share still good at an age; right where the share itself is too small for a number. */
export function weibullLogSurvival(age: number, shape: number, scale: number): number {
  return -weibullCumulativeHazard(age, shape, scale);
}

/** Hazard at an age: failures per unit of time among those still good. */
export function weibullHazard(age: number, shape: number, scale: number): number {
  return (shape / scale) * (age / scale) ** (shape - 1);
}

/**
 * Cumulative hazard met between `age` and `age + months`, without taking one large hazard from another; the
 * chance to fail in between is -expm1(-gain).
 */
export function weibullHazardGain(age: number, months: number, shape: number, scale: number): number {
  if (months === 0) return 0;
  const now = weibullCumulativeHazard(age, shape, scale);
  const gain = now * Math.expm1(shape * Math.log1p(months / age));
  // At age 0, and where today's hazard is next to nothing, all of it is gained.
  return now > 0 && Number.isFinite(gain) ? gain : weibullCumulativeHazard(age + months, shape, scale);
}

/** The age by which a share has failed. */
export function weibullQuantile(share: number, shape: number, scale: number): number {
  return scale * (-Math.log1p(-share)) ** (1 / shape);
}

/** Mean life: scale times gamma(1 + 1/shape). */
export function weibullMean(shape: number, scale: number): number {
  return scale * Math.exp(gammaln(1 + 1 / shape));
}

/**
 * Log-likelihood of a sample under a Weibull life with mu = log scale and sigma = 1/shape: exact, right,
 * interval and left rows, less log S(entry) for lives that came under record late.
 */
export function weibullLogLikelihood(sample: LifeSample, mu: number, sigma: number): number {
  return weibullLogLikelihoodAt(sample, sigma)(mu);
}

/**
 * The log-likelihood as a function of mu for one sigma. The walk through the ages happens once, so that a
 * grid costs one walk for each sigma and next to nothing for each mu (spans are walked for each mu).
 */
export function weibullLogLikelihoodAt(sample: LifeSample, sigma: number): (mu: number) => number {
  const { oldest, hazard, failures, logDensity } = walkAges(sample, sigma);
  return (mu) => {
    const drift = (oldest - mu) / sigma;
    const survived = hazard === 0 ? 0 : hazard * Math.exp(drift);
    const failed = failures === 0 ? 0 : failures * drift;
    return logDensity + failed - survived + spansLogLikelihood(sample, mu, sigma);
  };
}

/** The sums over ages that don't depend on mu. Powers are taken relative to the oldest age: none overflows. */
function walkAges({ logAge, failed, outlived }: LifeSample, sigma: number) {
  const oldest = logAge.reduce((most, age) => Math.max(most, age), Number.NEGATIVE_INFINITY);
  const logSigma = Math.log(sigma);
  let [hazard, failures, logDensity] = [0, 0, 0];
  for (let row = 0; row < logAge.length; row += 1) {
    const distance = (logAge[row]! - oldest) / sigma;
    hazard += (failed[row]! + outlived[row]!) * Math.exp(distance);
    failures += failed[row]!;
    logDensity += failed[row]! * (distance - logSigma - logAge[row]!);
  }
  return { oldest, hazard, failures, logDensity };
}

function spansLogLikelihood({ spans }: LifeSample, mu: number, sigma: number): number {
  let sum = 0;
  for (let row = 0; row < spans.count.length; row += 1) {
    const hazardFrom = Math.exp((spans.logFrom[row]! - mu) / sigma);
    const gain = spanGain(hazardFrom, spans.logFrom[row]!, spans.logTo[row]!, mu, sigma);
    sum += spans.count[row]! * (logOneMinusExp(-gain) - hazardFrom);
  }
  return sum;
}

function spanGain(hazardFrom: number, logFrom: number, logTo: number, mu: number, sigma: number): number {
  const gain = hazardFrom * Math.expm1((logTo - logFrom) / sigma);
  return hazardFrom > 0 && Number.isFinite(gain) ? gain : Math.exp((logTo - mu) / sigma);
}
