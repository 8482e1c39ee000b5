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
export const NOT_IN_EXCEL =
  'This page belongs into the pane of Excel: open it there, with the button Crankbook.';
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

export const NOT_A_NUMBER = 'This is no number; write one such as 12.5, or nothing.';

export const RECORD_START = {
  question: 'Since when has every removal been written down?',
  why: 'Batteries that failed before that day are missing from the sheet, and would make the others look longer-lived than they are. Nothing is planned before this is answered.',
  answers: {
    date: 'Since a day',
    never: 'Never: the sheet shows only what is still here',
    unknown: "I don't know: take the month of the earliest removal",
  },
  date: 'The day',
  take: 'Take this answer',
  choose: 'Choose one of the three answers.',
  change: 'Change',
} as const;

/** Since when removals are on record, and how that is known. */
export const RECORD_FROM = {
  option: (day: string) => `Every removal written down since ${day}, as you said.`,
  column: () => 'Since when each battery was watched is told by its own row.',
  assumed: (day: string) => `Removals taken as complete since ${day}: the month of the earliest one.`,
  never: () =>
    'This sheet shows only what is still here, so it cannot show how long batteries last: a rule of thumb carries the answer.',
} as const;

export const PLOT_NUMBERS = 'Numbers of this picture';
export const PLOT_WORDS = { expected: 'Expected', low: 'Low', high: 'High' } as const;

export const PLANNING = 'Planning';
export const WRITING_FORECAST = 'Writing the forecast';
export const FORECAST_FILE = (source: string): string => `${source.replace(/\.[^.]*$/, '')} forecast.xlsx`;
export const writtenSentence = (names: readonly string[]): string => `Written: ${names.join(', ')}.`;
export const writtenApart = (file: string, names: readonly string[]): string =>
  `Written into ${file}: ${names.join(', ')}.`;
