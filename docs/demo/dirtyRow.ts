import type { FindingKind } from '../../src/inventory/findingKinds.ts';
import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import type { Chance } from './chance.ts';
import type { Row } from './register.ts';

/** Dirt for which the tool has no finding of its own; it has to come through it all the same. */
export type OwnKind =
  | 'the same life twice'
  | 'blank row'
  | 'subtotal or total row'
  | 'station heading row'
  | 'serial that lost its zeros'
  | 'text that looks like a formula'
  | 'station spelled otherwise'
  | 'removed, known to the month'
  | 'retest claimed by "recharged" alone';

/** One kind of dirt: how many rows get it, which rows it fits, and what it does to one. */
export type Dirt = {
  readonly kind: FindingKind | OwnKind;
  readonly count: number;
  readonly fits: (row: Row) => boolean;
  readonly spoil: (row: Row, chance: Chance, index: number) => void;
};

/** Dirt as it was thrown: its kind and the rows that have it. */
export type Planted = { readonly kind: FindingKind | OwnKind; readonly rows: readonly Row[] };

/** Whether a row is a battery in a vehicle. */
export const inService = ({ stint }: Row): boolean => stint !== undefined && stint.to === undefined;
/** Whether a row is a battery that was taken off. */
export const removed = ({ stint }: Row): boolean => stint?.to !== undefined;
/** Whether a row is a battery on a shelf. */
export const inStock = ({ stint, battery }: Row): boolean => stint === undefined && battery !== undefined;
/** Whether a row has a test. */
export const tested = ({ cells }: Row): boolean => cells.testedOn !== undefined;

/** Months that a battery lay on a shelf before it was fitted. */
export const onShelfBefore = ({ stint, battery }: Row): number =>
  stint === undefined || stint !== battery!.stints[0] ? 0 : (stint.from - battery!.made) / DAYS_PER_MONTH;

/** The choices one after the other. */
export function turn<T>(choices: readonly T[], index: number): T {
  return choices[index % choices.length]!;
}
