import chisquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { aboveZero, every, properShare } from './lifeArguments.ts';
import { estimateAtSigma } from './lifeEstimate.ts';
import type { LifeRecord } from './lifeRecord.ts';
import type { LifeSample } from './lifeSample.ts';
import { lifeSample } from './lifeSample.ts';
import { muFor } from './lifeStarts.ts';

/** A Weibull life whose shape is taken as known; `scale` and `high` need a failure. */
export type FixedShapeLife = {
  readonly shape: number;
  readonly lives: number;
  readonly failures: number;
  /** Sum of age^shape less that of the ages at which lives came under record. */
  readonly exposure: number;
  readonly scale?: number;
  readonly logLikelihood?: number;
  /** One-sided limits of the scale, each at the level. */
  readonly low: number;
  readonly high?: number;
};

/**
 * The Weibull scale when the shape is known from elsewhere, with one-sided limits that stand even without a failure.
 * Ages must be known exactly or outlived; late entry is allowed.
 * @param records  lives, ages in one unit [months as a rule]
 * @param shape    known shape, above 0
 * @param level    confidence of each limit, above 0 and below 1; default 0.95
 * @returns scale, its one-sided lower limit (chi-square with 2r + 2 degrees of freedom, records ending at a set time)
 * and upper limit (2r)
 * @problem badInput    when a record can't be a life, or an age is known only between two others
 * @problem outOfRange  when shape or level is not allowed
 * @problem notEnoughData  when no life on record lasted any time
 * @source nelson1985 life data with known shape and few or no failures (from memory)
 * @example fixedShapeLife([{ entry: 0, from: 12, to: 12, kind: 'right', count: 300 }], 2).value.low // 120.1
 */
export function fixedShapeLife(
  records: readonly LifeRecord[],
  shape: number,
  level = 0.95,
): Outcome<FixedShapeLife> {
  return andThen(every(aboveZero(shape, 'shape'), properShare(level, 'level')), () =>
    andThen(lifeSample(records), (sample) => {
      if (sample.spans.count.length > 0) return problem('badInput', 'agesNotExact', 'life');
      if (sample.lives === 0) return problem('notEnoughData', 'noLives', 'life');
      return answer(withLimits(sample, shape, level));
    }),
  );
}

function withLimits(sample: LifeSample, shape: number, level: number): FixedShapeLife {
  const { lives, failures } = sample;
  // A power of an age may be too large for a number: its log is kept.
  const logExposure = shape * muFor({ ...sample, failures: 1 }, 1 / shape);
  const scaleAt = (divisor: number): number => Math.exp((logExposure - Math.log(divisor)) / shape);
  const low = scaleAt(chisquareQuantile(level, 2 * failures + 2) / 2);
  const found = { shape, lives, failures, exposure: Math.exp(logExposure), low };
  const fit = estimateAtSigma(sample, 1 / shape);
  if (!fit.ok) return found;
  const high = scaleAt(chisquareQuantile(1 - level, 2 * failures) / 2);
  return { ...found, scale: Math.exp(fit.value.mu), logLikelihood: fit.value.logLikelihood, high };
}
