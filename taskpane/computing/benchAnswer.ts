import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import type { BenchIdentity } from '../../src/inventory/benchBattery.ts';
import { benchBattery } from '../../src/inventory/benchBattery.ts';
import type { SetMates } from '../../src/inventory/setMates.ts';
import { setMates } from '../../src/inventory/setMates.ts';
import type { Settings } from '../../src/inventory/settings.ts';
import type { Memory } from './memory.ts';

/** The battery on the bench with everything that the inventory knows about it and its set. */
export type BenchFound = BenchIdentity & {
  readonly set: SetMates;
  /** What to do with its set when it is condemned. */
  readonly ifCondemned: readonly string[];
  /** Coldest and average temperature of its place [C], where they were said. */
  readonly coldest?: number;
  readonly average?: number;
};

const NO_SET: SetMates = { name: '', mates: [], advice: [] };

/** Who the battery on the bench is; without an inventory only what its label says. */
export function benchAnswer(memory: Memory, text: string): Outcome<BenchFound> {
  const batteries = memory.inventory?.batteries ?? [];
  return andThen(benchBattery(text, batteries), (identity) => {
    const { battery } = identity;
    if (battery === undefined) return answer<BenchFound>({ ...identity, set: NO_SET, ifCondemned: [] });
    const { coldest, average } = siteOf(memory.settings, battery.site);
    return answer<BenchFound>({
      ...identity,
      // What an older test said of it is no advice now: the bench judges anew.
      set: setMates(battery, batteries, 'Not judged'),
      ifCondemned: setMates(battery, batteries, 'Condemned').advice,
      ...(coldest !== undefined && { coldest }),
      ...(average !== undefined && { average }),
    });
  });
}

/** The serial in a row of the inventory's sheet, or undefined where that row is no battery or has none. */
export function serialOfRowAnswer(memory: Memory, row: number): string | undefined {
  const battery = memory.inventory?.batteries.find((each) => each.row === row);
  return battery?.serial === '' ? undefined : battery?.serial;
}

function siteOf(
  settings: Settings | undefined,
  site: string,
): { readonly coldest?: number | undefined; readonly average?: number | undefined } {
  return settings?.sites[site] ?? {};
}
