/** How a life's end is known: failed at an age, still good at it, or failed between two ages or before one. */
export type LifeKind = 'exact' | 'right' | 'interval' | 'left';

/**
 * One or more equal battery lives as life statistics see them; ages in any one unit, months as a rule.
 * `entry`: age when first under observation (0 = seen from new); the life counts only from there on.
 * `from`, `to`: exact and right have both equal; interval failed in (from, to]; left failed in (0, to].
 */
export type LifeRecord = {
  readonly entry: number;
  readonly from: number;
  readonly to: number;
  readonly kind: LifeKind;
  readonly count: number;
};

/** The rows with equal ones counted together, in order of first appearance; statistics after it don't grow with the fleet. */
export function collapseRecords(records: readonly LifeRecord[]): LifeRecord[] {
  const seen = new Map<string, { record: LifeRecord; count: number }>();
  for (const record of records) {
    const key = `${record.kind}|${record.entry}|${record.from}|${record.to}`;
    const known = seen.get(key);
    if (known === undefined) seen.set(key, { record, count: record.count });
    else known.count += record.count;
  }
  return [...seen.values()].map(({ record, count }) => ({ ...record, count }));
}
