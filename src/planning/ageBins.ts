/** Batteries in service of one age [months], or of ages in one month with their mean. */
export type AgeBin = {
  readonly age: number;
  /** How many; not whole where ages are only known as shares. */
  readonly count: number;
  /** Ages of the other batteries of its set, where whole sets are renewed; `count` is then a count of sets. */
  readonly mates?: readonly number[];
  /** Months from now until it is renewed by plan, if it hasn't failed before. */
  readonly plannedIn?: number;
};

/**
 * Ages gathered in bins of one month (or another width), each with the mean age of its members, so that a
 * forecast's time does not grow with the fleet.
 * @param ages   ages in service [months], 0 or more
 * @param width  width of a bin [months]
 */
export function ageBins(ages: Iterable<number>, width = 1): AgeBin[] {
  return gathered(
    (function* () {
      for (const age of ages) yield { age, count: 1 };
    })(),
    width,
  );
}

/** Bins made coarser, or the bins of several groups put together. */
export function gathered(bins: Iterable<AgeBin>, width = 1): AgeBin[] {
  const sums = new Map<number, { months: number; count: number }>();
  for (const { age, count } of bins) {
    const key = Math.floor(age / width);
    const sum = sums.get(key) ?? { months: 0, count: 0 };
    sum.months += age * count;
    sum.count += count;
    sums.set(key, sum);
  }
  return [...sums]
    .filter(([, { count }]) => count > 0)
    .sort(([a], [b]) => a - b)
    .map(([, { months, count }]) => ({ age: months / count, count }));
}

// More distinct ages than whole months in 33 years; ages known to the day are then gathered by month.
const MOST_DISTINCT = 400;

/**
 * Bins with equal ages counted together, youngest first; where that leaves more than 400 they are gathered by
 * month, so that a forecast's time does not grow with the fleet.
 */
export function collapsedBins(bins: Iterable<AgeBin>): AgeBin[] {
  const counts = new Map<number, number>();
  for (const { age, count } of bins) if (count !== 0) counts.set(age, (counts.get(age) ?? 0) + count);
  const equal = [...counts].map(([age, count]) => ({ age, count }));
  return equal.length > MOST_DISTINCT ? gathered(equal) : equal.sort((a, b) => a.age - b.age);
}
