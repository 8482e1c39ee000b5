import { wholeNumber } from '../shownNumber.ts';
import type { RemovalMeaning } from '../../src/service/battery.ts';
import type { LifeGrouping } from '../../src/planning/lifeByGroup.ts';

/** The sentences of the Life view. */

export const LOOKING = 'Looking at how long batteries last here';
export const NO_INVENTORY = 'Nothing has been read yet: open an inventory and read it in the Inventory view.';
export const TO_INVENTORY = 'Go to the inventory';

export const CAUSES = {
  heading: 'Why removed',
  hint: 'Each text of the sheet once. What is marked as a guess was guessed from its words: correct it where it is wrong. Taken out good: vehicle gone, mate or whole set renewed, planned, stolen.',
  state: (texts: number, guesses: number) =>
    `${texts === 1 ? 'one text' : `${texts} texts`}, ${guesses === 0 ? 'none' : guesses} guessed`,
  none: 'No battery has been removed on this sheet.',
  rows: (count: number) => (count === 1 ? '1 row' : `${wholeNumber(count)} rows`),
  guess: 'a guess',
  empty: '(nothing written)',
} as const;

export const MEANINGS: Readonly<Record<RemovalMeaning, string>> = {
  failed: 'failed',
  good: 'taken out good',
  damaged: 'damaged',
  notSaid: 'not said',
};

export const WORDS = {
  heading: 'How long they last here',
  half: (best: string, low: string, high: string) => `Half are gone by ${best} months (${low} to ${high}).`,
  tenth: (best: string, low: string, high: string) =>
    `One in ten is gone by ${best} months (${low} to ${high}).`,
  wearOut: (best: string, low: string, high: string) =>
    `Wear-out ${best} (${low} to ${high}); 1 is none, 3 is strong.`,
  rests: (failures: number, lives: number) =>
    `${wholeNumber(failures)} failures among ${wholeNumber(lives)} battery lives on record.`,
  few: 'There are few failures on record, so a rule of thumb speaks with them. Never trust a curve through three failures alone.',
  none: 'No failure is on record: the rule of thumb carries the answer alone.',
  many: 'The records carry the answer; the rule of thumb no longer matters.',
  notSaid: (half: string, other: string) =>
    `Removals without a stated reason count as taken out good: half gone by ${half} months. Had they all failed, it would be ${other}. Ask whoever knows.`,
} as const;

export const PICTURE = {
  heading: 'The picture',
  title: 'Share still good, by months in service',
  x: 'Months in service',
  y: 'Still good',
  steps: 'what happened so far',
  curve: 'the curve that the plan counts with',
  band: '90 % band',
  ticks: 'batteries now in service at that age',
  numbers: 'Numbers of this picture',
  age: 'Months',
  share: 'Still good',
  low: 'low',
  high: 'high',
  there: 'In service',
  noSteps: 'Nothing has failed on record yet, so there are no steps.',
} as const;

export const THUMB = {
  heading: 'Rule of thumb',
  state: (half: string, tenth: string) => `half gone by ${half} months, one in ten by ${tenth}`,
  hint: 'What is believed before any record: a judgement, wide on purpose. Enter your own if you have one.',
  half: 'Half gone by, months',
  tenth: 'One in ten gone by, months',
  sure: 'I am sure of this',
  sureHint: 'Narrows the belief, so that it takes more failures to overrule it.',
  take: 'Take this rule',
  back: 'Back to the usual rule',
} as const;

export const GROUPS = {
  heading: 'Do they differ?',
  hint: 'Groups are named as the sheet names them: one type in two spellings makes two groups.',
  by: { type: 'By type', site: 'By site', maker: 'By maker' } satisfies Record<LifeGrouping, string>,
  numbers: {
    type: 'Numbers by type',
    site: 'Numbers by site',
    maker: 'Numbers by maker',
  } satisfies Record<LifeGrouping, string>,
  name: 'Group',
  unnamed: '(not said)',
  lives: 'Lives',
  failures: 'Failures',
  half: 'Half gone by, months',
  band: '90 % band',
  differ: (chance: string) =>
    `They differ: if they were alike, chance alone would show so much in ${chance} of fleets.`,
  alike: (chance: string) =>
    `Nothing shows that they differ: chance alone would show so much in ${chance} of fleets that are alike.`,
  cannotSay: 'Too few failures in more than one of them to say whether they differ.',
  notCompared: (names: string) => `Not compared, for their own records are too few: ${names}.`,
  one: 'All batteries are of one type, site and maker, or these are not on the sheet.',
} as const;

export const PAST = {
  heading: 'Tried on your own past',
  hint: 'The same method on the rows as they stood then, against what happened since.',
  young: 'The records are too young to try this.',
} as const;

export const ODD = {
  heading: 'Stands out',
  hint: 'More early failures (by 24 months) than chance explains, at least three, allowing for how many groups were looked at.',
  none: 'No lot, maker, site or vehicle stands out.',
  found: (kind: string, name: string, failures: number, lives: number, expected: string) =>
    `${kind.charAt(0).toUpperCase()}${kind.slice(1)} ${name}: ${failures} early failures among ${lives} lives, where ${expected} would be expected.`,
  todo: {
    lot: 'Hold what is left of the lot, and report it.',
    vehicle: "Look at the vehicle's charging system and for loads left on.",
    site: 'Look at how batteries are charged and stored there.',
    maker: 'Ask the maker, and look whether one lot or one site is behind it.',
  } as Readonly<Record<string, string>>,
} as const;

export const CLAIMS = {
  heading: 'Failed within warranty',
  state: (open: number, late: number) =>
    `${wholeNumber(open)} to claim${late === 0 ? '' : `, ${wholeNumber(late)} too late`}`,
  months: 'Warranty, months from installation',
  days: 'Days within which a claim must be made',
  hint: 'Both stand in your contract. The warranty is counted from the first installation, the time for a claim from the removal.',
  list: 'List the claims',
  none: 'No failure on record falls within this warranty.',
  serial: 'Serial',
  failed: 'Failed',
  covered: 'Covered until',
  by: 'Claim by',
  left: 'Days left',
  late: 'too late',
} as const;

export const STEADY = {
  question:
    'Has the number of vehicles been about the same for the last two battery lives (about ten years)?',
  hint: 'Only then do the ages of today say how long batteries stay. A fleet that grew would look short-lived.',
  yes: 'Yes, about the same',
  bought: 'Batteries bought in a year',
  boughtHint: 'From your purchase records, to hold the estimate against.',
  says: (half: string, low: string, high: string) =>
    `From ages alone: half have left by ${half} months (${low} to ${high}), for whatever reason.`,
  purchases: (count: string) => `That would mean buying about ${count} a year.`,
  agrees: 'What was bought agrees with that, so the estimate may be used with care.',
  differs:
    'What was bought is another number: the fleet was not steady, or ages are wrong. Do not use this estimate.',
  mark: 'An estimate from ages alone. It is not used in the plan.',
} as const;

export const USE = {
  heading: 'For planning',
  pooled: 'Use for planning: the fleet as one',
  by: {
    type: 'Use for planning: each type apart',
    site: 'Use for planning: each site apart',
    maker: 'Use for planning: each maker apart',
  } satisfies Record<LifeGrouping, string>,
  hint: 'Opens the plan, which counts with this life.',
} as const;
