import type { Day } from '../../src/basics/calendar.ts';
import type { Inventory, SheetRows } from '../../src/inventory/inventory.ts';
import type { Settings } from '../../src/inventory/settings.ts';
import type { Plan } from '../../src/planning/plan.ts';

/** What the computing side keeps between two questions, so that no inventory crosses over twice. */
export type Memory = {
  sheet?: SheetRows;
  tests?: SheetRows;
  charges?: SheetRows;
  asOf?: Day;
  settings?: Settings;
  inventory?: Inventory;
  plan?: Plan;
};
