import type { Signal } from '@preact/signals';
import { signal } from '@preact/signals';
import type { Problem } from '../../src/basics/outcome.ts';
import type { BenchEntry } from '../../src/cranking/benchEntry.ts';
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

/** The bench: its fields, the battery that they name, and what is on record since. */
export type BenchState = {
  readonly form: Signal<BenchForm>;
  readonly found: Signal<BenchFound | undefined>;
  readonly identityProblem: Signal<Problem | undefined>;
  readonly before: Signal<ReadonlyMap<string, DoneBefore>>;
  /** Tests and charges put on record at this bench, for the count that is shown. */
  readonly recorded: Signal<{ readonly tests: number; readonly charges: number }>;
  /** The test of the battery on the bench is on record already. */
  readonly isRecorded: Signal<boolean>;
};

/** A bench at which nothing has been done yet. */
export function newBench(): BenchState {
  return {
    form: signal(EMPTY_BENCH),
    found: signal<BenchFound | undefined>(undefined),
    identityProblem: signal<Problem | undefined>(undefined),
    before: signal<ReadonlyMap<string, DoneBefore>>(new Map()),
    recorded: signal({ tests: 0, charges: 0 }),
    isRecorded: signal(false),
  };
}

/** The serial of the battery on the bench: as the inventory writes it, else as it was typed. */
export function benchSerial({ form, found }: BenchState): string {
  return found.value?.serial ?? form.value.identity.trim();
}
