import { batch } from '@preact/signals';
import type { Retest } from '../../src/cranking/batteryTest.ts';
import type { BenchAnswer } from '../../src/cranking/benchAnswer.ts';
import type { BenchEntry } from '../../src/cranking/benchEntry.ts';
import type { Outcome } from '../../src/basics/outcome.ts';
import { answer } from '../../src/basics/outcome.ts';
import { CHARGE_HEADS, chargeRow, TEST_HEADS, testRow } from '../../src/inventory/benchRecord.ts';
import type { Cell } from '../../src/inventory/inventory.ts';
import type { Format } from '../../src/report/sheet.ts';
import type { BenchForm } from '../bench/benchForm.ts';
import { nextBench } from '../bench/benchForm.ts';
import type { BenchState, DoneBefore } from '../bench/benchState.ts';
import { benchSerial } from '../bench/benchState.ts';
import type { BenchFound } from '../computing/benchAnswer.ts';
import type { HostCell } from '../host/sheetHost.ts';
import type { Session } from '../session.ts';
import { RECORDING, recordedSentence } from '../views/bench/text.ts';
import { homeChosen } from './home.ts';
import { underway } from './underway.ts';

/** Looks up the battery that the identity field names; what the inventory knows fills fields that are empty. */
export async function identify(session: Session): Promise<void> {
  const { bench, computing } = session;
  const text = bench.form.value.identity;
  const found = text.trim() === '' ? undefined : await computing.ask('bench', text);
  // Another battery may have been scanned while this one was looked up.
  if (bench.form.value.identity !== text) return;
  batch(() => {
    bench.found.value = found?.ok ? found.value : undefined;
    bench.identityProblem.value = found !== undefined && !found.ok ? found.problem : undefined;
    if (found?.ok) bench.form.value = withKnown(bench.form.value, found.value, doneBefore(bench));
  });
}

/** What was put on record at this bench for the battery that lies there. */
export function doneBefore(bench: BenchState): DoneBefore | undefined {
  return bench.before.value.get(benchSerial(bench).toUpperCase());
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

/** Puts the test of the battery on the bench on record, as a row of the sheet `Tests`. */
export async function recordTest(session: Session, entry: BenchEntry, found: BenchAnswer): Promise<boolean> {
  const { bench } = session;
  const { form } = bench;
  const battery = bench.found.value?.battery;
  const cells = testRow({
    ...recordHead(session),
    entry,
    answer: found,
    ...(battery?.place !== undefined && { place: battery.place }),
    tester: form.value.tester,
  });
  const date = cells[0] as number;
  const done = await record(session, 'Tests', TEST_HEADS, cells);
  if (!done) return false;
  const { reading, least, retest } = entry;
  remember(bench, found.readingsCount ? { testedOn: date, last: { reading, least, retest } } : {});
  bench.recorded.value = { ...bench.recorded.value, tests: bench.recorded.value.tests + 1 };
  bench.isRecorded.value = true;
  return true;
}

/** Puts a charge of the battery on the bench on record, as a row of the sheet `Charges`. */
export async function recordCharge(session: Session, isFull: boolean, charger: string): Promise<boolean> {
  const { bench } = session;
  const cells = chargeRow({ ...recordHead(session), isFull, charger });
  const done = await record(session, 'Charges', CHARGE_HEADS, cells);
  if (!done) return false;
  if (isFull) remember(bench, { chargedOn: cells[0] as number });
  bench.recorded.value = { ...bench.recorded.value, charges: bench.recorded.value.charges + 1 };
  return true;
}

/** Clears the bench for the next battery; what stays the same stays. */
export function nextBattery({ bench }: Session): void {
  batch(() => {
    bench.form.value = nextBench(bench.form.value);
    bench.found.value = undefined;
    bench.identityProblem.value = undefined;
    bench.isRecorded.value = false;
  });
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

const FORMATS: Readonly<Record<string, Format>> = {
  Date: 'date',
  'Rest volts': 'plain',
};

async function record(
  session: Session,
  sheet: 'Tests' | 'Charges',
  heads: readonly string[],
  cells: readonly Cell[],
): Promise<boolean> {
  const home = await homeChosen(session);
  if (home === undefined) return false;
  const row = cells.map((value, column) => ({
    value: value as HostCell,
    format: FORMATS[heads[column]!] ?? (typeof value === 'number' ? ('plain' as const) : ('text' as const)),
  }));
  const written = await underway(session, RECORDING, async (): Promise<Outcome<{ row: number }>> => {
    const at = await session.host.appendRow(sheet, heads, row);
    return at.ok ? answer({ row: at.value }) : at;
  });
  if (written === undefined) return false;
  session.notice.value = {
    kind: 'done',
    text: recordedSentence(sheet, benchSerial(session.bench), written.row + 1),
  };
  return true;
}

function remember(bench: BenchState, more: DoneBefore): void {
  const key = benchSerial(bench).toUpperCase();
  const before = bench.before.value.get(key);
  bench.before.value = new Map(bench.before.value).set(key, { ...before, ...more });
}
