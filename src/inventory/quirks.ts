import type { Field } from './fields.ts';
import type { FindingKind } from './findingKinds.ts';
import { FINDING_KINDS } from './findingKinds.ts';
import type { Cell } from './inventory.ts';
import { shownCell } from './cells.ts';
import type { ReadContext } from './lines.ts';
import { headOf } from './lines.ts';

/** The odd cells of one column, gathered until all are seen. */
export type Quirks = {
  readonly note: (row: number, kind: FindingKind, cell: Cell, done?: string) => void;
  /** Makes the findings; `filled` = how many cells of the column are filled. */
  readonly close: (filled: number) => void;
};

type Quirk = {
  readonly row: number;
  readonly kind: FindingKind;
  readonly cell: Cell;
  readonly done: string | undefined;
};

/** From this many cells on, a way of writing that most of a column shares is one finding about the column. */
const WHOLE_COLUMN = 20;

/** Ways of writing that a whole column can share. */
const WAYS: ReadonlySet<FindingKind> = new Set([
  'text date',
  'date written as a number',
  'number with its unit',
  'decimal comma',
  'number stored as text',
]);

/** Gathers the odd cells of a column: one finding for each, or one for all where more than half are alike. */
export function newQuirks(context: ReadContext, field: Field): Quirks {
  const all: Quirk[] = [];
  const counts = new Map<FindingKind, number>();
  return {
    note: (row, kind, cell, done) => {
      if (kind === 'number stored as text' && context.fromText) return;
      all.push({ row, kind, cell, done });
      counts.set(kind, (counts.get(kind) ?? 0) + 1);
    },
    close: (filled) => {
      const shared = [...counts]
        .filter(([kind, count]) => isShared(kind, count, filled))
        .map(([kind]) => kind);
      report(context, headOf(context, field), all, new Set(shared));
    },
  };
}

const isShared = (kind: FindingKind, count: number, filled: number): boolean =>
  WAYS.has(kind) && count >= WHOLE_COLUMN && count > filled / 2;

function report(
  context: ReadContext,
  column: string,
  all: readonly Quirk[],
  shared: ReadonlySet<FindingKind>,
): void {
  for (const { row, kind, cell, done } of all) {
    if (shared.has(kind)) context.findings.repairedRows.add(row);
    else
      context.findings.add(row, {
        kind,
        column,
        given: shownCell(cell),
        ...(done === undefined ? {} : { done }),
        ...(kind === 'text date that reads two ways' && { setting: 'dateOrder' }),
      });
  }
  for (const kind of shared) {
    const same = all.filter((quirk) => quirk.kind === kind);
    const given = `${same.length} cells such as ${same
      .slice(0, 3)
      .map(({ cell }) => shownCell(cell))
      .join(', ')}`;
    context.findings.add(same[0]!.row, {
      count: same.length,
      kind,
      column,
      given,
      done: `${FINDING_KINDS[kind].ifNothing}, in the whole column`,
    });
  }
}
