import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { properShare } from './lifeArguments.ts';
import { countedSample } from './countedSample.ts';
import type { LifeRecord } from './lifeRecord.ts';
import type { LifeSample } from './lifeSample.ts';
import { lifeSample } from './lifeSample.ts';
import { normalQuantile } from './standardLife.ts';

/** One line of a life table: an age at which lives failed. A figure that is not defined there is undefined. */
export type LifeTableRow = {
  readonly month: number;
  /** Lives under record before this age and not out before it. */
  readonly atRisk: number;
  readonly failed: number;
  /** Share still good after this age, of those good at the table's start age. */
  readonly surviving: number;
  readonly low?: number;
  readonly high?: number;
  readonly standardError?: number;
  readonly cumulativeHazard: number;
};

/** A product-limit table. */
export type LifeTable = {
  readonly rows: readonly LifeTableRow[];
  /** The shares are those of lives that reached this age; 0 = from new. */
  readonly startAge: number;
  /** The largest age on record; how far the last share is known to hold. */
  readonly oldest: number;
  /**
   * The age at which the share fell to 0 although other lives came under record later: from there on the table
   * says nothing, and a later start age is the way round it.
   */
  readonly fellToZeroAt?: number;
};

/** How the limits of the share still good are drawn: on which scale its error is taken for normal. */
export type TableLimits = 'log-log' | 'log' | 'plain';

/** What a life table may be asked for. */
export type LifeTableOptions = {
  /** Confidence of the limits, above 0 and below 1; default 0.9. */
  readonly level?: number;
  readonly limits?: TableLimits;
  /** Shares among lives that reached an age; `enoughAtRisk` = the age from which ten are at risk. Default 0. */
  readonly startAge?: number | 'enoughAtRisk';
};

const ENOUGH_AT_RISK = 10;

/**
 * Share of batteries still good at each age at which some failed, without assuming a form of life (product limit,
 * Kaplan-Meier). At risk at an age are the lives under record before it and not out before it; failures come before
 * other removals of the same age; errors are Greenwood's.
 * @param records  lives whose failures have a known age, ages in one unit [months as a rule]
 * @param options  level of the limits (default 0.9), their scale (default log-log) and the start age (default 0)
 * @returns rows at the ages of failures
 * @problem badInput    when a record can't be a life, or a failure is known only between two ages
 * @problem outOfRange  when the level is not between 0 and 1
 * @problem notEnoughData  when no life is on record or none failed after the start age
 * @source kaplanMeier1958 product-limit estimate
 * @source greenwood1926 variance of the product-limit estimate
 * @example lifeTable([24, 30].map((age) => ({ entry: 0, from: age, to: age, kind: 'exact', count: 1 }))).value.rows[0].surviving // 0.5
 */
export function lifeTable(
  records: readonly LifeRecord[],
  options: LifeTableOptions = {},
): Outcome<LifeTable> {
  // A life that ended as it came under record was never at risk on record.
  const watched = records.filter((record) => record.to > record.entry);
  return andThen(lifeSample(records), () =>
    andThen(lifeSample(watched), (sample) => lifeTableOfSample(sample, options)),
  );
}

/** The same for lives that are already counted by age, each under record before its end. */
export function lifeTableOfSample(given: LifeSample, options: LifeTableOptions = {}): Outcome<LifeTable> {
  if (given.spans.count.length > 0) return problem('badInput', 'agesNotExact', 'life');
  if (given.lives === 0) return problem('notEnoughData', 'noLives', 'life');
  return andThen(properShare(options.level ?? 0.9, 'level'), (level) => {
    const sample = countedSample(given);
    const atRisk = livesAtRisk(sample);
    const startAge = startOf(sample, atRisk, options.startAge ?? 0);
    const draw = { limit: drawLimit[options.limits ?? 'log-log'], reach: normalQuantile((1 + level) / 2) };
    const rows = tableRows(sample, atRisk, startAge, draw);
    if (rows.length === 0) return problem('notEnoughData', 'noFailures', 'life');
    return answer({ rows, startAge, oldest: sample.bounds.latestFrom, ...fallOf(rows) });
  });
}

/**
 * Lives at risk at each age: with every late entry taken from the ends of lives at its age, just the sum over that age
 * and all later ones.
 */
function livesAtRisk({ failed, outlived }: LifeSample): Float64Array {
  const atRisk = new Float64Array(failed.length);
  for (let row = failed.length - 1, sum = 0; row >= 0; row -= 1) {
    sum += failed[row]! + outlived[row]!;
    atRisk[row] = sum;
  }
  return atRisk;
}

/** Back from the age at which most are at risk, as long as enough are. */
function startOf({ age }: LifeSample, atRisk: Float64Array, wanted: number | 'enoughAtRisk'): number {
  if (wanted !== 'enoughAtRisk') return wanted;
  let row = atRisk.indexOf(atRisk.reduce((most, count) => Math.max(most, count), 0));
  while (row > 0 && atRisk[row - 1]! >= ENOUGH_AT_RISK) row -= 1;
  return row === 0 ? 0 : age[row - 1]!;
}

/** One limit from the share and its relative standard error (the root of Greenwood's sum) times the reach. */
type DrawLimit = (surviving: number, error: number) => number;

const held = (share: number): number => Math.min(1, Math.max(0, share));
const drawLimit: Readonly<Record<TableLimits, DrawLimit>> = {
  'log-log': (surviving, error) => surviving ** Math.exp(error / Math.log(surviving)),
  log: (surviving, error) => held(surviving * Math.exp(error)),
  plain: (surviving, error) => held(surviving * (1 + error)),
};

function tableRows(
  { age, failed }: LifeSample,
  atRisk: Float64Array,
  startAge: number,
  draw: { readonly limit: DrawLimit; readonly reach: number },
): LifeTableRow[] {
  const rows: LifeTableRow[] = [];
  let [surviving, greenwood, cumulativeHazard] = [1, 0, 0];
  for (let row = 0; row < age.length; row += 1) {
    const [dead, among, month] = [failed[row]!, atRisk[row]!, age[row]!];
    if (dead === 0 || month <= startAge) continue;
    surviving *= (among - dead) / among;
    greenwood += dead / (among * (among - dead));
    cumulativeHazard += dead / among;
    rows.push(tableRow({ month, atRisk: among, failed: dead, surviving, cumulativeHazard }, greenwood, draw));
  }
  return rows;
}

type Counted = Omit<LifeTableRow, 'low' | 'high' | 'standardError'>;

function tableRow(
  { month, atRisk, failed, surviving, cumulativeHazard }: Counted,
  greenwood: number,
  { limit, reach }: { readonly limit: DrawLimit; readonly reach: number },
): LifeTableRow {
  const error = Math.sqrt(greenwood);
  const isDefined = surviving > 0;
  return {
    month,
    atRisk,
    failed,
    surviving,
    cumulativeHazard,
    low: isDefined ? limit(surviving, -reach * error) : undefined,
    high: isDefined ? limit(surviving, reach * error) : undefined,
    standardError: isDefined ? surviving * error : undefined,
  };
}

function fallOf(rows: readonly LifeTableRow[]): { fellToZeroAt?: number } {
  const fall = rows.findIndex((row) => row.surviving === 0);
  return fall < 0 || fall === rows.length - 1 ? {} : { fellToZeroAt: rows[fall]!.month };
}
