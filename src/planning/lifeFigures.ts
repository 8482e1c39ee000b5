import { lifeEstimate } from '../life/lifeEstimate.ts';
import { FEWEST_FAILURES_FOR_DATA } from '../life/lifeFit.ts';
import type { LifePosterior } from '../life/lifePosterior.ts';
import type { LifeRecord } from '../life/lifeRecord.ts';
import type { BeliefQuantile } from '../life/posteriorQuantiles.ts';
import { posteriorAge, posteriorScale, posteriorShape } from '../life/posteriorQuantiles.ts';
import { weibullQuantile } from '../life/weibull.ts';

/** A figure with its 90 % band. */
export type Banded = { readonly best: number; readonly low: number; readonly high: number };

/** What the records and the prior say about how long batteries last. */
export type PlanLife = {
  readonly model: 'weibull';
  /** Maximum likelihood from 5 failures on, else the posterior medians. */
  readonly shape: number;
  readonly scale: number;
  readonly median: number;
  readonly basis: 'data' | 'prior and data';
  readonly failures: number;
  readonly lives: number;
  /** Prior plus data: wear-out, age by which half and one in ten are gone [months]. */
  readonly wearOut: Banded;
  readonly halfGone: Banded;
  readonly tenthGone: Banded;
  /** Oldest age at which a failure is on record [months]; 0 = none. */
  readonly oldestFailure: number;
  /** The same figures with removals of unstated cause counted as failures, where there are any. */
  readonly ifNotSaidFailed?: { readonly shape: number; readonly scale: number; readonly median: number };
};

/** How long batteries last, in figures, from what is believed and the records behind it. */
export function lifeFigures(belief: LifePosterior, records: readonly LifeRecord[]): PlanLife {
  const [shape, scale] = [posteriorShape(belief), posteriorScale(belief)];
  const [half, tenth] = [posteriorAge(belief, 0.5), posteriorAge(belief, 0.1)];
  const fit = belief.failures >= FEWEST_FAILURES_FOR_DATA ? mostLikely(records) : undefined;
  const [bestShape, bestScale] = fit ?? [shape(0.5), scale(0.5)];
  return {
    model: 'weibull',
    shape: bestShape,
    scale: bestScale,
    median: fit === undefined ? half(0.5) : weibullQuantile(0.5, bestShape, bestScale),
    basis: fit === undefined ? 'prior and data' : 'data',
    failures: belief.failures,
    lives: belief.lives,
    wearOut: banded(shape),
    halfGone: banded(half),
    tenthGone: banded(tenth),
    oldestFailure: oldestFailure(records),
  };
}

/** Oldest age at which a failure is on record [months]; 0 = none. */
function oldestFailure(records: readonly LifeRecord[]): number {
  return records.reduce((oldest, { kind, to }) => (kind === 'right' ? oldest : Math.max(oldest, to)), 0);
}

const banded = (belief: BeliefQuantile): Banded => ({
  best: belief(0.5),
  low: belief(0.05),
  high: belief(0.95),
});

/** Shape and scale of maximum likelihood, or nothing where the records have no finite one. */
function mostLikely(records: readonly LifeRecord[]): [number, number] | undefined {
  const fit = lifeEstimate(records);
  return fit.ok ? [1 / fit.value.sigma, Math.exp(fit.value.mu)] : undefined;
}
