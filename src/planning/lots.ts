import type { AgeBin } from './ageBins.ts';
import type { Place } from './places.ts';

/** Places whose batteries are renewed together: a whole set where that is the rule, else one place by itself. */
export type Lot = readonly Place[];

/** The places as lots; batteries of one set share site, vehicle and set name. */
export function lotsOf(places: readonly Place[], wholeSets: boolean): Lot[] {
  if (!wholeSets) return places.map((place) => [place]);
  const lots: Place[][] = [];
  const sets = new Map<string, Place[]>();
  for (const place of places) {
    const name = setName(place);
    const set = name === undefined ? undefined : sets.get(name);
    if (set !== undefined) set.push(place);
    else {
      const lot = [place];
      lots.push(lot);
      if (name !== undefined) sets.set(name, lot);
    }
  }
  return lots;
}

// A battery whose age is only known as shares can't be put beside its mates' ages: it is renewed by itself.
function setName({ battery, ageKnown }: Place): string | undefined {
  const { site, vehicle, set } = battery;
  return ageKnown && set !== '' ? `${site}\u0000${vehicle}\u0000${set}` : undefined;
}

/** The ages that the batteries of a lot may have, oldest last, each with its share of one. */
export function lotAges(lot: Lot, meanAge: ReadonlyMap<number, number>): [ages: number[], share: number][] {
  const agesOf = (months: readonly number[]): number[] => months.map((month) => meanAge.get(month)!);
  if (lot.length > 1) return [[agesOf(lotMonths(lot)), 1]];
  return [...lot[0]!.months].map(([month, share]) => [agesOf([month]), share]);
}

const lotMonths = (lot: Lot): number[] =>
  lot.map(({ months }) => [...months.keys()][0]!).sort((a, b) => a - b);

/** Bins of lots, at the fleet's own mean age of each month of age, so that parts add up to the whole. */
export function lotBins(lots: readonly Lot[], meanAge: ReadonlyMap<number, number>): AgeBin[] {
  const bins = new Map<string, AgeBin>();
  for (const [ages, share] of lots.flatMap((lot) => lotAges(lot, meanAge))) {
    const [age, ...mates] = ages;
    const key = ages.join(' ');
    const count = (bins.get(key)?.count ?? 0) + share;
    bins.set(key, mates.length === 0 ? { age: age!, count } : { age: age!, mates, count });
  }
  return [...bins.values()].sort((a, b) => a.age - b.age);
}

/** A name of the ages of a bin, the same for bins that differ in their planned renewal only. */
export const agesName = ({ age, mates = [] }: AgeBin): string => [age, ...mates].join(' ');
