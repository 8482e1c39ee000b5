import type { LifePosterior } from '../life/lifePosterior.ts';
import type { AgeBin } from './ageBins.ts';
import type { CountWindow } from './countCells.ts';
import type { Demand } from './demand.ts';
import { sumOfDemands } from './demand.ts';
import type { CountForecast } from './forecastCounts.ts';
import { forecastGroups } from './forecastCounts.ts';
import type { Lot } from './lots.ts';
import { lotBins, lotsOf } from './lots.ts';
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
  /** Time over which what is above that age already is renewed [months], oldest first; 0 = at once. */
  readonly overdueMonths: number;
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

/** Name of the part to which a place belongs; a set goes with its first battery. */
export type PartOf = (place: Place) => string;

/**
 * Demand of the parts of a fleet in each window, for several ways to part it (by site, by type): all are forecast
 * together. Parts within a group share its belief about life; groups have their own, so their demands are added as
 * independent ones.
 * @param fleet    places with the belief about their life, and the rule of renewal
 * @param windows  stretches of time from as-of [months]
 * @param partings ways to part it
 * @returns for each way the parts in order of their names
 */
export function partDemands(
  fleet: Fleet,
  windows: readonly CountWindow[],
  partings: readonly PartOf[],
): PartDemand[][] {
  const found = partings.map(() => new Map<string, PartForecasts>());
  for (const group of fleet.groups) {
    const lots = lotsOf(group.places, fleet.rule.wholeSets);
    const splits = partings.map((partOf) => splitBy(lots, (lot) => partOf(lot[0]!)));
    const bins = splits.flatMap((split) => renewalBins([...split.values()], fleet));
    const { plannedAge } = fleet.rule;
    const forecasts = forecastGroups(bins, { life: group.life, windows, plannedAge }).values();
    splits.forEach((split, way) => {
      for (const [name, own] of split) addPart(found[way]!, name, own, forecasts.next().value!);
    });
  }
  return found.map((parts) => partsByName(parts, windows));
}

type PartForecasts = { readonly places: Place[]; readonly forecasts: CountForecast[] };

function addPart(
  parts: Map<string, PartForecasts>,
  name: string,
  lots: readonly Lot[],
  forecast: CountForecast,
): void {
  const part = parts.get(name) ?? { places: [], forecasts: [] };
  for (const lot of lots) part.places.push(...lot);
  part.forecasts.push(forecast);
  parts.set(name, part);
}

function partsByName(
  parts: ReadonlyMap<string, PartForecasts>,
  windows: readonly CountWindow[],
): PartDemand[] {
  return [...parts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, { places, forecasts }]) => ({
      name,
      places,
      demands: windows.map((_, window) => sumOfDemands(forecasts.map(({ demands }) => demands[window]!))),
    }));
}

/** Bins of groups of lots, with the time at which each is renewed by plan where that is the rule. */
export function renewalBins(groups: readonly (readonly Lot[])[], { meanAge, rule }: Fleet): AgeBin[][] {
  const bins = groups.map((lots) => lotBins(lots, meanAge));
  const { plannedAge: age, overdueMonths } = rule;
  return age === Infinity ? bins : withPlannedRenewal(bins, { age, overdueMonths });
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
