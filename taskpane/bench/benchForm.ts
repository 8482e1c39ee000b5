import type { Outcome } from '../../src/basics/outcome.ts';
import { answer } from '../../src/basics/outcome.ts';
import type { BenchEntry, BenchQuestion, YesNo } from '../../src/cranking/benchEntry.ts';
import type { Retest } from '../../src/cranking/batteryTest.ts';
import type { Construction } from '../../src/service/battery.ts';
import type { BenchFound } from '../computing/benchAnswer.ts';
import type { DoneBefore } from './benchState.ts';
import type { TypedReadings } from './readReadings.ts';
import { readReadings } from './readReadings.ts';

/** What stands in the fields of the bench, as it was typed. */
export type BenchForm = {
  readonly answers: Readonly<Partial<Record<BenchQuestion, YesNo>>>;
  readonly identity: string;
  readonly readings: TypedReadings;
  readonly retest: Retest;
  readonly construction: 'AGM' | 'flooded' | 'gel' | '';
  readonly tester: string;
  readonly initials: string;
};

const NO_READINGS: TypedReadings = {
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
