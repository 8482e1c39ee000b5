import type { AgeBin } from './ageBins.ts';
import type { CountWindow } from './countCells.ts';
import type { Demand } from './demand.ts';
import { sumOfDemands } from './demand.ts';
import type { CountForecast } from './forecastCounts.ts';
import { forecastCounts } from './forecastCounts.ts';
import type { CountParts } from './groupWork.ts';
import type { Lot } from './lots.ts';
import { agesName, lotAges, lotsOf } from './lots.ts';
import type { Place } from './places.ts';
import type { Fleet, LifeGroup } from './planViews.ts';
import { renewalBins } from './planViews.ts';

/** What the whole fleet will need in each window that a plan asks about. */
export type FleetForecast = {
  readonly demand: (window: CountWindow) => Demand;
  /** Of the expected count: good batteries renewed with a failed mate, batteries renewed at the planned age. */
  readonly part: (window: CountWindow, part: keyof CountParts) => number;
  /** Batteries that each place is expected to need in each of some windows; a set's are shared by its places. */
  readonly byPlace: (windows: readonly CountWindow[]) => Map<Place, readonly number[]>;
};

/**
 * The forecast of the whole fleet, once for all windows: what costs is each life that may be true, and it is the same
 * for all of them. Groups have their own beliefs about life, so their demands are added as independent ones.
 * @param fleet    places with the belief about their life, and the rule of renewal
 * @param windows  all stretches of time that will be asked about [months]; equal ones are counted once
 */
export function fleetForecast(fleet: Fleet, windows: readonly CountWindow[]): FleetForecast {
  const each = new Map(windows.map((window) => [windowName(window), window]));
  const groups = fleet.groups.map((group) => groupForecast(group, fleet, [...each.values()]));
  const demands = [...each].map((_, i) => sumOfDemands(groups.map(({ forecast }) => forecast.demands[i]!)));
  const names = [...each.keys()];
  const indexOf = (window: CountWindow): number => {
    const index = names.indexOf(windowName(window));
    if (index < 0) throw new Error(`no forecast was made of ${windowName(window)}`);
    return index;
  };
  return {
    demand: (window) => demands[indexOf(window)]!,
    part: (window, part) =>
      groups.reduce((sum, { forecast }) => sum + forecast.parts[indexOf(window)]![part], 0),
    byPlace: (asked) =>
      new Map(groups.flatMap((group) => placesExpected(group, fleet.meanAge, asked.map(indexOf)))),
  };
}

const windowName = ({ from, to }: CountWindow): string => `${from} to ${to}`;

type GroupForecast = {
  readonly lots: readonly Lot[];
  readonly bins: readonly AgeBin[];
  readonly forecast: CountForecast;
};

function groupForecast(
  { life, places }: LifeGroup,
  fleet: Fleet,
  windows: readonly CountWindow[],
): GroupForecast {
  const lots = lotsOf(places, fleet.rule.wholeSets);
  const bins = renewalBins([lots], fleet)[0]!;
  const { plannedAge } = fleet.rule;
  return { lots, bins, forecast: forecastCounts(bins, { life, windows, plannedAge }) };
}

function placesExpected(
  group: GroupForecast,
  meanAge: ReadonlyMap<number, number>,
  windows: readonly number[],
): [Place, number[]][] {
  const byAges = meansByAges(group, windows);
  return group.lots.flatMap((lot) => {
    const ages = lotAges(lot, meanAge).map(([each, share]) => ({ own: byAges.get(each.join(' '))!, share }));
    const expected = windows.map((_, w) => ages.reduce((sum, { own, share }) => sum + share * own[w]!, 0));
    return lot.map((place): [Place, number[]] => [place, expected]);
  });
}

// A bin that is overdue for renewal was split by when it comes about: its places share the mean.
function meansByAges({ bins, forecast }: GroupForecast, windows: readonly number[]): Map<string, number[]> {
  const sums = new Map<string, { count: number; sum: number[] }>();
  bins.forEach((bin, index) => {
    const { count, sum } = sums.get(agesName(bin)) ?? { count: 0, sum: windows.map(() => 0) };
    const own = windows.map((window, w) => sum[w]! + bin.count * forecast.eachPlace[index]![window]!);
    sums.set(agesName(bin), { count: count + bin.count, sum: own });
  });
  return new Map([...sums].map(([name, { count, sum }]) => [name, sum.map((each) => each / count)]));
}
