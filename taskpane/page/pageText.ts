import type { SaveAs } from '../host/workbook/builtInHost.ts';

/** The sentences of the page around workbook and pane. */

export const PAGE = {
  open: 'Open a file',
  openHint: '.xlsx or .csv; a file can also be dropped anywhere on this page',
  save: 'Save as .xlsx',
  demo: 'Open the demonstration inventory',
  notSaved: 'changes not saved',
  noFile: 'No file is open',
  newFile: 'new workbook',
  workbook: 'Workbook',
  pane: 'Pane',
  jump: 'Go to',
  splitter: 'Width of the pane',
  starting: 'The workbook is starting',
  stillStarting: 'the workbook is still starting; try again in a moment',
  dropHere: 'Drop the file to open it',
  dropOne: 'more than one file was dropped; drop one',
  opening: 'Opening',
  opened: 'Opened',
  demoNote:
    'Everything in it is made up. It is counted as of 2026-06-30, the day for which it was written, with settings that came along: record start, weather, prices, stock, orders.',
  saving: 'Saving',
  saved: 'Saved',
  busy: 'wait until it is done, or give it up',
  close: 'Close',
  toGrid: 'F6 moves on to the pane, Shift+F6 back to the header',
} as const;

export const SAVE = {
  title: 'Save as .xlsx',
  question: 'The cells that CRANK functions fill are saved',
  choices: {
    formulas: {
      label: "with formulas kept as the add-in's",
      hint: 'For people who have the add-in: every cell can still be traced and follows when a reading changes; without the add-in it shows #NAME? as soon as it is calculated anew.',
    },
    values: {
      label: 'as values, for people without the add-in',
      hint: 'The answers stay as they are now and look the same everywhere; the CRANK formulas behind them go. Other formulas are kept.',
    },
  } satisfies Record<SaveAs, { label: string; hint: string }>,
  go: 'Save',
  cancel: 'Cancel',
  lossTitle: 'The saved file will not have everything',
  lossLead: 'The file that was opened has parts which can’t be kept:',
  lossAdvice: 'Save under another name than the original, so that nothing is gone for good.',
  goAnyway: 'Save without them',
} as const;

export const DISCARD = {
  title: 'There are changes that have not been saved',
  text: 'They are lost when another file is opened in place of this one.',
  go: 'Open without saving',
  cancel: 'Keep working',
} as const;

export const CELL_LINE = {
  label: 'Active cell',
  value: 'shows',
  isEmpty: 'is empty',
  formula: 'formula',
  answerOf: 'part of the answer of',
  error: 'because',
  /** Of errors that the grid itself gives, without a sentence of their own. */
  gridErrors: {
    '#SPILL!': 'the answer has no room: a cell into which it would spill is not empty',
    '#NAME?': 'a function or a name in the formula is not known here; look for a slip of the pen',
  } as Readonly<Record<string, string>>,
} as const;

/** What went wrong in the page itself, with what can be done. */
export const faultText = (error: unknown): string =>
  `Something went wrong in Crankbook itself: ${error instanceof Error ? error.message : String(error)}. The file on your disk is as it was.`;
