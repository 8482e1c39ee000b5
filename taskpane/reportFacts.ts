import type { Inventory } from '../src/inventory/inventory.ts';
import type { Settings } from '../src/inventory/settings.ts';
import type { Plan } from '../src/planning/plan.ts';
import type { ReportFacts } from '../src/report/reportFacts.ts';

/** Where an inventory came from and who plans it; `warnings` are sentences about the file itself. */
export type Source = Pick<ReportFacts, 'madeBy' | 'fileName' | 'fileHash' | 'hashOf' | 'tab'> & {
  readonly warnings: readonly string[];
};

/** What a forecast's sheets are written from. */
export function reportFacts(
  inventory: Inventory,
  plan: Plan,
  settings: Settings,
  { warnings, ...source }: Source,
): ReportFacts {
  const { batteries, rows, leftOutReasons, recordStart, toCheck, notes } = inventory;
  return {
    ...source,
    plan,
    batteries,
    settings,
    asOf: plan.asOf,
    rows,
    leftOutReasons,
    recordStart,
    toCheck,
    notes: [...warnings, ...notes],
  };
}
