/** Batteries in service of one age [months], or of ages in one month with their mean. */
export type AgeBin = { readonly age: number; readonly count: number };

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
