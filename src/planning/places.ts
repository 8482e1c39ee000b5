import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { Battery } from '../service/battery.ts';
import { isDueNow } from './lifeRecords.ts';

/** One place in a vehicle and the ages its battery may have, as shares of one by month of age. */
export type Place = {
  readonly battery: Battery;
  readonly dueNow: boolean;
  readonly ageKnown: boolean;
  /** Share of one battery for each whole month of age; one entry where the age is known. */
  readonly months: ReadonlyMap<number, number>;
};

/** The places of a fleet and the mean age of its batteries within each month of age. */
export type Places = { readonly places: readonly Place[]; readonly meanAge: ReadonlyMap<number, number> };

/**
 * Every place that the fleet keeps filled. A condemned battery's place holds its replacement, new at as-of. A
 * battery whose age can't be read has the ages of its type and site, else of its type, else of all.
 * @problem notEnoughData  when no battery in service has an age
 */
export function placesOf(batteries: readonly Battery[]): Outcome<Places> {
  const inService = batteries.filter(({ whereabouts }) => whereabouts === 'inService');
  const known = inService.filter((battery) => isDueNow(battery) || battery.ageMonths !== undefined);
  if (known.length === 0) return problem('notEnoughData', 'noAges', 'batteries in service', inService.length);
  const ages = agesByKind(known);
  return answer({
    places: inService.map((battery) => placeOf(battery, ages)),
    meanAge: meanAgeByMonth(known),
  });
}

const ageOf = (battery: Battery): number => (isDueNow(battery) ? 0 : Math.max(0, battery.ageMonths!));
const monthOf = (battery: Battery): number => Math.floor(ageOf(battery));

function placeOf(battery: Battery, ages: ReadonlyMap<string, ReadonlyMap<number, number>>): Place {
  const dueNow = isDueNow(battery);
  const ageKnown = dueNow || battery.ageMonths !== undefined;
  if (ageKnown) return { battery, dueNow, ageKnown, months: new Map([[monthOf(battery), 1]]) };
  const months = kindsOf(battery)
    .map((kind) => ages.get(kind))
    .find((found) => found !== undefined)!;
  return { battery, dueNow, ageKnown, months };
}

// From the closest likeness to the widest.
const kindsOf = ({ type, site }: Battery): string[] => [`${type}\u0000${site}`, type, ''];

function agesByKind(known: readonly Battery[]): Map<string, Map<number, number>> {
  const counts = new Map<string, Map<number, number>>();
  for (const battery of known) {
    for (const kind of new Set(kindsOf(battery))) {
      const months = counts.get(kind) ?? new Map<number, number>();
      months.set(monthOf(battery), (months.get(monthOf(battery)) ?? 0) + 1);
      counts.set(kind, months);
    }
  }
  return new Map([...counts].map(([kind, months]) => [kind, shares(months)]));
}

function shares(months: ReadonlyMap<number, number>): Map<number, number> {
  let total = 0;
  for (const count of months.values()) total += count;
  return new Map([...months].map(([month, count]) => [month, count / total]));
}

function meanAgeByMonth(known: readonly Battery[]): Map<number, number> {
  const sums = new Map<number, { age: number; count: number }>();
  for (const battery of known) {
    const sum = sums.get(monthOf(battery)) ?? { age: 0, count: 0 };
    sums.set(monthOf(battery), { age: sum.age + ageOf(battery), count: sum.count + 1 });
  }
  return new Map([...sums].map(([month, { age, count }]) => [month, age / count]));
}
