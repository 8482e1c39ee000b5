import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { LifeRecord } from './lifeRecord.ts';

/**
 * Battery lives as a likelihood needs them: logs of ages taken once, equal ages counted together, no objects
 * to walk through. Make it once, then evaluate as often as wanted.
 */
export type LifeSample = {
  /** Lives that carry weight, and those of them that failed (exactly, in a span or before an age). */
  readonly lives: number;
  readonly failures: number;
  /** Ages at which lives ended or came under record, in rising order and each once where `counted`. */
  readonly age: Float64Array;
  readonly counted: boolean;
  /** Their natural logs. */
  readonly logAge: Float64Array;
  /** Lives that failed at exactly that age. */
  readonly failed: Float64Array;
  /** Lives known to have outlived that age, less the lives that came under record at it. */
  readonly outlived: Float64Array;
  /** Failures known to lie between two ages; log of the first is -Infinity where the life began at 0. */
  readonly spans: LifeSpans;
  /** Youngest and oldest end of a life on record, and where failures can lie: see lifeExistence.ts. */
  readonly bounds: LifeBounds;
};

/** Failures known to lie between two ages, as three columns of one length. */
export type LifeSpans = {
  readonly logFrom: Float64Array;
  readonly logTo: Float64Array;
  readonly count: Float64Array;
};

/** The ages that decide whether a likelihood has a maximum. */
export type LifeBounds = {
  /** Largest age that some life is known to have outlived or failed at or after. */
  readonly latestFrom: number;
  /** Smallest age by which some life is known to have failed; Infinity where none failed. */
  readonly earliestTo: number;
  /** Whether every life came under record after age 0. */
  readonly allEnteredLate: boolean;
};

/** A life in columns, as a sheet holds it: age reached, 1 = failed, age when it came under record. */
export type LifeColumns = {
  readonly months: Float64Array;
  readonly failed: ArrayLike<number>;
  readonly entry?: Float64Array;
};

// More distinct ages than days in 45 years: counting equal rows would only cost time.
const MOST_AGES_COUNTED = 16_384;

/**
 * The sample behind rows of lives. An interval that has no width is an exact age; a span reaches back no
 * further than the age at which the life came under record; a life in service that came under record today
 * says nothing and is left out.
 * @param records lives with ages in one unit
 * @returns the sample
 * @problem badInput  when an age or count is negative or not finite, or an age does not come after the one before it
 */
export function lifeSample(records: readonly LifeRecord[]): Outcome<LifeSample> {
  const wrong = records.findIndex((record) => !isPossible(record));
  if (wrong >= 0) return problem('badInput', 'impossibleLife', 'life', undefined, rowFacts(records, wrong));
  const gathering = startGathering();
  for (const record of records) gather(gathering, record);
  return answer(finished(gathering));
}

/**
 * The sample behind columns of exact and right-censored lives; made for a million rows. Values are taken as
 * they are: months above 0 and above entry, failed 0 or 1.
 */
export function lifeSampleFromColumns(columns: LifeColumns): LifeSample {
  return countedColumns(columns) ?? uncountedColumns(columns);
}

const rowFacts = (records: readonly LifeRecord[], index: number) => {
  const { kind, entry, from, to, count } = records[index]!;
  return { more: { row: index + 1, kind, entry, from, to, count } };
};

function isPossible({ kind, entry, from, to, count }: LifeRecord): boolean {
  if (!(entry >= 0 && from >= 0 && to >= from && count >= 0)) return false;
  if (!(Number.isFinite(entry) && Number.isFinite(to) && Number.isFinite(count))) return false;
  if (kind === 'right') return from >= entry;
  // A battery may fail on the day on which it came under record.
  return to > 0 && (kind === 'exact' ? from >= entry : to > entry);
}

type AgeCount = { failed: number; outlived: number };
type Span = { readonly from: number; readonly to: number; count: number };
type Gathering = {
  readonly ages: Map<number, AgeCount>;
  readonly spans: Map<string, Span>;
  lives: number;
  failures: number;
  latestFrom: number;
  earliestTo: number;
  allEnteredLate: boolean;
};

const startGathering = (): Gathering => ({
  ages: new Map(),
  spans: new Map(),
  lives: 0,
  failures: 0,
  latestFrom: 0,
  earliestTo: Number.POSITIVE_INFINITY,
  allEnteredLate: true,
});

function gather(into: Gathering, record: LifeRecord): void {
  const { entry, to, count } = record;
  if (count === 0 || (record.kind === 'right' && to === entry)) return;
  into.lives += count;
  if (entry > 0) ageCount(into.ages, entry).outlived -= count;
  else into.allEnteredLate = false;
  if (record.kind === 'right') ageCount(into.ages, to).outlived += count;
  else gatherFailure(into, record);
  into.latestFrom = Math.max(into.latestFrom, failureFrom(record));
}

function gatherFailure(into: Gathering, record: LifeRecord): void {
  const from = failureFrom(record);
  into.failures += record.count;
  into.earliestTo = Math.min(into.earliestTo, record.to);
  if (from === record.to) ageCount(into.ages, record.to).failed += record.count;
  else spanCount(into.spans, from, record.to).count += record.count;
}

/** From which age on a life's end is possible; a life under record from an age on had not failed before it. */
function failureFrom({ kind, entry, from, to }: LifeRecord): number {
  if (kind === 'exact' || kind === 'right') return to;
  return kind === 'left' ? entry : Math.max(entry, from);
}

function ageCount(ages: Map<number, AgeCount>, age: number): AgeCount {
  const known = ages.get(age);
  if (known !== undefined) return known;
  const fresh = { failed: 0, outlived: 0 };
  ages.set(age, fresh);
  return fresh;
}

function spanCount(spans: Map<string, Span>, from: number, to: number): Span {
  const key = `${from}|${to}`;
  const known = spans.get(key);
  if (known !== undefined) return known;
  const fresh = { from, to, count: 0 };
  spans.set(key, fresh);
  return fresh;
}

function finished(gathering: Gathering): LifeSample {
  const { ages, spans, lives, failures, latestFrom, earliestTo, allEnteredLate } = gathering;
  const sorted = [...ages].sort(([a], [b]) => a - b);
  const sortedSpans = [...spans.values()].sort((a, b) => a.from - b.from || a.to - b.to);
  return {
    lives,
    failures,
    age: Float64Array.from(sorted, ([age]) => age),
    counted: true,
    logAge: Float64Array.from(sorted, ([age]) => Math.log(age)),
    failed: Float64Array.from(sorted, ([, each]) => each.failed),
    outlived: Float64Array.from(sorted, ([, each]) => each.outlived),
    spans: {
      logFrom: Float64Array.from(sortedSpans, ({ from }) => Math.log(from)),
      logTo: Float64Array.from(sortedSpans, ({ to }) => Math.log(to)),
      count: Float64Array.from(sortedSpans, ({ count }) => count),
    },
    bounds: { latestFrom, earliestTo, allEnteredLate },
  };
}

/** The columns with equal ages counted together, or undefined where ages differ too much for it to pay. */
function countedColumns({ months, failed, entry }: LifeColumns): LifeSample | undefined {
  const gathering = startGathering();
  for (let row = 0; row < months.length; row += 1) {
    gatherExact(gathering, months[row]!, failed[row]!, entry?.[row] ?? 0);
    if (gathering.ages.size > MOST_AGES_COUNTED) return undefined;
  }
  return finished(gathering);
}

function gatherExact(into: Gathering, age: number, failed: number, entry: number): void {
  const end = ageCount(into.ages, age);
  into.lives += 1;
  into.latestFrom = Math.max(into.latestFrom, age);
  if (entry > 0) ageCount(into.ages, entry).outlived -= 1;
  else into.allEnteredLate = false;
  if (failed === 0) {
    end.outlived += 1;
    return;
  }
  end.failed += 1;
  into.failures += 1;
  into.earliestTo = Math.min(into.earliestTo, age);
}

/** The columns row by row: first every end of a life, then every age above 0 at which one came under record. */
function uncountedColumns({ months, failed, entry }: LifeColumns): LifeSample {
  const lives = months.length;
  const late = entry?.filter((age) => age > 0) ?? EMPTY;
  const age = late.length === 0 ? months : joined(months, late);
  const logAge = new Float64Array(age.length);
  const failedAt = new Float64Array(age.length);
  const outlived = new Float64Array(age.length).fill(-1, lives);
  let [failures, latestFrom, earliestTo] = [0, 0, Number.POSITIVE_INFINITY];
  for (let row = 0; row < age.length; row += 1) logAge[row] = Math.log(age[row]!);
  for (let row = 0; row < lives; row += 1) {
    const isFailure = failed[row] !== 0;
    if (age[row]! > latestFrom) latestFrom = age[row]!;
    if (isFailure) failures += 1;
    if (isFailure && age[row]! < earliestTo) earliestTo = age[row]!;
    (isFailure ? failedAt : outlived)[row] = 1;
  }
  const bounds = { latestFrom, earliestTo, allEnteredLate: late.length === lives };
  const columns = { age, logAge, failed: failedAt, outlived, counted: false, spans: NO_SPANS };
  return { lives, failures, ...columns, bounds };
}

function joined(first: Float64Array, second: Float64Array): Float64Array {
  const both = new Float64Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}

const EMPTY = new Float64Array(0);
const NO_SPANS: LifeSpans = { logFrom: EMPTY, logTo: EMPTY, count: EMPTY };
