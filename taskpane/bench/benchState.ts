import type { Signal } from '@preact/signals';
import { signal } from '@preact/signals';
import type { Day } from '../../src/basics/calendar.ts';
import type { Problem } from '../../src/basics/outcome.ts';
import type { BenchAnswer } from '../../src/cranking/benchAnswer.ts';
import type { BenchEntry } from '../../src/cranking/benchEntry.ts';
import { caseLine } from '../../src/inventory/caseLine.ts';
import type { Cell } from '../../src/inventory/inventory.ts';
import type { BenchFound } from '../computing/benchAnswer.ts';
import type { BenchForm } from './benchForm.ts';
import { EMPTY_BENCH } from './benchForm.ts';

/** What was put on record at this bench since the inventory was read; the sheet knows it, the reading not yet. */
export type DoneBefore = {
  readonly testedOn?: number;
  readonly chargedOn?: number;
  /** The last test that counted. */
  readonly last?: Pick<BenchEntry, 'reading' | 'least' | 'retest'>;
};

/** The test that was put on record for the battery that still lies there. */
export type RecordedTest = {
  readonly entry: BenchEntry;
  readonly answer: BenchAnswer;
  /** What was on record before it: a correction of the same test is judged by that. */
  readonly before: DoneBefore | undefined;
};

/** Records that are kept here until they are given to the user as a workbook of its own. */
export type KeptRecord = { readonly sheet: 'Tests' | 'Charges'; readonly cells: readonly Cell[] };

/** The bench: its fields, the battery that they name, and what is on record since. */
export type BenchState = {
  readonly form: Signal<BenchForm>;
  readonly found: Signal<BenchFound | undefined>;
  /** The battery is being looked up: nothing is judged before it is known what it is. */
  readonly isLooking: Signal<boolean>;
  readonly identityProblem: Signal<Problem | undefined>;
  readonly before: Signal<ReadonlyMap<string, DoneBefore>>;
  /** Tests and charges put on record at this bench, for the count that is shown. */
  readonly recorded: Signal<{ readonly tests: number; readonly charges: number }>;
  /** The last test on record of the battery on the bench, if it has been tested here now. */
  readonly onRecord: Signal<RecordedTest | undefined>;
  /** The fields stand as they were recorded. */
  readonly isRecorded: Signal<boolean>;
  /** The last battery that was put on record and its line for the case, until another is named. */
  readonly last: Signal<{ readonly serial: string; readonly line: string } | undefined>;
  /** A row is being written: until it stands, no other is. */
  readonly isWriting: Signal<boolean>;
  readonly kept: Signal<readonly KeptRecord[]>;
};

/** A bench at which nothing has been done yet. */
export function newBench(): BenchState {
  return {
    form: signal(EMPTY_BENCH),
    found: signal<BenchFound | undefined>(undefined),
    isLooking: signal(false),
    identityProblem: signal<Problem | undefined>(undefined),
    before: signal<ReadonlyMap<string, DoneBefore>>(new Map()),
    recorded: signal({ tests: 0, charges: 0 }),
    onRecord: signal<RecordedTest | undefined>(undefined),
    isRecorded: signal(false),
    last: signal<{ serial: string; line: string } | undefined>(undefined),
    isWriting: signal(false),
    kept: signal<readonly KeptRecord[]>([]),
  };
}

/** The serial of the battery on the bench: as the inventory writes it, else as it was typed. */
export function benchSerial({ form, found }: BenchState): string {
  return found.value?.serial ?? form.value.identity.trim();
}

/**
 * Whether something stands on the bench that was read or seen and is not on record: volts, hours, amperes, damage, heat,
 * frost. What stays from one battery to the next, and which battery it is, is not lost by moving on.
 */
export function hasUnsaved({ form, isRecorded }: BenchState): boolean {
  if (isRecorded.value) return false;
  const { answers, readings } = form.value;
  const { restVolts, hoursAtRest, reading, loadVolts } = readings;
  const isRead = [restVolts, hoursAtRest, reading, loadVolts].some((typed) => typed.trim() !== '');
  return isRead || [answers.case, answers.posts, answers.heat, answers.frost].includes('yes');
}

/** The line for the case of the battery on the bench. */
export function caseLineOf(
  { found }: BenchState,
  testedOn: Day,
  entry: BenchEntry,
  answered: BenchAnswer,
): string {
  const { battery, average } = found.value ?? {};
  return caseLine({
    ...(battery?.made !== undefined && { made: battery.made }),
    ...{ testedOn, entry, answer: answered },
    ...(average !== undefined && { average }),
  });
}

/**
 * What was on record at this bench for the battery that lies there, before the test that is being made. Who corrects a
 * test that was just recorded makes no new one; who says that it is another one does.
 */
export function doneBefore(bench: BenchState): DoneBefore | undefined {
  const { onRecord, before, form } = bench;
  const now = onRecord.value;
  if (now !== undefined && now.entry.retest === form.value.retest) return now.before;
  return before.value.get(benchSerial(bench).toUpperCase());
}
