import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import type { LifePosterior } from '../life/lifePosterior.ts';
import { lifePosterior, posteriorMean } from '../life/lifePosterior.ts';
import type { LifePrior } from '../life/lifePrior.ts';
import type { LifeRecord } from '../life/lifeRecord.ts';
import { lifeTable } from '../life/lifeTable.ts';
import { posteriorShareFailed } from '../life/posteriorQuantiles.ts';
import { weibullLogSurvival } from '../life/weibull.ts';
import type { Battery, Life } from '../service/battery.ts';
import { dueNowRows, lifeRecords } from './lifeRecords.ts';

/** Share still good at an age [months], with its 90 % band where it has one. */
export type SharePoint = {
  readonly age: number;
  readonly share: number;
  readonly low?: number;
  readonly high?: number;
};

/** What a picture of the life shows. */
export type LifePicture = {
  /** What happened so far: the share falls to `share` at `age`. Empty where nothing failed or the table can't be made. */
  readonly steps: readonly SharePoint[];
  /** The curve that the plan counts with, at equal steps of age. */
  readonly curve: readonly SharePoint[];
  /** Batteries in service in each whole month of age; the index is the age. */
  readonly inService: readonly number[];
};

const CURVE_POINTS = 60;
const MOST_STEPS = 400;
const LEAST_MONTHS = 24;

/**
 * Steps, curve and ages for a picture of how long batteries last. A failure known to its month only stands at the
 * month's end in the steps; the curve takes the month as it is.
 * @param batteries  as they stand at as-of
 * @param lives      one for each battery life on record
 * @param prior      belief before the records
 * @problem badInput  when a life can't be one, or a figure of the prior is not above 0
 */
export function lifePicture(
  batteries: readonly Battery[],
  lives: readonly Life[],
  prior: LifePrior,
): Outcome<LifePicture> {
  const records = lifeRecords(lives, dueNowRows(batteries));
  const inService = agesInService(batteries);
  return andThen(lifePosterior(records, prior), (life) => {
    const oldest = records.reduce((most, { to }) => Math.max(most, to), inService.length);
    return answer({
      steps: stepsOf(records),
      curve: curveOf(life, Math.max(LEAST_MONTHS, oldest)),
      inService,
    });
  });
}

function agesInService(batteries: readonly Battery[]): number[] {
  const counts: number[] = [];
  for (const { whereabouts, ageMonths } of batteries) {
    if (whereabouts !== 'inService' || ageMonths === undefined) continue;
    const month = Math.floor(ageMonths);
    counts[month] = (counts[month] ?? 0) + 1;
  }
  return Array.from(counts, (count) => count ?? 0);
}

function stepsOf(records: readonly LifeRecord[]): SharePoint[] {
  const exact = records.map((each) =>
    each.kind === 'interval' ? { ...each, from: each.to, kind: 'exact' as const } : each,
  );
  const table = lifeTable(exact, { startAge: 'enoughAtRisk' });
  if (!table.ok) return [];
  const { rows, startAge } = table.value;
  const steps = rows.map(({ month, surviving, low, high }) => ({
    age: month,
    share: surviving,
    ...(low !== undefined && { low }),
    ...(high !== undefined && { high }),
  }));
  return [{ age: startAge, share: 1 }, ...thinned(steps)];
}

/** Every so many steps, the last one always: more could not be told apart in a picture. */
function thinned(steps: readonly SharePoint[]): readonly SharePoint[] {
  const every = Math.ceil(steps.length / MOST_STEPS);
  return steps.filter((_, index) => index % every === 0 || index === steps.length - 1);
}

function curveOf(life: LifePosterior, oldest: number): SharePoint[] {
  const ages = Array.from({ length: CURVE_POINTS }, (_, index) => ((index + 1) * oldest) / CURVE_POINTS);
  const points = ages.map((age) => {
    const failed = posteriorShareFailed(life, age);
    const share = posteriorMean(life, (shape, scale) => Math.exp(weibullLogSurvival(age, shape, scale)));
    return { age, share, low: 1 - failed(0.95), high: 1 - failed(0.05) };
  });
  return [{ age: 0, share: 1, low: 1, high: 1 }, ...points];
}
