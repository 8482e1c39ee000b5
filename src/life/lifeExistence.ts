import type { LifeSample } from './lifeSample.ts';

/** Why records alone give no life: nothing failed, or the likelihood rises without end. */
export type NoEstimate = 'noFailures' | 'oneAgeFitsAll' | 'noWearSeen';

/**
 * Whether the likelihood of shape and scale can have a maximum, judged before any step is taken. Without a
 * failure the scale runs to infinity. Where one age agrees with every record (all failures can lie at it and
 * nothing is known to have outlived it) the shape runs to infinity.
 */
export function noEstimateOf(sample: LifeSample): NoEstimate | undefined {
  if (sample.failures === 0) return 'noFailures';
  const { latestFrom, earliestTo } = sample.bounds;
  return latestFrom <= earliestTo ? 'oneAgeFitsAll' : undefined;
}

/**
 * Log-likelihood that a Weibull tends to as its shape runs to 0 while every life came under record late: a
 * hazard of c / age. A fit below it is only a local one. -Infinity where some life was seen from new or a
 * failure is not known exactly.
 */
export function vanishingShapeLogLikelihood({ logAge, failed, outlived, spans, bounds }: LifeSample): number {
  if (!bounds.allEnteredLate || spans.count.length > 0) return Number.NEGATIVE_INFINITY;
  let [failures, exposure, failedLogAge] = [0, 0, 0];
  for (let row = 0; row < logAge.length; row += 1) {
    failures += failed[row]!;
    exposure += (failed[row]! + outlived[row]!) * logAge[row]!;
    failedLogAge += failed[row]! * logAge[row]!;
  }
  return failures * (Math.log(failures / exposure) - 1) - failedLogAge;
}
