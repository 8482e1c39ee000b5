import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { lifePosterior } from '../life/lifePosterior.ts';
import type { LifePrior } from '../life/lifePrior.ts';
import type { Life } from '../service/battery.ts';
import type { PlanLife } from './lifeFigures.ts';
import { lifeFigures } from './lifeFigures.ts';
import { lifeRecords } from './lifeRecords.ts';
import type { Place } from './places.ts';
import type { PlanSettings } from './planSettings.ts';
import type { LifeGroup } from './planViews.ts';
import { splitBy } from './planViews.ts';

/** What the groups of a plan are made from. */
export type LifeRequest = { readonly settings: PlanSettings; readonly prior: LifePrior };

/** The places that share one belief about life, each group with the belief that its own lives and the prior give. */
export function lifeGroups(
  places: readonly Place[],
  lives: readonly Life[],
  dueNow: ReadonlySet<number>,
  { settings, prior }: LifeRequest,
): Outcome<readonly LifeGroup[]> {
  const { groupBy } = settings;
  const groups: LifeGroup[] = [];
  for (const [name, members] of splitBy(places, ({ battery }) =>
    groupBy === null ? '' : battery[groupBy],
  )) {
    const own = groupBy === null ? lives : lives.filter((life) => life[groupBy] === name);
    const life = lifePosterior(lifeRecords(own, dueNow), prior);
    if (!life.ok) return life;
    groups.push({ name, life: life.value, places: members });
  }
  return answer(groups);
}

/** How long batteries last here, all groups pooled. */
export function planLife(
  lives: readonly Life[],
  dueNow: ReadonlySet<number>,
  prior: LifePrior,
): Outcome<PlanLife> {
  const records = (notSaidFails: boolean) => lifeRecords(lives, dueNow, notSaidFails);
  const pooled = (notSaidFails: boolean) => lifePosterior(records(notSaidFails), prior);
  return andThen(pooled(false), (life) => {
    const figures = lifeFigures(life, records(false));
    if (!lives.some(({ meaning }) => meaning === 'notSaid')) return answer(figures);
    return andThen(pooled(true), (other) => {
      const { shape, scale, median } = lifeFigures(other, records(true));
      return answer({ ...figures, ifNotSaidFailed: { shape, scale, median } });
    });
  });
}
