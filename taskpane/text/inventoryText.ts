import type { CheckGroup } from '../../src/inventory/rowsToCheck.ts';
import type { ConstructionText } from '../../src/inventory/inventory.ts';
import type { ColumnSource } from '../../src/inventory/sheetParts.ts';

/** The sentences of the inventory view. */

const several = (count: number, one: string, many = `${one}s`): string =>
  `${count.toLocaleString('en')} ${count === 1 ? one : many}`;

const listed = (names: readonly string[]): string => names.join(', ');

export const NOTHING_OPEN =
  'No inventory has been read yet. Open a workbook with a sheet of batteries, one row for each: it is read by itself. After typing one in here, have it read.';
export const CANT_READ = 'This sheet could not be read as an inventory:';
export const CANT_READ_NEXT = 'Choose another sheet or table, or say in which row the column heads stand.';
/** Where the sheet lacks the batteries themselves, no other way of reading it helps. */
export const NOTHING_TO_READ_NEXT =
  'Type or paste the batteries into the sheet and choose “Read again”, or choose another sheet.';

export const WHERE = {
  title: 'Where the inventory is',
  place: 'Sheet or table',
  sheet: (name: string) => `sheet ${name}`,
  table: (name: string, sheet: string) => `table ${name} on ${sheet}`,
  cursorBlock: (block: string, sheet: string) => `${block} on ${sheet}`,
  headerRow: 'Row of the column heads',
  headerHint: 'Empty: it is looked for.',
  visible: 'Count visible rows only',
  again: 'Read again',
  first: 'Read this workbook',
  atCursor: 'Read the block under the cursor',
  titles: (count: number) =>
    count === 0 ? 'no title rows' : `${several(count, 'row')} of titles above the heads`,
  heads: ([first, last]: readonly [number, number]) =>
    first === last ? `column heads in row ${first}` : `column heads in rows ${first} to ${last}`,
  rows: ([first, last]: readonly [number, number]) => `rows ${first} to ${last} below them`,
  headings: (names: readonly string[]) => `headings taken as sites: ${listed(names)}`,
  leftOut: (reason: string, count: number) => `left out: ${reason}, ${several(count, 'row')}`,
  counts: (used: number, repaired: number, ageUnknown: number) =>
    `${used.toLocaleString('en')} rows used as they stand, ${repaired.toLocaleString('en')} with a stated repair, ${ageUnknown.toLocaleString('en')} of unknown age`,
  batteries: (count: number) => several(count, 'battery', 'batteries'),
  recognised: 'What was recognised',
} as const;

export const REPAIR = {
  title: 'Formulas that show #NAME?',
  hint: 'Excel shows #NAME?, or _xldudf_ in a formula, where it met our functions before it knew them. Their formulas are written anew, and no other cell is touched.',
  button: 'Repair formulas',
  repairing: 'Looking for formulas that Excel does not know',
  repaired: (count: number) =>
    count === 0
      ? 'No formula of ours shows #NAME? in this workbook.'
      : `${several(count, 'formula')} written anew. Where one shows #NAME? still, close Excel and open it again, then the workbook and this pane.`,
} as const;

export const HOME = {
  title: 'Before anything is added',
  question: 'Where may Crankbook write?',
  choices: {
    here: 'Here: a sheet “Crankbook settings” and a cell name CrankAsOf in this workbook',
    copy: 'In a copy of this workbook',
    own: 'In workbooks of its own; nothing is added here',
  },
  hint: 'Your own cells are never changed. Columns that you ask for come at the right of what is there.',
  open: 'not chosen yet',
  states: { here: 'in this workbook', copy: 'in a copy', own: 'in workbooks of its own' },
  save: 'Save settings as a file',
  take: 'Take settings from a file or another workbook',
  takeHint: 'A settings file (.json), or a workbook with a sheet “Crankbook settings”.',
  taken: (from: string) => `Settings taken from ${from}.`,
  unmatchedLead: 'These no longer match anything in this inventory:',
  allMatch: 'All of them match this inventory.',
  written: 'The settings are on the sheet “Crankbook settings”.',
  writing: 'Writing the settings',
} as const;

export const COLUMNS = {
  title: 'Columns',
  state: (found: number, all: number) => `${found} of ${all} fields have one`,
  none: 'no column',
  lead: 'Each field and the column that it is read from. Correct what is wrong.',
  source: {
    named: 'as you said',
    head: 'guess by its head',
    cells: 'guess by its cells alone: please check',
  } satisfies Record<ColumnSource, string>,
  such: (samples: readonly string[]) =>
    samples.length === 0 ? 'all its cells are empty' : `such as ${samples.join(' · ')}`,
  more: 'Fields without a column',
  restore: 'Guess all columns anew',
} as const;

export const CONSTRUCTION = {
  title: 'Construction',
  lead: 'What each text says about the construction: it decides how a rest voltage is read.',
  state: (assumed: number) =>
    assumed === 0 ? 'all known' : `${several(assumed, 'battery', 'batteries')} taken as AGM`,
  none: 'No column tells a construction, type, stock number or part: all batteries are taken as AGM.',
  noText: 'nothing is said',
  from: {
    settings: 'as you said',
    words: 'by its words',
    assumed: 'not known, taken as AGM',
  } satisfies Record<ConstructionText['from'], string>,
  rows: (count: number) => several(count, 'row'),
  own: (volts: number) => `full at ${volts} V`,
} as const;

export const SITES = {
  title: 'Sites',
  lead: 'Temperatures in degrees Celsius; what stays empty is not guessed. The coldest tells where a battery may freeze, the average how soon stock must be charged again.',
  state: (known: number, all: number) => `temperatures given for ${known} of ${all}`,
  none: 'No site is named in the inventory.',
  coldest: 'Coldest',
  average: 'Average',
  heated: 'heated store',
  parked: 'vehicles parked for a season',
  noColdest: 'nothing is said about frost',
  noAverage: '“charge again by” counts months only',
  all: (count: number) => `Show all ${count} sites`,
} as const;

export const READING = {
  title: 'How cells are read',
  state: 'codes, dates, temperatures',
  layouts: 'Layout of manufacture codes',
  layout: (maker: string) => (maker === '' ? 'rows without a maker' : `maker ${maker}`),
  meaning: (example: string) => (example === '' ? 'none of their codes fits it' : `so ${example}`),
  layoutHint:
    'Pieces: y, yy or yyyy (year), MM (month), dd (day), kk or WW (week), ooo (day of year), A (month as a letter, A to M without I), a12 (A to L with I), lot; such as MMyy-lot.',
  dateOrder: 'Dates such as 03/04/2026',
  orders: {
    none: 'as the column itself shows',
    dayFirst: 'day first: 3 April 2026',
    monthFirst: 'month first: 4 March 2026',
  },
  unit: 'Temperature column',
  units: { none: 'as its head and values show', C: 'degrees Celsius', F: 'degrees Fahrenheit' },
} as const;

export const CHECKS = {
  title: 'Rows to check',
  state: (causes: number, heavy: number) =>
    causes === 0 ? 'nothing doubtful' : `${several(causes, 'cause')}, ${heavy} of them move the answer`,
  lead: 'What moves the answer most stands first. Nothing in your cells is changed.',
  effects: {
    5: 'Decides the answer',
    4: 'Moves the answer',
    3: 'Moves some answers',
    2: 'Touches single batteries',
    1: 'For completeness',
  } as Readonly<Record<number, string>>,
  causes: (count: number) => several(count, 'cause'),
  about: ({ kind, cause, subject }: Pick<CheckGroup, 'kind' | 'cause' | 'subject'>): string => {
    if (subject?.about === 'cause') return subject.text === '' ? 'the cell is empty' : `“${subject.text}”`;
    return cause === kind ? '' : cause.replace(`: ${kind}`, '').replace(`${kind}: `, '');
  },
  count: (count: number) => several(count, 'row'),
  ifNothing: 'If nothing is done:',
  go: (row: number, sheet: string | undefined) =>
    sheet === undefined ? `row ${row}` : `${sheet}, row ${row}`,
  decide: 'For all of them:',
  examples: 'Examples',
  write: 'Write rows to check',
  writing: 'Writing the rows to check',
  sheetName: 'Rows to check',
  writeHint: 'A new sheet with every one of them.',
} as const;

export const FILL = {
  column: (head: string) => `the column “${head}”`,
  title: 'Fill columns',
  state: 'dates, ages, charge, verdicts, chances',
  which: 'Columns to fill',
  lacks: (fields: readonly string[]) => `needs a column for ${fields.join(' or ')}`,
  how: 'As',
  live: 'live formulas: they follow the cells',
  values: 'values: for a file that will be sent',
  where: 'Where',
  beside: { table: 'in the table, at its right', rows: 'beside the block, at its right' },
  newSheet: 'on a new sheet, by serial (values)',
  isProtected: 'The sheet is protected: only a new sheet can be filled.',
  ownHome: 'You keep everything in workbooks of its own: the answers come as values in one.',
  problems: 'Rows without an answer',
  why: 'stay empty, and a column says why',
  error: 'show the error itself',
  note: 'Live formulas see only their own row, and a date or number that stands there as text gives no answer. Values take each cell as it was read here; they also know the sheets Tests and Charges, and batteries that stand in several rows.',
  go: 'Fill',
  nothing: 'Choose at least one column.',
  preparing: 'Working out the columns',
  filling: 'Filling columns',
  sheetName: 'Battery answers',
  filled: (heads: readonly string[]) => `Filled: ${listed(heads)}.`,
  asValues: (heads: readonly string[]) => `As values, because no formula can say it here: ${listed(heads)}.`,
  seeWhy: (rows: number, isLive: boolean) =>
    `In ${rows === 1 ? '1 row a cell stays' : `${rows.toLocaleString('en-GB')} rows cells stay`} empty; the last column says why.${isLive ? ' As values, cells are taken as they were read here, dates and numbers written as text too.' : ''}`,
  manyEmpty: (columns: readonly { readonly head: string; readonly rows: number }[], all: number) =>
    `Live formulas would leave rows empty that values answer, for dates or numbers stand there as text: ${columns
      .map(({ head, rows }) => `${head} in ${rows.toLocaleString('en')} of ${several(all, 'row')}`)
      .join(', ')}. Fill these columns as values instead?`,
  manyEmptyAnswers: ['Write nothing', 'Fill as values', 'Fill live formulas all the same'],
  overwrite: (heads: readonly string[]) =>
    heads.length === 1
      ? `The column ${heads[0]!} is there already. Write over it?`
      : `Columns are there already: ${listed(heads)}. Write over them?`,
  overwriteAnswers: ['Write nothing', 'Write over them', 'Put new columns beside'],
  cellsAnswers: ['Write nothing', 'Write over these cells'],
} as const;
