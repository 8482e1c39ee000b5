import type { LifePosterior } from '../life/lifePosterior.ts';
import type { AgeBin } from './ageBins.ts';
import type { CountWindow } from './countCells.ts';
import type { Demand } from './demand.ts';
import { sumOfDemands } from './demand.ts';
import type { CountForecast } from './forecastCounts.ts';
import { forecastGroups } from './forecastCounts.ts';
import type { Lot } from './lots.ts';
import { lotBins, lotKind, lotsOf } from './lots.ts';
import type { Place } from './places.ts';
import { withPlannedRenewal } from './plannedRenewal.ts';

/** Places that share one belief about life: the whole fleet, or one site, type or maker of it. */
export type LifeGroup = {
  readonly name: string;
  readonly life: LifePosterior;
  readonly places: readonly Place[];
};

/** When batteries are renewed other than on their own failure. */
export type RenewalRule = {
  /** Age of planned renewal [months]; Infinity = on failure only. */
  readonly plannedAge: number;
  /** One failure renews the whole set. */
  readonly wholeSets: boolean;
};

/** A fleet as the plan sees it. */
export type Fleet = {
  readonly groups: readonly LifeGroup[];
  /** Mean age of the fleet's batteries within each month of age. */
  readonly meanAge: ReadonlyMap<number, number>;
  readonly rule: RenewalRule;
};

/** A part of the fleet and the demand it brings in each window. */
export type PartDemand = {
  readonly name: string;
  readonly places: readonly Place[];
  readonly demands: readonly Demand[];
};

/** What is older than the planned age already is renewed evenly over a year, oldest first. */
const OVERDUE_MONTHS = 12;

/**
 * Demand of the parts of a fleet, such as its sites, in each window. Parts within a group share its belief about
 * life; groups have their own, so their demands are added as independent ones.
 * @param fleet    places with the belief about their life, and the rule of renewal
 * @param windows  stretches of time from as-of [months]
 * @param partOf   name of the part to which a place belongs; a set goes with its first battery
 * @returns the parts in order of their names
 */
export function partDemands(
  fleet: Fleet,
  windows: readonly CountWindow[],
  partOf: (place: Place) => string,
): PartDemand[] {
  const parts = new Map<string, { places: Place[]; demands: (readonly Demand[])[] }>();
  for (const group of fleet.groups) {
    const split = splitBy(lotsOf(group.places, fleet.rule.wholeSets), (lot) => partOf(lot[0]!));
    const forecasts = forecastLots([...split.values()], group.life, fleet, windows);
    [...split].forEach(([name, lots], index) => {
      const part = parts.get(name) ?? { places: [], demands: [] };
      part.places.push(...lots.flat());
      part.demands.push(forecasts[index]!.demands);
      parts.set(name, part);
    });
  }
  return [...parts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, { places, demands }]) => ({
      name,
      places,
      demands: windows.map((_, window) => sumOfDemands(demands.map((each) => each[window]!))),
    }));
}

/** Batteries that each place is expected to need in each window; a set's are shared by its places. */
export function expectedByPlace(
  { life, places }: LifeGroup,
  fleet: Fleet,
  windows: readonly CountWindow[],
): Map<Place, readonly number[]> {
  // Lots of the same ages expect the same: each kind is computed once.
  const kinds = [...splitBy(lotsOf(places, fleet.rule.wholeSets), lotKind).values()];
  const forecasts = forecastLots(kinds, life, fleet, windows);
  const expected = new Map<Place, readonly number[]>();
  kinds.forEach((lots, kind) => {
    const batteries = lots.length * lots[0]!.length;
    const each = forecasts[kind]!.demands.map((demand) => demand.expected / batteries);
    for (const place of lots.flat()) expected.set(place, each);
  });
  return expected;
}

/** Forecasts of groups of lots under one belief, by the fleet's rule of renewal. */
export function forecastLots(
  groups: readonly (readonly Lot[])[],
  life: LifePosterior,
  { meanAge, rule }: Fleet,
  windows: readonly CountWindow[],
): CountForecast[] {
  const { plannedAge } = rule;
  const bins: readonly (readonly AgeBin[])[] = groups.map((lots) => lotBins(lots, meanAge));
  if (plannedAge === Infinity) return forecastGroups(bins, { life, windows });
  const planned = withPlannedRenewal(bins, { age: plannedAge, overdueMonths: OVERDUE_MONTHS });
  return forecastGroups(planned, { life, windows, plannedAge });
}

/** Members by the name of the part they belong to. */
export function splitBy<T>(members: readonly T[], partOf: (member: T) => string): Map<string, T[]> {
  const parts = new Map<string, T[]>();
  for (const member of members) {
    const name = partOf(member);
    const own = parts.get(name);
    if (own === undefined) parts.set(name, [member]);
    else own.push(member);
  }
  return parts;
}
