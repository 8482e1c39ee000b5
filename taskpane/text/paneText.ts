import type { Home, View } from '../session.ts';

/** The pane's sentences that belong to no single view. */

export const VIEW_NAMES: Readonly<Record<View, string>> = {
  inventory: 'Inventory',
  bench: 'Bench',
  life: 'Life',
  plan: 'Plan',
};

/** Where the methods are told at length, beside the page of the pane. */
export const HELP_PAGE = 'docs/methods.html';

/** What each view does and where its numbers come from; `section` is the address of a heading of the methods. */
export const VIEW_HELP: Readonly<
  Record<View, { readonly does: string; readonly from: string; readonly section: string }>
> = {
  inventory: {
    does: 'Reads the sheet as it is, says what is doubtful, and adds columns and lists only where you want them.',
    from: 'Every age, charge and verdict comes from the cells of its own row, your settings and the as-of day.',
    section: 'the-verdict',
  },
  bench: {
    does: 'One battery at a time, in the order of the work. Enter moves on; y and n answer a question.',
    from: 'The verdict comes from what you answer and read here, the charge on record and the coldest of its place.',
    section: 'the-bench',
  },
  life: {
    does: 'Shows how long batteries last here, and what speaks for or against believing it.',
    from: 'It comes from the installed and removed dates of the inventory; where few failed, from a rule of thumb too.',
    section: 'how-long-they-last-here',
  },
  plan: {
    does: 'Shows what to order, when, and what it costs, and writes it as a sheet that others can check.',
    from: 'Counts come from the age of each battery and the life of its group, money from the prices you give.',
    section: 'counts-to-come',
  },
};

export const HELP_LINK: Readonly<Record<View, string>> = {
  inventory: 'How it is read and judged',
  bench: 'How the bench judges',
  life: 'How life is counted',
  plan: 'How the counts are made',
};

export const GAVE_UP = 'given up';
export const GIVEN_UP = `${GAVE_UP}; the workbook is as it was`;
export const GIVING_UP = 'Giving up: what was written is taken back';
export const FAULT =
  'Something went wrong in Crankbook itself; the workbook is as it was. Please report this';
export const VIEW_DID_NOT_COME =
  'This view could not be loaded from the address of the pane. Open it again; if that does not help, close the pane and open it anew.';
export const FILE_GIVEN = (name: string): string =>
  `${name} was offered as a download. Some versions of Excel let a pane save nothing: where no file arrives, let Crankbook write here, and the settings are on the sheet “Crankbook settings”.`;
export const NOT_IN_EXCEL =
  'This page belongs into the pane of Excel: open it there, with the button Crankbook.';
export const AS_OF = 'As of';
export const AS_OF_HINT = 'Every age, verdict and forecast is counted on this day.';
export const GIVE_UP = 'Give up';

export const HOME_QUESTION = 'Where shall Crankbook write?';
export const HOME_HINT = 'Asked once. Your own cells are never changed; sheets and columns are added.';
/** What is said in addition where the spreadsheet makes no copy itself. */
export const COPY_BY_HAND =
  'To work in a copy, choose File, Save a Copy in Excel first, open the copy and open this pane there.';
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
