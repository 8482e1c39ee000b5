import { wholeNumber } from '../shownNumber.ts';
/** The sentences of the store: its list, its count, and last month's file. */

export const STORE = {
  heading: 'Store list',
  about: 'What to charge and issue next, from the stock of the inventory as it was read.',
  list: 'Write store list',
  listHint: 'A new sheet: charge next, issue next, sets to issue, turn-ins to judge, frost, shelf limit.',
  listName: 'Store list',
  writing: 'Writing the store list',
} as const;

export const COUNT = {
  heading: 'Count a shelf',
  hint: 'Scan or paste the serials, one a line; the text of a symbol will do as well.',
  scans: 'Scans',
  site: 'Site',
  anySite: 'all sites',
  place: 'Shelf',
  placeHint: 'As the inventory writes it; empty for every shelf.',
  run: 'Count',
  counting: 'Counting',
  summary: (found: number, expected: number) =>
    `${wholeNumber(found)} of ${wholeNumber(expected)} that should be here are here.`,
  takenOff: (frames: string) =>
    `Taken off scans: ${frames}, which the scanner puts around its text; its settings can switch that off.`,
  lists: {
    missing: 'Missing',
    wrongPlace: 'On another shelf by the inventory',
    elsewhere: 'Not in stock by the inventory',
    unknown: 'Not in the inventory',
    twice: 'Scanned more than once',
    unreadable: 'Not read',
  },
  none: 'none',
  times: (serial: string, times: number) => `${serial}, ${times} times`,
} as const;

export const COMPARE_FILES = {
  heading: "Compare with last month's file",
  hint: 'The file is only read. It is read with the settings of this inventory.',
  choose: 'Earlier file (.xlsx or .csv)',
  comparing: 'Comparing',
  lists: {
    fresh: 'New',
    gone: 'Gone',
    moved: 'Moved',
    verdictChanged: 'Verdict changed',
    notCompared: 'Not compared',
  },
  readFrom: (sheet: string) => `Read from the sheet ${sheet} of the earlier file.`,
  lacksTests:
    'The earlier file has no sheet Tests, so a verdict may differ only because the tests of then are not there.',
  unchanged: (count: number) => `${wholeNumber(count)} are as they were.`,
  onlyBefore: (sites: string) => `Only in the earlier file, so not compared: ${sites}.`,
  onlyNow: (sites: string) => `Only in this inventory, so not compared: ${sites}.`,
  unnamed: 'rows without a site',
  more: (count: number) => `and ${wholeNumber(count)} more`,
} as const;
