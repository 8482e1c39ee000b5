import type { Day } from '../basics/calendar.ts';
import { addMonths } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';
import { lifePosterior } from '../life/lifePosterior.ts';
import type { LifePrior } from '../life/lifePrior.ts';
import { DEFAULT_LIFE_PRIOR } from '../life/lifePrior.ts';
import type { LifeRecord } from '../life/lifeRecord.ts';
import { collapseRecords } from '../life/lifeRecord.ts';
import type { Life } from '../service/battery.ts';
import { ageBins } from './ageBins.ts';
import { forecastCounts } from './forecastCounts.ts';

/** A life with what its end counts as; see `Life`. */
export type PastLife = Pick<Life, 'watchedFrom' | 'removed' | 'entry' | 'from' | 'to'> & {
  readonly failed: boolean;
};

/** A forecast made from the rows as they stood some years ago, beside what then happened. */
export type PastTrial = {
  /** The day on which the forecast would have been made. */
  readonly madeOn: Day;
  readonly years: number;
  /** Batteries in service and under record on that day, and failures known by then. */
  readonly inService: number;
  readonly failuresKnown: number;
  /** Failures among those in service, from that day to as-of: mean, 5 % and 95 % point. */
  readonly expected: number;
  readonly low: number;
  readonly high: number;
  readonly happened: number;
  readonly inside: boolean;
};

/** Years before as-of at which the tool is tried. */
export const USUAL_PAST_YEARS: readonly number[] = [1, 2];

/**
 * The forecast tried on a fleet's own past: the same method on the lives as they stood one and two years before
 * as-of, against the failures from then to as-of among the batteries then in service. Batteries go on being taken
 * out for other reasons at the rate seen by then. A day on which nothing was under record is left out.
 * @param lives  lives on record, each with whether it ended in failure
 * @param asOf   day to which the records reach
 * @param prior  belief before the records
 * @param years  whole years before as-of
 * @returns one trial for each year that can be tried, good or bad; none where the records are too young
 * @problem badInput  when a life can't be one
 */
export function ownPast(
  lives: readonly PastLife[],
  asOf: Day,
  prior: LifePrior = DEFAULT_LIFE_PRIOR,
  years: readonly number[] = USUAL_PAST_YEARS,
): Outcome<PastTrial[]> {
  const trials: PastTrial[] = [];
  for (const back of years) {
    const trial = pastTrial(lives, asOf, back, prior);
    if (!trial.ok) return trial;
    if (trial.value !== undefined) trials.push(trial.value);
  }
  return answer(trials);
}

function pastTrial(
  lives: readonly PastLife[],
  asOf: Day,
  years: number,
  prior: LifePrior,
): Outcome<PastTrial | undefined> {
  const madeOn = addMonths(asOf, -12 * years);
  const known = lives.filter(({ watchedFrom }) => watchedFrom <= madeOn);
  const inService = known.filter(({ removed }) => removed === undefined || removed > madeOn);
  if (inService.length === 0) return answer(undefined);
  const records = collapseRecords(known.map((life) => recordOn(life, madeOn)).filter(hasWeight));
  return andThen(lifePosterior(records, prior), (life) => {
    const windows = [{ from: 0, to: (asOf - madeOn) / DAYS_PER_MONTH }];
    const bins = ageBins(inService.map((each) => ageOn(each, madeOn)));
    const request = { life, windows, renewals: false, goneRate: goneRate(known, records, madeOn) };
    const demand = forecastCounts(bins, request).demands[0]!;
    const [low, high] = [demand.quantile(0.05), demand.quantile(0.95)];
    const happened = inService.filter(({ failed, removed }) => failed && (removed ?? asOf) <= asOf).length;
    return answer({
      ...{ madeOn, years, inService: inService.length, failuresKnown: life.failures },
      ...{ expected: demand.expected, low, high, happened, inside: happened >= low && happened <= high },
    });
  });
}

/** Age on a day while in service; months on a shelf since then can only make it too old, never older than the end. */
function ageOn({ watchedFrom, entry, from }: PastLife, day: Day): number {
  return Math.min(from, entry + (day - watchedFrom) / DAYS_PER_MONTH);
}

function recordOn(life: PastLife, day: Day): LifeRecord {
  const { entry, removed, failed, from, to } = life;
  const inService = removed === undefined || removed > day;
  if (inService || !failed) {
    const age = Math.max(entry, inService ? ageOn(life, day) : from);
    return { entry, from: age, to: age, kind: 'right', count: 1 };
  }
  const start = Math.max(from, entry);
  return { entry, from: start, to, kind: to > start ? 'interval' : 'exact', count: 1 };
}

const hasWeight = ({ entry, to }: LifeRecord): boolean => to > entry;

function goneRate(known: readonly PastLife[], records: readonly LifeRecord[], day: Day): number {
  const gone = known.filter(
    ({ removed, failed }) => removed !== undefined && removed <= day && !failed,
  ).length;
  const months = records.reduce((sum, { entry, to, count }) => sum + (to - entry) * count, 0);
  return months > 0 ? gone / months : 0;
}
