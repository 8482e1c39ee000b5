import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { compareGroups } from '../life/compareGroups.ts';
import { lifeEstimate } from '../life/lifeEstimate.ts';
import { lifePosterior } from '../life/lifePosterior.ts';
import type { LifePrior } from '../life/lifePrior.ts';
import { posteriorAge } from '../life/posteriorQuantiles.ts';
import type { Battery, Life } from '../service/battery.ts';
import type { Banded } from './lifeFigures.ts';
import { dueNowRows, lifeRecords } from './lifeRecords.ts';
import { splitBy } from './planViews.ts';

/** What lives may be grouped by. */
export const LIFE_GROUPINGS = ['type', 'site', 'maker'] as const;
export type LifeGrouping = (typeof LIFE_GROUPINGS)[number];

/** How long the batteries of one group last. */
export type GroupLife = {
  readonly name: string;
  readonly lives: number;
  readonly failures: number;
  /** Age by which half are gone [months], 90 % band. */
  readonly halfGone: Banded;
};

/** Groups side by side, and whether they differ. */
export type LifeByGroup = {
  readonly by: LifeGrouping;
  /** Largest group first. */
  readonly groups: readonly GroupLife[];
  /**
   * Chance that groups which do not differ would look at least so different; undefined where fewer than two groups
   * have failures enough to say.
   */
  readonly chanceAlike?: number;
  /** Groups that the test could not take, for their records alone give no estimate. */
  readonly notCompared: readonly string[];
};

/**
 * How long batteries last by type, site or maker, and a test whether the groups differ.
 * @param batteries  as they stand at as-of
 * @param lives      one for each battery life on record
 * @param prior      belief before the records; the same for each group
 * @param by         what to group by
 * @problem badInput  when a life can't be one, or a figure of the prior is not above 0
 */
export function lifeByGroup(
  batteries: readonly Battery[],
  lives: readonly Life[],
  prior: LifePrior,
  by: LifeGrouping,
): Outcome<LifeByGroup> {
  const dueNow = dueNowRows(batteries);
  const parts = [...splitBy(lives, (life) => life[by])]
    .map(([name, own]) => ({ name, lives: lifeRecords(own, dueNow) }))
    .filter((part) => part.lives.length > 0);
  const groups: GroupLife[] = [];
  for (const { name, lives: records } of parts) {
    const life = lifePosterior(records, prior);
    if (!life.ok) return life;
    const half = posteriorAge(life.value, 0.5);
    const halfGone = { best: half(0.5), low: half(0.05), high: half(0.95) };
    groups.push({ name, lives: life.value.lives, failures: life.value.failures, halfGone });
  }
  groups.sort((a, b) => b.lives - a.lives);
  const able = parts.filter((part) => lifeEstimate(part.lives).ok);
  const notCompared = parts.filter((part) => !able.includes(part)).map(({ name }) => name);
  const found = { by, groups, notCompared };
  if (able.length < 2) return answer(found);
  return andThen(compareGroups(able), ({ equalLives }) =>
    answer({ ...found, chanceAlike: equalLives.chance }),
  );
}
