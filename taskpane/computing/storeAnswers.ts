import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer, problem } from '../../src/basics/outcome.ts';
import type { FileComparison } from '../../src/inventory/compareFiles.ts';
import { compareFiles } from '../../src/inventory/compareFiles.ts';
import type { Shelf, ShelfCount } from '../../src/inventory/countShelf.ts';
import { countShelf } from '../../src/inventory/countShelf.ts';
import type { Inventory } from '../../src/inventory/inventory.ts';
import { readInventory } from '../../src/inventory/readInventory.ts';
import type { Sheet } from '../../src/report/sheet.ts';
import { storeListSheet } from '../../src/report/storeListSheet.ts';
import { sheetRows } from '../sheetRows.ts';
import type { Memory } from './memory.ts';

/** What the head of a store list names, and the name of its sheet. */
export type StoreListAsked = {
  readonly name: string;
  readonly tab: string;
  readonly fileName: string;
  readonly madeBy: string;
};

/** The storekeeper's list of the inventory that was read, as a sheet. */
export function storeListAnswer(
  { inventory, settings, asOf }: Memory,
  { name, ...head }: StoreListAsked,
): Outcome<Sheet> {
  if (inventory === undefined || settings === undefined || asOf === undefined)
    throw new Error('no inventory has been read yet');
  return answer(storeListSheet({ ...head, batteries: inventory.batteries, asOf, settings }, name));
}

/** What was scanned on a shelf, and which shelf it is. */
export type CountAsked = { readonly scans: readonly string[]; readonly shelf: Shelf };

/** A shelf's scans against the inventory that was read. */
export function countAnswer({ inventory }: Memory, { scans, shelf }: CountAsked): Outcome<ShelfCount> {
  if (inventory === undefined) throw new Error('no inventory has been read yet');
  return countShelf(scans, inventory.batteries, shelf);
}

/** An earlier file of the same inventory, and the sheet that holds it now. */
export type CompareAsked = { readonly name: string; readonly bytes: Uint8Array; readonly tab: string };

/** What changed since an earlier file, and the sites that only one of the two has. */
export type Compared = FileComparison & {
  readonly onlyBefore: readonly string[];
  readonly onlyNow: readonly string[];
};

/** An earlier file set beside the inventory that was read; only sites that both have are compared. */
export async function compareAnswer(memory: Memory, asked: CompareAsked): Promise<Outcome<Compared>> {
  const { inventory } = memory;
  if (inventory === undefined) throw new Error('no inventory has been read yet');
  const before = await inventoryOfFile(memory, asked);
  return andThen(before, (earlier) => comparedSites(earlier, inventory));
}

async function inventoryOfFile(
  { settings, asOf }: Memory,
  { name, bytes, tab }: CompareAsked,
): Promise<Outcome<Inventory>> {
  const { readWorkbookFile } = await import(/* webpackChunkName: "files" */ '../host/xlsx/workbookFile.ts');
  return andThen(await readWorkbookFile(bytes, name), (file) => {
    const sheet = file.sheets.find((each) => each.name === tab) ?? file.sheets.find(({ hidden }) => !hidden);
    if (sheet === undefined) return problem('missing', 'emptySheet', 'sheet', name);
    return readInventory({ sheet: sheetRows(sheet, file), asOf: asOf!, settings: settings! });
  });
}

function comparedSites(before: Inventory, now: Inventory): Outcome<Compared> {
  const [then, today] = [sitesOf(before), sitesOf(now)];
  const both = then.filter((site) => today.includes(site));
  return andThen(compareFiles(before, now, both), (found) =>
    answer({
      ...found,
      onlyBefore: then.filter((site) => !both.includes(site)),
      onlyNow: today.filter((site) => !both.includes(site)),
    }),
  );
}

const sitesOf = ({ batteries }: Inventory): string[] =>
  [...new Set(batteries.map(({ site }) => site))].sort();
