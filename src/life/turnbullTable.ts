import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { LifeRecord } from './lifeRecord.ts';
import { lifeSample } from './lifeSample.ts';

/** A share of lives that end after `from` and no later than `to`; where in between, the records don't say. */
export type LifeStep = { readonly from: number; readonly to: number; readonly share: number };

/** The freest life that inspection records allow: steps between which the share still good is flat. */
export type TurnbullTable = { readonly steps: readonly LifeStep[]; readonly logLikelihood: number };

/** A place where a likelihood of inspection records can put lives. */
type Slot = { readonly from: number; readonly to: number };
type Row = { readonly count: number; readonly slots: readonly number[] };

const MOST_ROUNDS = 200_000;
const SETTLED = 1e-11;
const NEXT_TO_NONE = 1e-7;

/**
 * Share of lives ended between ages, from records of all kinds of which many say only "failed between two looks",
 * without assuming a form of life (Turnbull's estimate, by expectation and maximisation). Lives must be under record
 * from new.
 * @param records  lives, ages in one unit [months as a rule]
 * @returns steps with their shares (`to` is Infinity where some never failed on record), and the log-likelihood
 * @problem badInput    when a record can't be a life, or came under record late
 * @problem notEnoughData  when nothing failed
 * @problem noConvergence  when the shares don't settle
 * @source turnbull1976 the estimate and its self-consistency
 * @example turnbullTable([{ entry: 0, from: 6, to: 12, kind: 'interval', count: 3 }, { entry: 0, from: 12, to: 12, kind: 'right', count: 1 }]).value.steps[0].share // 0.75
 */
export function turnbullTable(records: readonly LifeRecord[]): Outcome<TurnbullTable> {
  if (records.some(({ entry }) => entry > 0)) return problem('badInput', 'lateRecords', 'life');
  return andThen(lifeSample(records), ({ failures }) => {
    if (failures === 0) return problem('notEnoughData', 'noFailures', 'life');
    const slots = slotsOf(records);
    const rows = records.map((record) => ({ count: record.count, slots: slotsWithin(record, slots) }));
    const shares = selfConsistent(rows, slots.length);
    if (shares === undefined) return problem('noConvergence', 'noConvergence', 'life');
    const steps = slots.map((slot, index) => ({ ...slot, share: shares[index]! }));
    return answer({
      steps: steps.filter(({ share }) => share > NEXT_TO_NONE),
      logLikelihood: heightOf(rows, shares),
    });
  });
}

/** The ages between which a record's life ended; from itself where it is known exactly. */
function spanOf({ kind, from, to }: LifeRecord): Slot {
  if (kind === 'right') return { from, to: Number.POSITIVE_INFINITY };
  return { from: kind === 'left' ? 0 : from, to };
}

/** The spans between a beginning and an end of some record with neither between them: only they can hold lives. */
function slotsOf(records: readonly LifeRecord[]): Slot[] {
  const spans = records.map(spanOf);
  const exact = new Set(spans.filter(({ from, to }) => from === to).map(({ to }) => to));
  const ends = [...new Set(spans.map(({ to }) => to))].sort((a, b) => a - b);
  const starts = [...new Set(spans.filter(({ from, to }) => from < to).map(({ from }) => from))].sort(
    (a, b) => a - b,
  );
  const slots = ends.flatMap((to, index): Slot[] => {
    if (exact.has(to)) return [{ from: to, to }];
    const from = starts.filter((start) => start < to).at(-1);
    const before = ends[index - 1] ?? Number.NEGATIVE_INFINITY;
    return from !== undefined && from >= before ? [{ from, to }] : [];
  });
  return slots;
}

function slotsWithin(record: LifeRecord, slots: readonly Slot[]): number[] {
  const span = spanOf(record);
  const isExact = span.from === span.to;
  return slots.flatMap((slot, index) => {
    const inside = isExact
      ? slot.from === span.from && slot.to === span.to
      : slot.to <= span.to && slot.from >= span.from && slot.to > span.from;
    return inside ? [index] : [];
  });
}

/** Each round shares every life out over its slots as the last shares say, until none would gain by more. */
function selfConsistent(rows: readonly Row[], size: number): number[] | undefined {
  const lives = rows.reduce((sum, { count }) => sum + count, 0);
  let shares = new Array<number>(size).fill(1 / size);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const pull = pullOf(rows, shares, lives);
    const worst = pull.reduce(
      (most, each, index) => Math.max(most, each - 1, shares[index]! * Math.abs(each - 1)),
      0,
    );
    if (worst < SETTLED) return shares;
    shares = shares.map((share, index) => share * pull[index]!);
  }
  return undefined;
}

/** By how much each slot's share would grow: the mean over lives of the likelihood it brings over the one they have. */
function pullOf(rows: readonly Row[], shares: readonly number[], lives: number): Float64Array {
  const pull = new Float64Array(shares.length);
  for (const { count, slots } of rows) {
    const each = count / lives / chanceOf(slots, shares);
    for (const slot of slots) pull[slot]! += each;
  }
  return pull;
}

function chanceOf(slots: readonly number[], shares: readonly number[]): number {
  let sum = 0;
  for (const slot of slots) sum += shares[slot]!;
  return sum;
}

const heightOf = (rows: readonly Row[], shares: readonly number[]): number =>
  rows.reduce((sum, { count, slots }) => sum + count * Math.log(chanceOf(slots, shares)), 0);
