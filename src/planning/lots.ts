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

/** A name that lots with the same ages share, whatever the order of their batteries. */
export function lotKind(lot: Lot): string {
  if (lot.length === 1) return [...lot[0]!.months].map(([month, share]) => `${month}*${share}`).join('+');
  return lotMonths(lot).join(' ');
}

const lotMonths = (lot: Lot): number[] =>
  lot.map(({ months }) => [...months.keys()][0]!).sort((a, b) => a - b);

/** Bins of lots, at the fleet's own mean age of each month of age, so that parts add up to the whole. */
export function lotBins(lots: readonly Lot[], meanAge: ReadonlyMap<number, number>): AgeBin[] {
  const bins = new Map<string, AgeBin>();
  const add = (months: readonly number[], count: number): void => {
    const key = months.join(' ');
    const [age, ...mates] = months.map((month) => meanAge.get(month)!);
    const more = (bins.get(key)?.count ?? 0) + count;
    bins.set(key, mates.length === 0 ? { age: age!, count: more } : { age: age!, mates, count: more });
  };
  for (const lot of lots) {
    if (lot.length > 1) add(lotMonths(lot), 1);
    else for (const [month, share] of lot[0]!.months) add([month], share);
  }
  return [...bins.values()].sort((a, b) => a.age - b.age);
}
