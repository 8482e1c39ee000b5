import { weibullHazardGain } from '../life/weibull.ts';
import type { AgeBin } from './ageBins.ts';
import type { CountCells } from './countCells.ts';

/** A kind of place: the ages of the batteries that are renewed together, and when by plan. */
export type PlaceKind = {
  readonly ages: readonly number[];
  /** The cell in which it is renewed by plan, and how much of that cell it is in service; none without a plan. */
  readonly planned?: { readonly cell: number; readonly part: number };
};

/** A bin, where its kind of place stands in the table, and how many batteries (and lots) a renewal takes. */
export type IndexedBin = AgeBin & {
  readonly index: number;
  readonly size: number;
  readonly lots: number;
};

/** The distinct kinds of place among some groups of bins, and the bins with where their kind stands. */
export type PlaceTable = {
  readonly kinds: readonly PlaceKind[];
  /** How many batteries are renewed together, each number once. */
  readonly sizes: readonly number[];
  readonly groups: readonly (readonly IndexedBin[])[];
};

/** Finds the distinct kinds of place, so that what depends on the kind alone is computed once for all groups. */
export function placeTable(groups: readonly (readonly AgeBin[])[], cells: CountCells): PlaceTable {
  const kinds: PlaceKind[] = [];
  const indexOf = new Map<string, number>();
  const indexed = (bin: AgeBin): IndexedBin => {
    const ages = [bin.age, ...(bin.mates ?? [])];
    const key = `${ages.join(' ')}|${bin.plannedIn ?? ''}`;
    let index = indexOf.get(key);
    if (index === undefined) indexOf.set(key, (index = kinds.push(placeKind(ages, bin, cells)) - 1));
    return { ...bin, index, size: ages.length, lots: ages.length };
  };
  const found = groups.map((bins) => bins.map(indexed));
  return { kinds, sizes: [...new Set(kinds.map(({ ages }) => ages.length))], groups: found };
}

function placeKind(ages: readonly number[], { plannedIn }: AgeBin, { edges }: CountCells): PlaceKind {
  if (plannedIn === undefined) return { ages };
  const end = edges.findIndex((edge) => edge > 0 && edge >= plannedIn);
  if (end < 0) return { ages };
  const start = edges[end - 1]!;
  return { ages, planned: { cell: end - 1, part: Math.max(0, (plannedIn - start) / (edges[end]! - start)) } };
}

/** Hazard met in each cell by a place of each kind, for one shape, in units that `ageScale` undoes. */
export type HazardGains = { readonly shape: number; readonly ageScale: number; readonly gains: Float64Array };

/**
 * Hazard gains for one shape; the scale enters later as one factor, so a grid of lives costs one table a shape.
 * Batteries that are renewed together fail with the sum of their hazards.
 * @param ageScale  an age near the scales to come [months]; keeps the powers from running out of numbers
 */
export function hazardGains(
  kinds: readonly PlaceKind[],
  { edges }: CountCells,
  shape: number,
  ageScale: number,
): HazardGains {
  const cells = edges.length - 1;
  const gains = new Float64Array(kinds.length * cells);
  kinds.forEach(({ ages }, kind) => {
    for (let cell = 0; cell < cells; cell += 1) {
      const width = edges[cell + 1]! - edges[cell]!;
      for (const age of ages) {
        gains[kind * cells + cell]! += weibullHazardGain(age + edges[cell]!, width, shape, ageScale);
      }
    }
  });
  return { shape, ageScale, gains };
}

/** Chance that a place of each kind is first renewed in each cell while it is kept: by a failure, or by plan. */
export type FirstRenewals = { readonly failing: Float64Array; readonly planned: Float64Array | undefined };

/** Room for the first renewals of some kinds of place. */
export function emptyRenewals({ kinds }: PlaceTable, { middles }: CountCells): FirstRenewals {
  const room = () => new Float64Array(kinds.length * middles.length);
  return {
    failing: room(),
    planned: kinds.some(({ planned }) => planned !== undefined) ? room() : undefined,
  };
}

/** Fills in the first renewals under one scale; row by row of kinds. */
export function fillFirstRenewals(
  { failing, planned }: FirstRenewals,
  { shape, ageScale, gains }: HazardGains,
  kinds: readonly PlaceKind[],
  { kept }: CountCells,
  scale: number,
): void {
  const factor = (ageScale / scale) ** shape;
  const cells = kept.length;
  kinds.forEach((kind, index) => {
    const start = index * cells;
    const last = kind.planned?.cell ?? cells;
    let alive = 1;
    for (let cell = 0; cell < cells; cell += 1) {
      const gain =
        cell < last ? gains[start + cell]! : cell === last ? gains[start + cell]! * kind.planned!.part : 0;
      const chance = -alive * Math.expm1(-factor * gain);
      alive -= chance;
      failing[start + cell] = chance * kept[cell]!;
    }
    if (kind.planned !== undefined) planned![start + last] = alive * kept[last]!;
  });
}
