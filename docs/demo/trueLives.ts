import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import type { LifeRecord } from '../../src/life/lifeRecord.ts';
import type { DemoBattery } from './fleet.ts';
import { recordedStints, watchedFrom } from './register.ts';
import { AS_OF } from './service.ts';

/** The lives as a register without dirt would show them, ages in months. */
export function trueLives(batteries: readonly DemoBattery[]): readonly LifeRecord[] {
  return batteries.flatMap((battery) => {
    const [first] = recordedStints(battery);
    if (first === undefined) return [];
    const entry = ageAt(battery, Math.max(first.from, watchedFrom(first.vehicle.site)));
    const age = ageAt(battery, AS_OF);
    const failed = battery.stints.at(-1)!.cause === 'failed';
    return age <= entry ? [] : [{ entry, from: age, to: age, kind: failed ? 'exact' : 'right', count: 1 }];
  });
}

/** Ages of the batteries in service at as-of [months]. */
export function agesInService(batteries: readonly DemoBattery[]): readonly number[] {
  const open = batteries.filter(({ stints }) => stints.length > 0 && stints.at(-1)!.to === undefined);
  return open.map((battery) => ageAt(battery, AS_OF));
}

// Time between two stays is spent on a shelf and doesn't count.
function ageAt({ stints }: DemoBattery, day: number): number {
  const days = stints.map(({ from, to = AS_OF }) => Math.max(0, Math.min(to, day) - from));
  return days.reduce((sum, stay) => sum + stay, 0) / DAYS_PER_MONTH;
}
