import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { ascend, ascendMu } from './lifeAscent.ts';
import type { NoEstimate } from './lifeExistence.ts';
import { noEstimateOf, vanishingShapeLogLikelihood } from './lifeExistence.ts';
import type { LifeRecord } from './lifeRecord.ts';
import type { LifeSample } from './lifeSample.ts';
import { lifeSample } from './lifeSample.ts';
import type { LifeStart } from './lifeStarts.ts';
import { lifeStarts, middlingStart, muFor, thinned } from './lifeStarts.ts';
import type { Peak } from './newtonAscent.ts';
import type { StandardLife } from './standardLife.ts';
import { smallestExtremeValue, standardNormal } from './standardLife.ts';

/** The models of life that can be fitted. An exponential life is a Weibull life of shape 1. */
export type LifeModel = 'weibull' | 'lognormal' | 'exponential';

/** A life fitted by maximum likelihood: mu and sigma of log age (Weibull: mu = log scale, sigma = 1/shape). */
export type LifeEstimate = {
  readonly model: LifeModel;
  readonly mu: number;
  readonly sigma: number;
  /** Variances and covariance of (mu, log sigma) from the curvature of the likelihood; 0 for a known sigma. */
  readonly varianceMu: number;
  readonly varianceLogSigma: number;
  readonly covariance: number;
  readonly logLikelihood: number;
  readonly lives: number;
  readonly failures: number;
};

/** The law of (log age - mu) / sigma under a model. */
export function lawOf(model: LifeModel): StandardLife {
  return model === 'lognormal' ? standardNormal : smallestExtremeValue;
}

/**
 * The life of greatest likelihood for records of all four kinds with late entry, by Newton's method from
 * several starts. It assumes one law for all records, and that good batteries taken out for other reasons
 * were no worse than those that stayed.
 * @param records  lives, ages in one unit [months as a rule]
 * @param model    `weibull` (default), `lognormal` or `exponential`
 * @returns mu, sigma, their variances and the log-likelihood
 * @problem badInput  when a record can't be a life
 * @problem notEnoughData  when nothing failed, when one age agrees with every record, or when no wear shows
 * @source meekerEscobar1998 chapters 8 and 11 (censoring of all kinds, truncation; from memory)
 * @example lifeEstimate([30, 41.5].map((age) => ({ entry: 0, from: age, to: age, kind: 'exact', count: 1 }))).ok // true
 */
export function lifeEstimate(
  records: readonly LifeRecord[],
  model: LifeModel = 'weibull',
): Outcome<LifeEstimate> {
  return andThen(lifeSample(records), (sample) => estimateOfSample(sample, model));
}

/** The same for lives that are already counted by age. */
export function estimateOfSample(sample: LifeSample, model: LifeModel = 'weibull'): Outcome<LifeEstimate> {
  if (model === 'exponential') return estimateAtSigma(sample, 1, model);
  const none = noEstimateOf(sample);
  if (none !== undefined) return noEstimate(none);
  const law = lawOf(model);
  const best = highest(startsFor(sample, model).map((start) => ascend(sample, law, start)));
  if (best === undefined) return noEstimate('noWearSeen');
  if (model === 'weibull' && vanishingShapeLogLikelihood(sample) > best.value)
    return noEstimate('noWearSeen');
  const [mu, logSigma] = best.point;
  const [[varianceMu, covariance], [, varianceLogSigma]] = best.spread as [
    [number, number],
    [number, number],
  ];
  return answer({
    ...{ model, mu: mu!, sigma: Math.exp(logSigma!), varianceMu, varianceLogSigma, covariance },
    ...{ logLikelihood: best.value, lives: sample.lives, failures: sample.failures },
  });
}

/** The life of greatest likelihood among those of a known sigma (Weibull: 1 / shape). */
export function estimateAtSigma(
  sample: LifeSample,
  sigma: number,
  model: LifeModel = 'weibull',
): Outcome<LifeEstimate> {
  if (sample.failures === 0) return noEstimate('noFailures');
  // Only lives that failed before their first look: the scale runs to 0.
  if (sample.bounds.latestFrom === 0) return noEstimate('oneAgeFitsAll');
  const peak = ascendMu(sample, lawOf(model), Math.log(sigma), muFor(sample, sigma));
  if (peak === undefined) return problem('noConvergence', 'noConvergence', 'life');
  return answer({
    ...{
      model,
      mu: peak.point[0]!,
      sigma,
      varianceMu: peak.spread[0]![0]!,
      varianceLogSigma: 0,
      covariance: 0,
    },
    ...{ logLikelihood: peak.value, lives: sample.lives, failures: sample.failures },
  });
}

/** Long samples begin where a thinned one ends; the others at every summit of a coarse search. */
function startsFor(sample: LifeSample, model: LifeModel): readonly LifeStart[] {
  const thin = thinned(sample);
  if (thin === undefined) return lifeStarts(sample, lawOf(model));
  const near = estimateOfSample(thin, model);
  return [near.ok ? [near.value.mu, Math.log(near.value.sigma)] : middlingStart(sample)];
}

function noEstimate(because: NoEstimate): Outcome<LifeEstimate> {
  return problem('notEnoughData', because, 'life');
}

function highest(peaks: readonly (Peak | undefined)[]): Peak | undefined {
  const found = peaks.filter((peak) => peak !== undefined);
  return found.sort((a, b) => b.value - a.value)[0];
}
