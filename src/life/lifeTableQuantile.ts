import type { LifeTable, LifeTableRow } from './lifeTable.ts';

/** The age by which a share has failed, read off a life table with its limits; undefined = not reached. */
export type TableQuantile = { readonly age?: number; readonly low?: number; readonly high?: number };

// Products of many shares miss a round one by rounding only.
const AS_GOOD_AS_EQUAL = 1.5e-8;

/**
 * The age by which a share of lives has failed, read off a life table: the first age at which the share still good is
 * small enough, the middle of a stretch where it is exactly so (to the oldest age on record where it stays so); limits where the curves of the limits meet it.
 * @param table  a life table
 * @param share  share that has failed, above 0 and below 1
 * @returns the age and its limits in the table's unit, each undefined where its curve does not come down so far
 * @source brookmeyerCrowley1982 limits of a quantile from those of the curve (from memory)
 * @example lifeTableQuantile(lifeTable([24, 30].map((age) => ({ entry: 0, from: age, to: age, kind: 'exact', count: 1 }))).value, 0.5).age // 27
 */
export function lifeTableQuantile(table: LifeTable, share: number): TableQuantile {
  return {
    age: crossing(table, share, (row) => row.surviving),
    low: crossing(table, share, (row) => row.low),
    high: crossing(table, share, (row) => row.high),
  };
}

function crossing(
  { rows, oldest }: LifeTable,
  share: number,
  curve: (row: LifeTableRow) => number | undefined,
): number | undefined {
  const excess = (row: LifeTableRow): number => (curve(row) ?? Number.NaN) - (1 - share);
  const first = rows.findIndex((row) => excess(row) <= AS_GOOD_AS_EQUAL);
  if (first < 0) return undefined;
  const { month } = rows[first]!;
  if (excess(rows[first]!) < -AS_GOOD_AS_EQUAL) return month;
  const below = rows.slice(first + 1).find((row) => excess(row) < -AS_GOOD_AS_EQUAL);
  return (month + (below?.month ?? oldest)) / 2;
}
