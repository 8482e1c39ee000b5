import { batch } from '@preact/signals';
import type { Retest } from '../../src/cranking/batteryTest.ts';
import { problem } from '../../src/basics/outcome.ts';
import type { BenchAnswer } from '../../src/cranking/benchAnswer.ts';
import type { BenchEntry } from '../../src/cranking/benchEntry.ts';
import { chargeRow, testRow } from '../../src/inventory/benchRecord.ts';
import type { BenchForm } from '../bench/benchForm.ts';
import { nextBench } from '../bench/benchForm.ts';
import type { BenchState, DoneBefore } from '../bench/benchState.ts';
import { benchSerial, caseLineOf, doneBefore, hasUnsaved } from '../bench/benchState.ts';
import type { BenchFound } from '../computing/benchAnswer.ts';
import type { Session } from '../session.ts';
import { UNSAVED, unsavedQuestion } from '../text/benchText.ts';
import { ask } from './ask.ts';
import { putOnRecord } from './benchRecords.ts';

/** Takes a text as the name of the battery on the bench; the one before it has nothing more to say. */
export function giveIdentity({ bench, notice }: Session, identity: string): void {
  batch(() => {
    bench.form.value = { ...bench.form.value, identity };
    bench.isRecorded.value = false;
    bench.onRecord.value = undefined;
    bench.found.value = undefined;
    bench.identityProblem.value = undefined;
    if (bench.last.value !== undefined) notice.value = undefined;
    bench.last.value = undefined;
  });
}

/** Looks up the battery that the identity field names; what the inventory knows fills fields that are empty. */
export async function identify(session: Session): Promise<void> {
  const { bench, computing } = session;
  const { identity: text, retest } = bench.form.value;
  bench.isLooking.value = text.trim() !== '';
  try {
    const found = text.trim() === '' ? undefined : await computing.ask('bench', text);
    // Another battery may have been scanned while this one was looked up.
    if (bench.form.value.identity !== text) return;
    batch(() => {
      bench.found.value = found?.ok ? found.value : undefined;
      bench.identityProblem.value = found !== undefined && !found.ok ? found.problem : undefined;
      if (!found?.ok) return;
      const known = withKnown(bench.form.value, found.value, doneBefore(bench));
      // Which test it is may have been said while the battery was looked up.
      bench.form.value =
        bench.form.value.retest === retest ? known : { ...known, retest: bench.form.value.retest };
    });
  } finally {
    if (bench.form.value.identity === text) bench.isLooking.value = false;
  }
}

function withKnown(form: BenchForm, { battery }: BenchFound, before: DoneBefore | undefined): BenchForm {
  const known = battery?.readings;
  const least = form.readings.least || (known?.least === undefined ? '' : String(known.least));
  return { ...form, readings: { ...form.readings, least }, retest: retestOf(known, before) };
}

/** The next test of a battery whose last one on record was under the least: a retest, or the second. */
function retestOf(
  known: { reading?: number; least?: number; retest?: Retest } | undefined,
  before: DoneBefore | undefined,
): Retest {
  const last = before?.last ?? known;
  if (last?.reading === undefined || last.least === undefined || last.reading >= last.least) return 0;
  return last.retest === undefined || last.retest === 0 ? 1 : 2;
}

/**
 * Puts the test of the battery on the bench on record, as a row of the sheet `Tests`.
 * @returns whether it is on record and the fields still stand as they were recorded
 */
export async function recordTest(session: Session, entry: BenchEntry, found: BenchAnswer): Promise<boolean> {
  const { bench } = session;
  if (!isNamed(bench)) return false;
  const line = caseLineOf(bench, session.asOf.value, entry, found);
  const before = doneBefore(bench);
  const form = bench.form.value;
  const place = bench.found.value?.battery?.place;
  const head = recordHead(session);
  const cells = testRow({
    ...{ ...head, entry, answer: found, tester: bench.form.value.tester },
    ...(place !== undefined && { place }),
  });
  if (!(await putOnRecord(session, 'Tests', head.serial, cells))) return false;
  const { reading, least, retest } = entry;
  const counts = found.readingsCount ? { testedOn: head.date, last: { reading, least, retest } } : {};
  batch(() => {
    remember(bench, head.serial, counts);
    bench.recorded.value = { ...bench.recorded.value, tests: bench.recorded.value.tests + 1 };
    bench.last.value = { serial: head.serial, line };
    // While the row was written another battery may have come, or a reading may have been put right.
    if (bench.form.value.identity === form.identity) bench.onRecord.value = { entry, answer: found, before };
    bench.isRecorded.value = bench.form.value === form;
  });
  return bench.isRecorded.value;
}

/**
 * Puts a charge of the battery on the bench on record, as a row of the sheet `Charges`.
 * @returns whether it is on record and that battery still lies there
 */
export async function recordCharge(session: Session, isFull: boolean, charger: string): Promise<boolean> {
  const { bench } = session;
  if (!isNamed(bench)) return false;
  const head = recordHead(session);
  const cells = chargeRow({ ...head, isFull, charger });
  if (!(await putOnRecord(session, 'Charges', head.serial, cells))) return false;
  batch(() => {
    if (isFull) remember(bench, head.serial, { chargedOn: head.date });
    bench.recorded.value = { ...bench.recorded.value, charges: bench.recorded.value.charges + 1 };
  });
  return benchSerial(bench) === head.serial;
}

/** A record of no battery in particular, or under a text that names none, is of no use to anyone. */
function isNamed(bench: BenchState): boolean {
  if (bench.identityProblem.value !== undefined) return false;
  const named = benchSerial(bench) !== '';
  if (!named) {
    const wanted = problem('missing', 'missing', 'serial');
    bench.identityProblem.value = wanted.ok ? undefined : wanted.problem;
  }
  return named;
}

/**
 * Clears the bench for the next battery; what stays the same stays, and the line of a battery just put on record stands
 * until another is named. What is not on record is left out only where the user says so.
 * @returns whether the bench is clear
 */
export async function nextBattery(session: Session): Promise<boolean> {
  const { bench } = session;
  if (hasUnsaved(bench) && (await ask(session, unsavedQuestion(benchSerial(bench)), UNSAVED)) !== 1)
    return false;
  batch(() => {
    bench.form.value = nextBench(bench.form.value);
    bench.found.value = undefined;
    bench.identityProblem.value = undefined;
    bench.onRecord.value = undefined;
    bench.isRecorded.value = false;
    if (bench.last.value === undefined) session.notice.value = undefined;
  });
  return true;
}

function recordHead({ bench, asOf, timeOfDay }: Session) {
  const battery = bench.found.value?.battery;
  return {
    date: asOf.value + Math.round(timeOfDay() * MINUTES) / MINUTES,
    serial: benchSerial(bench),
    ...(battery !== undefined && { vehicle: battery.vehicle }),
    initials: bench.form.value.initials,
  };
}

/** A record is dated to the minute. */
const MINUTES = 24 * 60;

function remember(bench: BenchState, serial: string, more: DoneBefore): void {
  const key = serial.toUpperCase();
  const before = bench.before.value.get(key);
  bench.before.value = new Map(bench.before.value).set(key, { ...before, ...more });
}
