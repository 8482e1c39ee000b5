import type { LifeRecord } from '../life/lifeRecord.ts';
import { collapseRecords } from '../life/lifeRecord.ts';
import type { Battery, Life } from '../service/battery.ts';

/** Rows of batteries that are condemned but still in service: they have failed, though nobody took them out yet. */
export function dueNowRows(batteries: readonly Battery[]): Set<number> {
  return new Set(batteries.filter(isDueNow).map(({ row }) => row));
}

/** Condemned and still in a vehicle: to be replaced now. */
export function isDueNow(battery: Battery): boolean {
  return battery.whereabouts === 'inService' && battery.verdict === 'Condemned';
}

/**
 * Battery lives as life statistics take them, equal ones counted together. A removal that failed ends a life; any
 * other cause, or a battery still in service, only says that it lived so long. Lives that were not watched at all
 * (they came under record on the day they left it) carry no weight and are left out.
 * @param lives         from the inventory
 * @param dueNow        rows that count as failed at as-of
 * @param notSaidFails  what a removal without a stated cause counts as; as good unless the planner looks at the other case
 */
export function lifeRecords(
  lives: readonly Life[],
  dueNow: ReadonlySet<number>,
  notSaidFails = false,
): LifeRecord[] {
  const records: LifeRecord[] = [];
  for (const life of lives) {
    if (!(life.to > life.entry)) continue;
    records.push(recordOf(life, hasFailed(life, dueNow, notSaidFails)));
  }
  return collapseRecords(records);
}

function hasFailed(life: Life, dueNow: ReadonlySet<number>, notSaidFails: boolean): boolean {
  if (life.removed === undefined) return dueNow.has(life.row);
  return life.meaning === 'failed' || (notSaidFails && life.meaning === 'notSaid');
}

function recordOf({ entry, from, to }: Life, failed: boolean): LifeRecord {
  // A good battery known to have left within a month was good at least until the month began.
  if (!failed) return { entry: Math.min(entry, from), from, to: from, kind: 'right', count: 1 };
  const start = Math.max(from, entry);
  return { entry, from: start, to, kind: to > start ? 'interval' : 'exact', count: 1 };
}
