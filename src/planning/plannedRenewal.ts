import type { AgeBin } from './ageBins.ts';

/** Renewal by plan at an age; what is older already is renewed evenly over some months, oldest first. */
export type PlannedRenewal = { readonly age: number; readonly overdueMonths: number };

/**
 * Bins with the time at which each is renewed by plan. A set goes by its oldest battery. The overdue of all groups
 * queue together, so that the groups add up to the whole; a bin of many overdue batteries is split by month.
 * @param groups  bins of each group, all groups of the fleet at once
 * @param plan    age of planned renewal [months], above 0; months over which the overdue are spread, 0 = at once
 * @returns the same groups, for a forecast with `plannedAge` set to the same age
 */
export function withPlannedRenewal(
  groups: readonly (readonly AgeBin[])[],
  { age, overdueMonths }: PlannedRenewal,
): AgeBin[][] {
  const queue = overdueQueue(groups.flat(), age);
  return groups.map((bins) =>
    bins.flatMap((bin) => {
      const oldest = oldestOf(bin);
      if (oldest < age) return [{ ...bin, plannedIn: age - oldest }];
      const [begin, end] = queue.get(oldest)!;
      return pieces(bin, begin * overdueMonths, end * overdueMonths);
    }),
  );
}

const oldestOf = ({ age, mates = [] }: AgeBin): number => Math.max(age, ...mates);
const batteriesOf = ({ count, mates = [] }: AgeBin): number => count * (1 + mates.length);

// For each age that is overdue the stretch of the queue it takes, as shares of the whole queue.
function overdueQueue(bins: readonly AgeBin[], age: number): Map<number, [begin: number, end: number]> {
  const counts = new Map<number, number>();
  for (const bin of bins) {
    const oldest = oldestOf(bin);
    if (oldest >= age) counts.set(oldest, (counts.get(oldest) ?? 0) + batteriesOf(bin));
  }
  const total = [...counts.values()].reduce((sum, count) => sum + count, 0);
  let before = 0;
  const queued = [...counts].sort(([a], [b]) => b - a);
  return new Map(queued.map(([oldest, count]) => [oldest, [before / total, (before += count) / total]]));
}

function pieces(bin: AgeBin, begin: number, end: number): AgeBin[] {
  const parts = Math.max(1, Math.ceil(end - begin));
  return Array.from({ length: parts }, (_, i) => ({
    ...bin,
    count: bin.count / parts,
    plannedIn: begin + ((i + 0.5) * (end - begin)) / parts,
  }));
}
