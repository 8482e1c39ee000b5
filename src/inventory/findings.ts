import type { FindingKind } from './findingKinds.ts';
import { FINDING_KINDS } from './findingKinds.ts';
import type { Finding } from './inventory.ts';

/** What a finding says, without its row. */
export type Found = Omit<Finding, 'row' | 'sheet' | 'done'> & { readonly done?: string };

/** The findings of one sheet as they are made, and which of its rows were repaired. */
export type Findings = {
  readonly list: Finding[];
  /** Rows (the sheet's own numbers) whose values were used after a stated repair. */
  readonly repairedRows: Set<number>;
  readonly add: (row: number, found: Found) => void;
};

/** An empty list of findings; `sheet` names the sheet where it is another than the inventory. */
export function newFindings(sheet?: string): Findings {
  const list: Finding[] = [];
  const repairedRows = new Set<number>();
  const add = (row: number, found: Found): void => {
    const done = found.done ?? FINDING_KINDS[found.kind].ifNothing;
    list.push(sheet === undefined ? { ...found, row, done } : { ...found, row, done, sheet });
    if (isRepair(found.kind)) repairedRows.add(row);
  };
  return { list, repairedRows, add };
}

const isRepair = (kind: FindingKind): boolean => FINDING_KINDS[kind].status === 'repaired';
