/** The sentences of the Bench view; questions, cautions, reasons and next steps are the core's. */

export const BENCH = {
  looking: 'Looking up which battery this is.',
  ended: 'Say which battery it is, then put it on record.',
  keptCount: (count: number) =>
    `${count === 1 ? 'One record is' : `${count} records are`} kept in this pane: nothing is written into the workbook that is open.`,
  giveKept: 'Take the records as a workbook',
  look: 'Look first',
  alone: 'Alone?',
  frost: 'Frost',
  readings: 'Which battery, and what it reads',
  which: 'Which battery',
  answer: 'The answer',
  yes: 'Yes',
  no: 'No',
  identity: 'Serial, or the text of its symbol',
  identityHint: 'Type or scan it. A picture of the symbol can be pasted or dropped here.',
  selected: 'Take the row that is selected',
  picture: 'Picture of the symbol',
  unknown: 'This serial is not in the inventory; the test can be put on record all the same.',
  takenOff: (frame: string, serial: string) =>
    `Read as ${serial}. Taken off: ${frame}, which the scanner puts around its text; its settings can switch that off.`,
  several: (rows: string) =>
    `Several rows have this serial (${rows}), and nothing tells them apart: what is put on record here counts for each of them. Put the serials right in the inventory first.`,
  noInventory: 'No inventory has been read, so nothing is known about this battery but what you say here.',
  retest: 'This is the',
  retestHint: 'A retest comes after a full charge.',
  construction: 'Construction',
  constructionHint: 'As known: by the inventory, else AGM.',
  tester: 'Tester used',
  initials: 'Initials',
  open: 'The answer appears here once this is answered:',
  nothingRead: 'The answer appears here once something has been read: volts, a cranking reading, or both.',
  next: 'Next battery',
  record: 'Record this test',
  recorded: 'On record',
  chargeHeading: 'Charged it?',
  chargeFull: 'It reached full charge',
  charger: 'Charger used',
  chargeRecord: 'Record this charge',
  caseLine: 'Line for the case',
  last: (serial: string) => `Line for the case of ${serial}, which is on record`,
  count: (tests: number, charges: number) =>
    `On record from this bench: ${tests} ${tests === 1 ? 'test' : 'tests'}, ${charges} ${charges === 1 ? 'charge' : 'charges'}.`,
} as const;

export const READING_LABELS = {
  restVolts: 'Rest voltage, V',
  hoursAtRest: 'Hours at rest',
  celsius: 'Battery temperature, C',
  reading: 'Cranking reading, A',
  loadVolts: 'or load-test end, V',
  least: 'Least accepted',
} as const;

export const READING_HINTS: Readonly<Partial<Record<keyof typeof READING_LABELS, string>>> = {
  hoursAtRest: '3 at least, 8 better.',
  celsius: 'Fahrenheit with its letter: 54 F.',
  loadVolts: 'Only where there is no reading in amperes.',
  least: 'In the unit of the reading, from the manual for this vehicle.',
};

export const RETESTS = [
  [0, 'first test'],
  [1, 'retest'],
  [2, 'second retest'],
] as const;

export const CONSTRUCTIONS = [
  ['', 'as known'],
  ['AGM', 'AGM'],
  ['flooded', 'flooded'],
  ['gel', 'gel'],
] as const;

export const FACTS = {
  made: 'Made',
  lot: 'Lot',
  months: 'Months in service',
  vehicle: 'Vehicle',
  site: 'Site',
  type: 'Type',
  lastTest: 'Last test',
  charge: 'State of charge',
  freezes: 'Its acid may freeze from about',
  next: 'Next step',
  set: 'Its set',
  mate: 'Serial',
  verdict: 'Verdict',
} as const;

/** What is asked before something that is not on record is left out; the safe answer stands first. */
export const unsavedQuestion = (serial: string): string =>
  `${serial === '' ? 'What was read here' : `What was read at ${serial}`} is not on record. Go on without it?`;
export const UNSAVED = ['Stay with this battery', 'Go on, without a record'] as const;

export const GIVING_RECORDS = 'Making a workbook of the records';
export const keptSentence = (sheet: string, serial: string, count: number): string =>
  `${serial} is on record for sheet ${sheet}. ${count === 1 ? 'One record is' : `${count} records are`} kept in this pane until you take them as a workbook, below.`;
export const RECORDING = 'Putting it on record';
export const recordedSentence = (sheet: string, serial: string, row: number): string =>
  `${serial} is on record: sheet ${sheet}, row ${row}.`;

export const READING_PICTURE = { symbol: 'Reading the picture', row: 'Looking at the selected row' } as const;
