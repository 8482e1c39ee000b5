import type { CountWindow } from './countCells.ts';
import type { Demand } from './demand.ts';
import { sumOfDemands } from './demand.ts';
import type { CountParts } from './groupWork.ts';
import { lotsOf } from './lots.ts';
import type { Fleet } from './planViews.ts';
import { forecastLots } from './planViews.ts';

/** What the whole fleet will need in each window that a plan asks about. */
export type FleetForecast = {
  readonly demand: (window: CountWindow) => Demand;
  /** Of the expected count: good batteries renewed with a failed mate, batteries renewed at the planned age. */
  readonly part: (window: CountWindow, part: keyof CountParts) => number;
};

/**
 * The forecast of the whole fleet, once for all windows: what costs is each life that may be true, and it is the same
 * for all of them. Groups have their own beliefs about life, so their demands are added as independent ones.
 * @param fleet    places with the belief about their life, and the rule of renewal
 * @param windows  all stretches of time that will be asked about [months]; equal ones are counted once
 */
export function fleetForecast(fleet: Fleet, windows: readonly CountWindow[]): FleetForecast {
  const names = new Map(windows.map((window) => [windowName(window), window]));
  const each = [...names.values()];
  const groups = fleet.groups.map(
    ({ life, places }) => forecastLots([lotsOf(places, fleet.rule.wholeSets)], life, fleet, each)[0]!,
  );
  const demands = each.map((_, index) => sumOfDemands(groups.map((group) => group.demands[index]!)));
  const indexOf = new Map([...names.keys()].map((name, index) => [name, index]));
  const found = (window: CountWindow): number => {
    const index = indexOf.get(windowName(window));
    if (index === undefined) throw new Error(`no forecast was made of ${windowName(window)}`);
    return index;
  };
  return {
    demand: (window) => demands[found(window)]!,
    part: (window, part) => groups.reduce((sum, { parts }) => sum + parts[found(window)]![part], 0),
  };
}

const windowName = ({ from, to }: CountWindow): string => `${from} to ${to}`;
