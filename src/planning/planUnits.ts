import { failureChanceByAge } from '../life/failureChance.ts';
import type { Battery } from '../service/battery.ts';
import type { FleetForecast } from './fleetForecast.ts';
import { ownWindow } from './planPeriods.ts';
import type { Place } from './places.ts';
import type { PlanYear } from './planYears.ts';
import type { Fleet, LifeGroup } from './planViews.ts';
import { shareOut } from './shareOut.ts';

/** One place of the plan and its battery. */
export type PlannedUnit = {
  readonly battery: Battery;
  readonly dueNow: boolean;
  readonly ageKnown: boolean;
  /** Chance that this battery fails within 12 and 24 months; empty for one that is due now. */
  readonly chance12?: number;
  readonly chance24?: number;
  /** Chance that its test in 12 and 24 months reads under the least, by its test trend; empty without one. Shown and ranked by, never counted. */
  readonly trendChance12?: number;
  readonly trendChance24?: number;
  /** Batteries that this place is expected to need in each fiscal year, replacements of replacements counted; the units add up to the years. */
  readonly expected: readonly number[];
  /** Fiscal year by whose end this battery more likely has failed than not; undefined = later than the plan. */
  readonly proposedYear?: string;
};

// A thousandth of a battery: fine enough for a unit, and a whole fleet still adds up.
const STEP = 0.001;

/**
 * The places of the plan, those due now first, then by the worse of two chances within 12 months: that of its age and
 * that of its test trend. They say different things (a removal, a reading), so they are not combined, and the counts
 * rest on the age alone.
 */
export function planUnits(fleet: Fleet, forecast: FleetForecast, years: readonly PlanYear[]): PlannedUnit[] {
  const expected = forecast.byPlace(years.map(ownWindow));
  const raw = fleet.groups.flatMap((group) => {
    const chances = chancesByAge(group, fleet.meanAge, [12, 24, ...years.map(({ endMonth }) => endMonth)]);
    return group.places.map((place) => ({
      place,
      chances: weighted(place, chances),
      expected: expected.get(place)!,
    }));
  });
  const columns = years.map((year, y) =>
    shareOut(
      raw.map(({ expected }) => expected[y]!),
      STEP,
      year.expected,
    ),
  );
  return raw
    .map(({ place, chances }, index) => ({
      battery: place.battery,
      dueNow: place.dueNow,
      ageKnown: place.ageKnown,
      ...(place.dueNow ? {} : { chance12: chances[0]!, chance24: chances[1]!, ...trendChances(place) }),
      expected: columns.map((column) => column[index]!),
      proposedYear: proposedYear(place, chances.slice(2), years),
    }))
    .sort((a, b) => rank(b) - rank(a) || a.battery.row - b.battery.row);
}

/** Chance of failing within each horizon, for a battery of each month of age. */
function chancesByAge(
  { life }: LifeGroup,
  meanAge: ReadonlyMap<number, number>,
  horizons: readonly number[],
): Map<number, readonly number[]> {
  const within = horizons.map((months) => failureChanceByAge(months, life));
  return new Map([...meanAge].map(([month, age]) => [month, within.map((chance) => chance(age))]));
}

function trendChances({ battery: { trend } }: Place): Pick<PlannedUnit, 'trendChance12' | 'trendChance24'> {
  return trend === undefined ? {} : { trendChance12: trend.chance12, trendChance24: trend.chance24 };
}

// Over any chance, so that what is due now stands first.
const DUE_NOW = 2;

function rank({ dueNow, chance12 = 0, trendChance12 = 0 }: PlannedUnit): number {
  return dueNow ? DUE_NOW : Math.max(chance12, trendChance12);
}

function proposedYear(
  place: Place,
  byYearEnd: readonly number[],
  years: readonly PlanYear[],
): string | undefined {
  if (place.dueNow) return years[0]?.label;
  return years[byYearEnd.findIndex((chance) => chance >= 0.5)]?.label;
}

/** A figure by month of age, averaged over the ages that a place's battery may have. */
function weighted({ months }: Place, byAge: ReadonlyMap<number, readonly number[]>): number[] {
  const sums: number[] = [];
  for (const [month, share] of months) {
    byAge.get(month)!.forEach((value, i) => (sums[i] = (sums[i] ?? 0) + share * value));
  }
  return sums;
}
