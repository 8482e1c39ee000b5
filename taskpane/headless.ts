import type { Day } from '../src/basics/calendar.ts';
import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer, problem } from '../src/basics/outcome.ts';
import type { Inventory } from '../src/inventory/inventory.ts';
import { readInventory } from '../src/inventory/readInventory.ts';
import type { Settings } from '../src/inventory/settings.ts';
import { plan } from '../src/planning/plan.ts';
import type { Plan } from '../src/planning/plan.ts';
import type { FileSheet, WorkbookFile } from './host/xlsx/workbookFile.ts';
import { sheetRows } from './sheetRows.ts';
import { recordsAfter } from './recordsAfter.ts';

/** An inventory and the plan made from it. */
export type PlannedInventory = { readonly inventory: Inventory; readonly plan: Plan; readonly tab: string };

/** Names of the sheets that hold tests and charges. */
const TESTS_SHEET = 'Tests';
const CHARGES_SHEET = 'Charges';

/** Reads the inventory of a file, its tests and charges, and plans. */
export function planFile(file: WorkbookFile, settings: Settings, asOf: Day): Outcome<PlannedInventory> {
  const late = recordsAfter(settings.recordsSince, asOf);
  if (late !== undefined) return late;
  return andThen(inventorySheet(file, settings.tab), (sheet) => {
    const tests = namedSheet(file, TESTS_SHEET);
    const charges = namedSheet(file, CHARGES_SHEET);
    const input = {
      sheet: sheetRows(sheet, file),
      ...(tests === undefined ? {} : { tests: sheetRows(tests, file) }),
      ...(charges === undefined ? {} : { charges: sheetRows(charges, file) }),
      asOf,
      settings,
    };
    return andThen(readInventory(input), (inventory) =>
      andThen(plan(inventory.batteries, inventory.lives, { asOf, settings, prior: settings.prior }), (made) =>
        answer({ inventory, plan: made, tab: sheet.name }),
      ),
    );
  });
}

/** The sheet of a workbook that has a name, whatever its case. */
export function namedSheet(file: WorkbookFile, name: string): FileSheet | undefined {
  return file.sheets.find((sheet) => sheet.name.trim().toLowerCase() === name.toLowerCase());
}

function inventorySheet(file: WorkbookFile, tab: string | undefined): Outcome<FileSheet> {
  const sheet = tab === undefined ? file.sheets[0] : namedSheet(file, tab);
  if (sheet !== undefined) return answer(sheet);
  const allowed = file.sheets.map(({ name }) => name).join(', ');
  return problem('badInput', 'notAWord', 'tab', tab, { more: { allowed } });
}
