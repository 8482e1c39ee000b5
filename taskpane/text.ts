import type { Home, View } from './session.ts';

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

export const HOME_QUESTION = 'Where shall Crankbook write?';
export const HOME_HINT = 'Asked once. Your own cells are never changed; sheets and columns are added.';
export const HOME_WORDS: Readonly<Record<Home, string>> = {
  here: 'Into this workbook',
  copy: 'Into a copy of it',
  own: 'Into a workbook of its own',
};
export const DECLINE_HOME = 'Write nothing now';
