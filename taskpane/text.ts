import type { View } from './session.ts';

/** The pane's sentences that belong to no single view. */

export const VIEW_NAMES: Readonly<Record<View, string>> = {
  inventory: 'Inventory',
  bench: 'Bench',
  life: 'Life',
  plan: 'Plan',
};

export const GIVEN_UP = 'given up; the workbook is as it was';
export const FAULT =
  'Something went wrong in Crankbook itself; the workbook is as it was. Please report this';
export const AS_OF = 'As of';
export const AS_OF_HINT = 'Every age, verdict and forecast is counted on this day.';
export const GIVE_UP = 'Give up';
