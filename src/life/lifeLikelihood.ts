import type { LifeSample } from './lifeSample.ts';
import type { StandardLife } from './standardLife.ts';
import { logOneMinusExp } from './standardLife.ts';

/**
 * A log-likelihood and the sums from which its derivatives follow, whatever the parameters are: over all
 * terms g(z), first slopes g' and curvatures g'', each also weighted with z (twice for the last).
 */
export type ZSums = {
  value: number;
  slope: number;
  slopeZ: number;
  curve: number;
  curveZ: number;
  curveZZ: number;
  /** Failures whose age is known exactly; each brings a term -log sigma. */
  exact: number;
};

/** Log-likelihood with its gradient and Hessian in (mu, log sigma). */
export type LikelihoodSlopes = {
  readonly value: number;
  readonly gradient: readonly [mu: number, logSigma: number];
  readonly hessian: readonly [muMu: number, muLogSigma: number, logSigmaLogSigma: number];
};

/** The log-likelihood of a sample at (mu, log sigma) with first and second derivatives, all in closed form. */
export function likelihoodSlopes(
  sample: LifeSample,
  law: StandardLife,
  mu: number,
  logSigma: number,
): LikelihoodSlopes {
  const sigma = Math.exp(logSigma);
  const { value, slope, slopeZ, curve, curveZ, curveZZ, exact } = zSums(sample, law, mu, sigma);
  return {
    value,
    // dz/dmu = -1/sigma and dz/dlogSigma = -z.
    gradient: [-slope / sigma, -slopeZ - exact],
    hessian: [curve / (sigma * sigma), (slope + curveZ) / sigma, slopeZ + curveZZ],
  };
}

/** Log-likelihood of a sample, without derivatives. */
export function logLikelihood(sample: LifeSample, law: StandardLife, mu: number, sigma: number): number {
  return zSums(sample, law, mu, sigma).value;
}

/** The sums over every term of a sample at z = (log age - mu) / sigma. */
export function zSums(sample: LifeSample, law: StandardLife, mu: number, sigma: number): ZSums {
  const sums: ZSums = { value: 0, slope: 0, slopeZ: 0, curve: 0, curveZ: 0, curveZZ: 0, exact: 0 };
  if (law.hazard === Math.exp) addWeibullAges(sums, sample, mu, sigma);
  else addAges(sums, sample, law, mu, sigma);
  for (let row = 0; row < sample.spans.count.length; row += 1) addSpan(sums, sample, row, law, mu, sigma);
  return sums;
}

function addAges(sums: ZSums, sample: LifeSample, law: StandardLife, mu: number, sigma: number): void {
  const logSigma = Math.log(sigma);
  for (let row = 0; row < sample.logAge.length; row += 1) {
    const logAge = sample.logAge[row]!;
    const z = (logAge - mu) / sigma;
    const failed = sample.failed[row]!;
    const outlived = sample.outlived[row]!;
    let [value, slope, curve] = [0, 0, 0];
    if (failed !== 0) {
      value += failed * (law.logDensity(z) - logSigma - logAge);
      slope += failed * law.densitySlope(z);
      curve += failed * law.densityCurve(z);
      sums.exact += failed;
    }
    if (outlived !== 0) {
      value += outlived * law.logSurvival(z);
      slope -= outlived * law.hazard(z);
      curve -= outlived * law.hazardSlope(z);
    }
    addTerm(sums, z, value, slope, curve);
  }
}

function addTerm(sums: ZSums, z: number, value: number, slope: number, curve: number): void {
  sums.value += value;
  sums.slope += slope;
  sums.slopeZ += slope * z;
  sums.curve += curve;
  sums.curveZ += curve * z;
  sums.curveZZ += curve * z * z;
}

// The usual case, and the one for a million rows: one exponential an age, sums in local variables.
function addWeibullAges(sums: ZSums, sample: LifeSample, mu: number, sigma: number): void {
  const { logAge, failed, outlived } = sample;
  let [hazard, hazardZ, hazardZZ, failures, failedZ, failedLogAge] = [0, 0, 0, 0, 0, 0];
  for (let row = 0; row < logAge.length; row += 1) {
    const z = (logAge[row]! - mu) / sigma;
    const count = failed[row]!;
    const each = (count + outlived[row]!) * Math.exp(z);
    hazard += each;
    hazardZ += each * z;
    hazardZZ += each * z * z;
    failures += count;
    failedZ += count * z;
    failedLogAge += count * logAge[row]!;
  }
  sums.value += failedZ - failures * Math.log(sigma) - failedLogAge - hazard;
  sums.slope += failures - hazard;
  sums.slopeZ += failedZ - hazardZ;
  sums.curve -= hazard;
  sums.curveZ -= hazardZ;
  sums.curveZZ -= hazardZZ;
  sums.exact += failures;
}

/** log(S(from) - S(to)) in z; `from` is -Infinity where the life began at age 0. */
export function spanLogChance(law: StandardLife, from: number, to: number): number {
  if (from === Number.NEGATIVE_INFINITY) return logOneMinusExp(law.logSurvival(to));
  const outlived = law.logSurvival(from);
  return outlived + logOneMinusExp(law.logSurvival(to) - outlived);
}

/**
 * One span. With a and b the densities at its two ends as shares of the chance between them, the slopes of
 * its log are -a and b, and the curvatures follow from these.
 */
function addSpan(
  sums: ZSums,
  { spans }: LifeSample,
  row: number,
  law: StandardLife,
  mu: number,
  sigma: number,
): void {
  const count = spans.count[row]!;
  const isLeft = spans.logFrom[row]! === Number.NEGATIVE_INFINITY;
  const [from, to] = [(spans.logFrom[row]! - mu) / sigma, (spans.logTo[row]! - mu) / sigma];
  const value = spanLogChance(law, from, to);
  const a = isLeft ? 0 : Math.exp(law.logDensity(from) - value);
  const b = Math.exp(law.logDensity(to) - value);
  // Where the span begins at age 0 that end has no weight, and its z must not enter as infinity.
  const start = isLeft ? 0 : from;
  const startCurve = -a * (law.densitySlope(start) + a);
  const endCurve = b * (law.densitySlope(to) - b);
  sums.value += count * value;
  sums.slope += count * (b - a);
  sums.slopeZ += count * (b * to - a * start);
  sums.curve += count * (startCurve + 2 * a * b + endCurve);
  sums.curveZ += count * (startCurve * start + a * b * (start + to) + endCurve * to);
  sums.curveZZ += count * (startCurve * start * start + 2 * a * b * start * to + endCurve * to * to);
}
