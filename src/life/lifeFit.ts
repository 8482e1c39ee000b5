import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { properShare } from './lifeArguments.ts';
import type { LifeEstimate, LifeModel } from './lifeEstimate.ts';
import { estimateOfSample } from './lifeEstimate.ts';
import type { Limits } from './lifeLimits.ts';
import { lifeQuantile, quantileLimits, sigmaLimits } from './lifeLimits.ts';
import { posteriorOfSample } from './lifePosterior.ts';
import type { LifeRecord } from './lifeRecord.ts';
import type { LifeSample } from './lifeSample.ts';
import { lifeSample } from './lifeSample.ts';
import type { BeliefQuantile } from './posteriorQuantiles.ts';
import { posteriorAge, posteriorScale, posteriorShape } from './posteriorQuantiles.ts';

/** The models that a fit may be asked for. */
export type FitModel = Exclude<LifeModel, 'exponential'>;

/** A figure of a fitted life; a limit that the records don't set is undefined. */
export type LifeFigure = Limits & { readonly name: LifeFigureName; readonly estimate: number };

/** Weibull: shape and scale; lognormal: mu and sigma; then both ages. */
export type LifeFigureName = 'shape' | 'scale' | 'mu' | 'sigma' | 'median life' | 'tenth-percentile life';

/** A fitted life as a reader sees it. */
export type LifeFit = {
  readonly model: FitModel;
  readonly figures: readonly LifeFigure[];
  readonly failures: number;
  readonly lives: number;
  /** Only where the data alone were fitted. */
  readonly logLikelihood?: number;
  readonly basis: 'data' | 'prior and data';
};

/** Under so many failures the data alone don't give a life worth showing. Own judgement. */
export const FEWEST_FAILURES_FOR_DATA = 5;

const USUAL_LEVEL = 0.9;
const SCALE_SHARE = -Math.expm1(-1);

/**
 * The Weibull or lognormal life of a fleet from its removal history, with limits. With five failures or more it is the
 * life of greatest likelihood (limits by profile under 20 failures, by Wald from 20 on); with fewer, or where the
 * records give no shape, the medians and limits of the usual prior belief and the records together. It assumes one law
 * for all, ages in months, and that good batteries taken out were no worse than those that stayed.
 * @param records  lives, ages in months; a life counts from the age at which it came under record
 * @param model    `weibull` (default) or `lognormal`
 * @param level    confidence that low and high hold, above 0 and below 1; default 0.9
 * @returns four figures with limits, failures, lives, log-likelihood, and whether the prior was needed
 * @problem badInput    when a record can't be a life
 * @problem outOfRange  when the level is not between 0 and 1
 * @problem notEnoughData  when nothing failed, or a lognormal life is asked for from too few failures
 * @source meekerEscobar1998 chapter 8 (limits from the likelihood; from memory)
 * @example lifeFit([20, 30, 40, 50, 60].map((age) => ({ entry: 0, from: age, to: age, kind: 'exact', count: 1 }))).value.figures[0].estimate // 3.196
 */
export function lifeFit(
  records: readonly LifeRecord[],
  model: FitModel = 'weibull',
  level = USUAL_LEVEL,
): Outcome<LifeFit> {
  return andThen(lifeSample(records), (sample) => lifeFitOfSample(sample, model, level));
}

/** The same for lives that are already counted by age. */
export function lifeFitOfSample(
  sample: LifeSample,
  model: FitModel = 'weibull',
  level = USUAL_LEVEL,
): Outcome<LifeFit> {
  return andThen(properShare(level, 'level'), () => {
    if (sample.lives === 0) return problem('notEnoughData', 'noLives', 'life');
    const fit = estimateOfSample(sample, model);
    if (fit.ok && sample.failures >= FEWEST_FAILURES_FOR_DATA)
      return answer(fromData(sample, fit.value, level));
    if (sample.failures === 0) return problem('notEnoughData', 'noFailures', 'life');
    if (model === 'weibull') return answer(fromPriorAndData(sample, level));
    if (!fit.ok) return fit;
    return problem('notEnoughData', 'tooFewForLognormal', 'life', sample.failures);
  });
}

/**
 * The model that a user named; a blank means Weibull.
 * @problem badInput  when it is neither weibull nor lognormal
 */
export function fitModel(given: unknown): Outcome<FitModel> {
  const word = String(given ?? '')
    .trim()
    .toLowerCase();
  if (word === '' || word === 'weibull') return answer('weibull');
  if (word === 'lognormal') return answer(word);
  return problem('badInput', 'notAWord', 'model', given, { more: { allowed: '"weibull" or "lognormal"' } });
}

function fromData(sample: LifeSample, fit: LifeEstimate, level: number): LifeFit {
  const ageOf = (name: LifeFigureName, share: number): LifeFigure => ({
    name,
    estimate: lifeQuantile(fit, share),
    ...quantileLimits(sample, fit, share, level),
  });
  const parameters =
    fit.model === 'lognormal'
      ? lognormalFigures(sample, fit, level)
      : [shapeFigure(sample, fit, level), ageOf('scale', SCALE_SHARE)];
  return {
    model: fit.model === 'lognormal' ? 'lognormal' : 'weibull',
    figures: [...parameters, ageOf('median life', 0.5), ageOf('tenth-percentile life', 0.1)],
    failures: fit.failures,
    lives: fit.lives,
    logLikelihood: fit.logLikelihood,
    basis: 'data',
  };
}

function shapeFigure(sample: LifeSample, fit: LifeEstimate, level: number): LifeFigure {
  const { low, high } = sigmaLimits(sample, fit, level);
  return {
    name: 'shape',
    estimate: 1 / fit.sigma,
    low: mapped(high, (x) => 1 / x),
    high: mapped(low, (x) => 1 / x),
  };
}

function lognormalFigures(sample: LifeSample, fit: LifeEstimate, level: number): LifeFigure[] {
  const median = quantileLimits(sample, fit, 0.5, level);
  return [
    { name: 'mu', estimate: fit.mu, low: mapped(median.low, Math.log), high: mapped(median.high, Math.log) },
    { name: 'sigma', estimate: fit.sigma, ...sigmaLimits(sample, fit, level) },
  ];
}

const mapped = (value: number | undefined, by: (value: number) => number): number | undefined =>
  value === undefined ? undefined : by(value);

function fromPriorAndData(sample: LifeSample, level: number): LifeFit {
  const posterior = posteriorOfSample(sample);
  const figure = (name: LifeFigureName, belief: BeliefQuantile): LifeFigure => ({
    name,
    estimate: belief(0.5),
    low: belief((1 - level) / 2),
    high: belief((1 + level) / 2),
  });
  return {
    model: 'weibull',
    figures: [
      figure('shape', posteriorShape(posterior)),
      figure('scale', posteriorScale(posterior)),
      figure('median life', posteriorAge(posterior, 0.5)),
      figure('tenth-percentile life', posteriorAge(posterior, 0.1)),
    ],
    failures: sample.failures,
    lives: sample.lives,
    basis: 'prior and data',
  };
}
