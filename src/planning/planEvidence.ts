import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import type { LifePrior } from '../life/lifePrior.ts';
import type { Grouping, OddGroup } from '../life/standsOut.ts';
import { standsOut } from '../life/standsOut.ts';
import type { Life } from '../service/battery.ts';
import type { PastTrial } from './ownPast.ts';
import { ownPast } from './ownPast.ts';

/** Lots are numbered by their makers, vehicles within their site: a name alone would join strangers. */
const GROUPINGS: readonly Grouping<Life>[] = [
  { kind: 'lot', groupOf: ({ maker, lot }) => (lot === '' ? '' : `${maker} ${lot}`.trim()) },
  { kind: 'maker', groupOf: ({ maker }) => maker },
  { kind: 'site', groupOf: ({ site }) => site },
  {
    kind: 'vehicle',
    groupOf: ({ site, vehicle }) => (vehicle === '' ? '' : `${vehicle} (${site || 'no site'})`),
  },
];

/**
 * The tool's method tried on the fleet's own past; see `ownPast`. Only removals count as failures: a battery that is due
 * now has its like among those that were due then and were removed since, and would be counted once too often.
 */
export function planOwnPast(lives: readonly Life[], asOf: Day, prior: LifePrior): Outcome<PastTrial[]> {
  const watched = lives.filter(({ to, entry }) => to > entry);
  return ownPast(
    watched.map((life) => ({ ...life, failed: isFailure(life, NONE_DUE) })),
    asOf,
    prior,
  );
}

const NONE_DUE: ReadonlySet<number> = new Set();

/** Lots, makers, sites and vehicles with more early failures than chance explains; see `standsOut`. */
export function planStandsOut(lives: readonly Life[], dueNow: ReadonlySet<number>): OddGroup[] {
  return standsOut(
    lives.map((life) => ({ ...life, failed: isFailure(life, dueNow) })),
    GROUPINGS,
  );
}

function isFailure({ row, removed, meaning }: Life, dueNow: ReadonlySet<number>): boolean {
  return removed === undefined ? dueNow.has(row) : meaning === 'failed';
}
