import type { Outcome } from '../../src/basics/outcome.ts';
import { answer, problem } from '../../src/basics/outcome.ts';
import type { BenchEntry, BenchQuestion, YesNo } from '../../src/cranking/benchEntry.ts';
import type { Retest } from '../../src/cranking/batteryTest.ts';
import type { Construction } from '../../src/service/battery.ts';
import { readNumber } from '../../src/inventory/readNumber.ts';
import type { BenchFound } from '../computing/benchAnswer.ts';
import { READING_LABELS } from '../text/benchText.ts';
import type { DoneBefore } from './benchState.ts';

/** The readings that are typed, in the order of the bench. */
export const READINGS = ['restVolts', 'hoursAtRest', 'celsius', 'reading', 'loadVolts', 'least'] as const;
export type ReadingName = (typeof READINGS)[number];

/** What stands in the fields of the bench, as it was typed. */
export type BenchForm = {
  readonly answers: Readonly<Partial<Record<BenchQuestion, YesNo>>>;
  readonly identity: string;
  readonly readings: Readonly<Record<ReadingName, string>>;
  readonly retest: Retest;
  readonly construction: 'AGM' | 'flooded' | 'gel' | '';
  readonly tester: string;
  readonly initials: string;
};

const NO_READINGS: BenchForm['readings'] = {
  restVolts: '',
  hoursAtRest: '',
  celsius: '',
  reading: '',
  loadVolts: '',
  least: '',
};

/** A bench with nothing on it. */
export const EMPTY_BENCH: BenchForm = {
  answers: {},
  identity: '',
  readings: NO_READINGS,
  retest: 0,
  construction: '',
  tester: '',
  initials: '',
};

/** The bench for the next battery: least, temperature, construction, tester and initials stay. */
export function nextBench({ readings, construction, tester, initials }: BenchForm): BenchForm {
  const { least, celsius } = readings;
  return {
    ...EMPTY_BENCH,
    readings: { ...NO_READINGS, least, celsius },
    construction,
    tester,
    initials,
  };
}

/** The readings as numbers, and what is wrong with those that are none. */
export type ReadReadings = {
  readonly values: Partial<Record<ReadingName, number>>;
  readonly wrong: Partial<Record<ReadingName, Outcome<never>>>;
};

/** A field as it is labelled, so that a refusal names what the clerk sees, with its unit. */
const wordsOf = (name: ReadingName): string => READING_LABELS[name].replace(/^or /, '');

/** The units that may stand behind a number in its field: degrees among the volts are a reading in the wrong field. */
const UNITS: Readonly<Record<ReadingName, RegExp>> = {
  restVolts: /^v/i,
  hoursAtRest: /^$/,
  celsius: /^(°\s*|deg)?[cf]?\W*$/i,
  reading: /^(a|cca|ca|mca|en|din|iec|sae)/i,
  loadVolts: /^v/i,
  least: /^(v|a|cca|ca|mca|en|din|iec|sae)/i,
};

/** The readings as they were typed: a decimal comma and the field's unit behind the number are understood. */
export function readReadings(readings: BenchForm['readings']): ReadReadings {
  const read: ReadReadings = { values: {}, wrong: {} };
  for (const name of READINGS) {
    const typed = readings[name].trim();
    if (typed === '') continue;
    const { value } = readNumber(typed);
    const unit = /[a-z°]+\W*$/i.exec(typed)?.[0] ?? '';
    const isOfField = unit === '' || UNITS[name].test(unit);
    if (value === undefined || !isOfField)
      read.wrong[name] = problem('badInput', 'notANumber', wordsOf(name), typed);
    else read.values[name] = value;
  }
  return read;
}

/** What the bench knows so far, from the fields, the inventory and what was done at this bench before. */
export function entryOf(
  form: BenchForm,
  found: BenchFound | undefined,
  before: DoneBefore | undefined,
): Outcome<BenchEntry> {
  const { values, wrong } = readReadings(form.readings);
  const first = Object.values(wrong)[0];
  if (first !== undefined) return first;
  const { case: cracked, posts, heat, alone, frost } = form.answers;
  const construction: Construction | undefined = form.construction || found?.battery?.construction;
  const known = found?.battery?.readings;
  return answer({
    look: { ...(cracked && { case: cracked }), ...(posts && { posts }), ...(heat && { heat }) },
    ...(alone && { alone }),
    ...(frost && { frost }),
    ...values,
    retest: form.retest,
    ...optional('chargedOn', before?.chargedOn ?? known?.chargedOn),
    ...optional('testedOn', before?.testedOn ?? known?.testedOn),
    ...optional('construction', construction),
    ...optional('coldestOfPlace', found?.coldest),
  });
}

function optional<K extends keyof BenchEntry>(key: K, value: BenchEntry[K] | undefined): Partial<BenchEntry> {
  return value === undefined ? {} : ({ [key]: value } as Partial<BenchEntry>);
}
