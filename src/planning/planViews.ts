import type { LifePosterior } from '../life/lifePosterior.ts';
import type { AgeBin } from './ageBins.ts';
import type { CountWindow } from './countCells.ts';
import type { Demand } from './demand.ts';
import { sumOfDemands } from './demand.ts';
import { forecastGroups } from './forecastCounts.ts';
import type { Place } from './places.ts';
import { binsOf } from './places.ts';

/** Places that share one belief about life: the whole fleet, or one site, type or maker of it. */
export type LifeGroup = {
  readonly name: string;
  readonly life: LifePosterior;
  readonly places: readonly Place[];
};

/** A part of the fleet and the demand it brings in each window. */
export type PartDemand = {
  readonly name: string;
  readonly places: readonly Place[];
  readonly demands: readonly Demand[];
};

/**
 * Demand of the parts of a fleet, such as its sites, in each window. Parts within a group share its belief about
 * life; groups have their own, so their demands are added as independent ones.
 * @param groups   places with the belief about their life
 * @param meanAge  mean age of the fleet's batteries in each month of age
 * @param windows  stretches of time from as-of [months]
 * @param partOf   name of the part to which a place belongs
 * @returns the parts in order of their names
 */
export function partDemands(
  groups: readonly LifeGroup[],
  meanAge: ReadonlyMap<number, number>,
  windows: readonly CountWindow[],
  partOf: (place: Place) => string,
): PartDemand[] {
  const parts = new Map<string, { places: Place[]; demands: (readonly Demand[])[] }>();
  for (const { life, places } of groups) {
    const split = splitBy(places, partOf);
    const bins = [...split.values()].map((members) => binsOf(members, meanAge));
    const forecasts = forecastGroups(bins, { life, windows });
    [...split].forEach(([name, members], index) => {
      const part = parts.get(name) ?? { places: [], demands: [] };
      part.places.push(...members);
      part.demands.push(forecasts[index]!.demands);
      parts.set(name, part);
    });
  }
  return [...parts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, { places, demands }]) => ({
      name,
      places,
      demands: windows.map((_, w) => together(demands, w)),
    }));
}

/** Demand of the whole fleet in each window. */
export function fleetDemands(
  groups: readonly LifeGroup[],
  meanAge: ReadonlyMap<number, number>,
  windows: readonly CountWindow[],
): readonly Demand[] {
  return partDemands(groups, meanAge, windows, () => '')[0]?.demands ?? [];
}

/** Expected failures of one battery of each month of age in each window, by group. */
export function expectedByAge(
  { life, places }: LifeGroup,
  meanAge: ReadonlyMap<number, number>,
  windows: readonly CountWindow[],
): Map<number, readonly number[]> {
  const months = [...new Set(places.flatMap((place) => [...place.months.keys()]))];
  const single = (month: number): AgeBin[] => [{ age: meanAge.get(month)!, count: 1 }];
  const forecasts = forecastGroups(months.map(single), { life, windows });
  return new Map(
    months.map((month, index) => [month, forecasts[index]!.demands.map(({ expected }) => expected)]),
  );
}

function together(demands: readonly (readonly Demand[])[], window: number): Demand {
  const own = demands.map((each) => each[window]!);
  return own.length === 1 ? own[0]! : sumOfDemands(own);
}

/** Places by the name of the part they belong to. */
export function splitBy(places: readonly Place[], partOf: (place: Place) => string): Map<string, Place[]> {
  const parts = new Map<string, Place[]>();
  for (const place of places) {
    const name = partOf(place);
    const members = parts.get(name);
    if (members === undefined) parts.set(name, [place]);
    else members.push(place);
  }
  return parts;
}
