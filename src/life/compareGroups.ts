import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { LifeEstimate } from './lifeEstimate.ts';
import { lifeEstimate } from './lifeEstimate.ts';
import type { LifeRecord } from './lifeRecord.ts';
import { lifeRegression } from './lifeRegression.ts';
import type { ChiSquareTest } from './likelihoodRatio.ts';
import { likelihoodRatio } from './likelihoodRatio.ts';
import type { LogRank } from './logRank.ts';
import { logRank } from './logRank.ts';

/** The lives of one group: a site, a maker. */
export type LifeGroup = { readonly name: string; readonly lives: readonly LifeRecord[] };

/** How groups differ. */
export type GroupComparison = {
  readonly groups: readonly { readonly name: string; readonly estimate: LifeEstimate }[];
  /** Log-likelihoods with a life for each group, with one shape for all, and with one life for all. */
  readonly separate: number;
  readonly commonShape: number;
  readonly pooled: number;
  /** One life for all against a life for each. */
  readonly equalLives: ChiSquareTest;
  /** One shape for all against a shape for each: where it fails (chance under 0.01) no shape serves all. */
  readonly equalShape: ChiSquareTest;
  /** Without a model; only where every life was seen from new and failures have a known age. */
  readonly logRank?: LogRank;
};

/**
 * Whether groups of lives differ, and whether in wear-out too: likelihood ratios of Weibull lives fitted together and
 * apart, which stand with late records, and the log-rank test where lives were seen from new.
 * @param groups  at least two groups, each with an estimate of its own
 * @returns the fits and the tests
 * @problem badInput    when a record can't be a life
 * @problem notEnoughData  when there are fewer than two groups, or one of them gives no estimate
 * @source meekerEscobar1998 chapter 8 (likelihood-ratio comparison; from memory)
 * @example compareGroups([[20, 30, 40], [50, 60, 90]].map((ages, i) => ({ name: `site ${i}`, lives: ages.map((age) => ({ entry: 0, from: age, to: age, kind: 'exact', count: 1 })) }))).value.equalLives.degreesOfFreedom // 2
 */
export function compareGroups(groups: readonly LifeGroup[]): Outcome<GroupComparison> {
  if (groups.length < 2) return problem('notEnoughData', 'oneGroup', 'groups');
  const fits = groups.map(({ name, lives }) => ({ name, fit: lifeEstimate(lives) }));
  const estimates = fits.flatMap(({ name, fit }) => (fit.ok ? [{ name, estimate: fit.value }] : []));
  const without = fits.find(({ fit }) => !fit.ok);
  if (without !== undefined && !without.fit.ok) {
    const { kind } = without.fit.problem;
    return kind === 'badInput' ? without.fit : problem(kind, 'groupWithoutLife', 'groups', without.name);
  }
  return andThen(oneShape(groups), ({ logLikelihood: commonShape, logLikelihoodNone: pooled }) =>
    answer(comparison(groups, estimates, commonShape, pooled)),
  );
}

/** A regression on "is of this group" for each group but the first. */
function oneShape(groups: readonly LifeGroup[]) {
  const lives = groups.flatMap(({ lives: ofGroup }, group) => {
    const covariates = groups.slice(1).map((_, other) => (other + 1 === group ? 1 : 0));
    return ofGroup.map((record) => ({ record, covariates }));
  });
  return lifeRegression(lives);
}

function comparison(
  groups: readonly LifeGroup[],
  estimates: GroupComparison['groups'],
  commonShape: number,
  pooled: number,
): GroupComparison {
  const separate = estimates.reduce((sum, { estimate }) => sum + estimate.logLikelihood, 0);
  const more = groups.length - 1;
  const ranks = logRank(groups.map(({ lives }) => lives));
  return {
    ...{ groups: estimates, separate, commonShape, pooled },
    equalLives: likelihoodRatio(pooled, separate, 2 * more),
    equalShape: likelihoodRatio(commonShape, separate, more),
    ...(ranks.ok ? { logRank: ranks.value } : {}),
  };
}
