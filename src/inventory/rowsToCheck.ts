import type { FindingKind } from './findingKinds.ts';
import { FINDING_KINDS } from './findingKinds.ts';
import type { Finding } from './inventory.ts';
import type { Subject } from './subject.ts';

/** Findings with one cause, decided together. */
export type CheckGroup = {
  /** What they have in common: a maker's codes, a removal cause, or else the kind itself. */
  readonly cause: string;
  readonly kind: FindingKind;
  /** Rows behind them. */
  readonly count: number;
  readonly examples: readonly Finding[];
  /** What happens to the answer if nothing is done. */
  readonly ifNothing: string;
  /** How much the answer can move, 1 to 5. */
  readonly weight: number;
  /** What one decision for all of them would be about, where there is one. */
  readonly subject?: Subject;
  /** The key of the settings file that decides it, where one does. */
  readonly setting?: string;
};

/** So many examples are shown of each cause. */
const EXAMPLES = 3;

/**
 * Rows to check, grouped by cause before kind: each with its count, three examples and what happens if nothing is
 * done; what moves the answer most stands first, whatever its count.
 * @param findings  from readInventory
 * @returns groups, sorted by effect, then by count
 * @example rowsToCheck([{ kind: 'age unknown', row: 7, column: 'Installed', given: 'A1', done: '' }])[0].count // 1
 */
export function rowsToCheck(findings: readonly Finding[]): readonly CheckGroup[] {
  const groups = new Map<string, { readonly cause: string; readonly all: Finding[]; count: number }>();
  for (const finding of findings) {
    const cause = finding.group ?? finding.kind;
    const key = `${finding.kind}\n${cause}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { cause, all: [finding], count: finding.count ?? 1 });
    else {
      group.count += finding.count ?? 1;
      if (group.all.length < EXAMPLES) group.all.push(finding);
    }
  }
  return [...groups.values()].map(checkGroup).sort((a, b) => b.weight - a.weight || b.count - a.count);
}

/** Findings in the order in which they are written down: what moves the answer most first, then by kind and row. */
export function byEffect(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(
    (a, b) =>
      FINDING_KINDS[b.kind].weight - FINDING_KINDS[a.kind].weight ||
      ORDER[a.kind] - ORDER[b.kind] ||
      a.row - b.row,
  );
}

const ORDER = Object.fromEntries(Object.keys(FINDING_KINDS).map((kind, index) => [kind, index])) as Readonly<
  Record<FindingKind, number>
>;

function checkGroup({
  cause,
  all,
  count,
}: {
  cause: string;
  all: readonly Finding[];
  count: number;
}): CheckGroup {
  const { kind, done, subject, setting } = all[0]!;
  const { ifNothing, weight } = FINDING_KINDS[kind];
  return {
    cause,
    kind,
    count,
    examples: all,
    ifNothing: count === 1 && done !== '' ? done : ifNothing,
    weight,
    ...(subject === undefined ? {} : { subject }),
    ...(setting === undefined ? {} : { setting }),
  };
}
