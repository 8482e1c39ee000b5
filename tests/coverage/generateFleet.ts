import type { WeibullLife } from '../../src/life/lifeFromRules.ts';
import type { LifeRecord } from '../../src/life/lifeRecord.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';

/** How a generated fleet came about: places filled over a time before now, records begun later. */
export type FleetStory = {
  readonly places: number;
  readonly truth: WeibullLife;
  /** Months before now in which the places were first filled: earliest and latest. */
  readonly filledFrom: number;
  readonly filledTo: number;
  /** Months for which removals have been written down. */
  readonly recorded: number;
  /** Rate at which places are given up [per month]. */
  readonly goneRate: number;
};

/** A fleet whose truth is known: its records as a depot has them, and the ages in service. */
export type GeneratedFleet = {
  readonly records: readonly LifeRecord[];
  readonly ages: readonly number[];
  readonly failures: number;
};

/** One fleet; the same for one seed. */
export function generateFleet(story: FleetStory, seed: number): GeneratedFleet {
  const uniform = uniformNumbers(seed);
  const records = Array.from({ length: story.places }, () => placeRecords(story, uniform)).flat();
  const failures = records.filter(({ kind }) => kind === 'exact').length;
  const ages = records.filter(({ inService }) => inService).map(({ to }) => to);
  return { records, ages, failures };
}

type Record = LifeRecord & { readonly inService: boolean };

// The batteries of one place, one after the other; those that ended before records began left no trace.
function placeRecords(
  { truth, filledFrom, filledTo, recorded, goneRate }: FleetStory,
  uniform: () => number,
): Record[] {
  const records: Record[] = [];
  let installed = -filledTo - (filledFrom - filledTo) * uniform();
  const gone = installed - Math.log(uniform()) / goneRate;
  while (installed < Math.min(0, gone)) {
    const failed = installed + weibullLife(uniform, truth.shape, truth.scale);
    const end = Math.min(failed, gone, 0);
    const entry = Math.max(0, -recorded - installed);
    const age = end - installed;
    const kind = end === failed ? 'exact' : 'right';
    if (age > entry) records.push({ kind, entry, from: age, to: age, count: 1, inService: end === 0 });
    installed = failed;
  }
  return records;
}
