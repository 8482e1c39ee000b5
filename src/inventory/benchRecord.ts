import type { BenchAnswer } from '../cranking/benchAnswer.ts';
import type { BenchEntry } from '../cranking/benchEntry.ts';
import { countsAsRetest, damageSeen } from '../cranking/benchEntry.ts';
import type { Cell } from './inventory.ts';

/** Heads of the sheet `Tests`, in order. */
export const TEST_HEADS = [
  ...(['Date', 'Serial', 'Vehicle', 'Place in the set', 'Damage', 'Rest volts', 'Hours at rest'] as const),
  ...(['Temperature C', 'Reading', 'Load volts', 'Least', 'Retest', 'Verdict', 'Reason'] as const),
  ...(['Tester used', 'Initials'] as const),
] as const;

/** Heads of the sheet `Charges`, in order. */
export const CHARGE_HEADS = [
  'Date',
  'Serial',
  'Vehicle',
  'Fully charged',
  'Charger used',
  'Initials',
] as const;

/** Which battery a record is about, when and by whom; a date may carry a time of day as its fraction. */
export type RecordHead = {
  readonly date: number;
  readonly serial: string;
  readonly vehicle?: string;
  readonly initials?: string;
};

/** A test at the bench as it goes on record. */
export type TestRecord = RecordHead & {
  readonly place?: string;
  readonly entry: BenchEntry;
  readonly answer: BenchAnswer;
  readonly tester?: string;
};

/** A charge as it goes on record; one that was broken off is recorded as not full and does not count. */
export type ChargeRecord = RecordHead & { readonly isFull: boolean; readonly charger?: string };

/**
 * The row of a test for the sheet `Tests`, in the order of TEST_HEADS. Readings that don't count - of a battery in its
 * set, in frost, not rested, damaged or hot - stand in the reason only, so that no later reading of the sheet judges by
 * them; a retest stands there only where it counts as one.
 * @param record  what was answered, read and judged
 * @returns cells; identifiers are texts and must stay texts
 * @example testRow({ date: 46203, serial: '0012', entry: { look: { case: 'yes' } }, answer: answerByLook({ look: { case: 'yes' } }) })[4] // "case"
 */
export function testRow({
  date,
  serial,
  vehicle = '',
  place = '',
  entry,
  answer,
  tester = '',
  initials = '',
}: TestRecord): Cell[] {
  const { restVolts, hoursAtRest, celsius, reading, loadVolts, least, retest } = entry;
  const counted = (amount: number | undefined): Cell => (answer.readingsCount ? (amount ?? null) : null);
  return [
    ...[date, serial, vehicle, place, damageSeen(entry.look) || 'no'],
    ...[counted(restVolts), hoursAtRest ?? null, celsius ?? null],
    ...[counted(reading), counted(loadVolts), least ?? null, countsAsRetest(entry) ? retest! : null],
    ...[answer.word, reasonText(entry, answer), tester, initials],
  ];
}

function reasonText(entry: BenchEntry, { reason, nextStep, notes, readingsCount }: BenchAnswer): string {
  const read = readingsCount ? '' : uncounted(entry);
  return [`${reason}. ${nextStep}`, ...(read === '' ? [] : [read]), ...notes].join('. ');
}

function uncounted({ restVolts, reading, loadVolts }: BenchEntry): string {
  const read = [
    ...(restVolts === undefined ? [] : [`${restVolts} V`]),
    ...(reading === undefined ? [] : [`${reading} A`]),
    ...(loadVolts === undefined ? [] : [`${loadVolts} V under load`]),
  ];
  return read.length === 0 ? '' : `Read and not counted: ${read.join(', ')}`;
}

/**
 * The row of a charge for the sheet `Charges`, in the order of CHARGE_HEADS.
 * @param record  which battery, when, whether it was charged fully
 * @returns cells
 * @example chargeRow({ date: 46203, serial: '0012', isFull: true })[3] // "yes"
 */
export function chargeRow({
  date,
  serial,
  vehicle = '',
  isFull,
  charger = '',
  initials = '',
}: ChargeRecord): Cell[] {
  return [date, serial, vehicle, isFull ? 'yes' : 'no', charger, initials];
}
