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
import type { FileSheet, WorkbookFile } from '../host/xlsx/workbookFile.ts';
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

/** What changed since an earlier file, and what only one of the two has. */
export type Compared = FileComparison & {
  readonly onlyBefore: readonly string[];
  readonly onlyNow: readonly string[];
  /** The sheet of the earlier file that was read, where it is not named as this one. */
  readonly readFrom?: string;
  /** The earlier file has no sheet of tests, and this workbook has: verdicts may differ for that alone. */
  readonly lacksTests: boolean;
};

/** An earlier file set beside the inventory that was read; only sites that both have are compared. */
export async function compareAnswer(memory: Memory, asked: CompareAsked): Promise<Outcome<Compared>> {
  const { inventory, tests } = memory;
  if (inventory === undefined) throw new Error('no inventory has been read yet');
  const before = await earlierFile(memory, asked);
  return andThen(before, ({ earlier, sheet, hasTests }) =>
    andThen(comparedSites(earlier, inventory), (found) =>
      answer({
        ...found,
        ...(sheet !== asked.tab && { readFrom: sheet }),
        lacksTests: tests !== undefined && !hasTests,
      }),
    ),
  );
}

type Earlier = { readonly earlier: Inventory; readonly sheet: string; readonly hasTests: boolean };

async function earlierFile(memory: Memory, { name, bytes, tab }: CompareAsked): Promise<Outcome<Earlier>> {
  const { readWorkbookFile } = await import(/* webpackChunkName: "files" */ '../host/xlsx/workbookFile.ts');
  return andThen(await readWorkbookFile(bytes, name), (file) => {
    const named = (wanted: string): FileSheet | undefined =>
      file.sheets.find((each) => each.name.trim().toLowerCase() === wanted.toLowerCase());
    const [tests, charges] = [named('Tests'), named('Charges')];
    const visible = file.sheets.filter((each) => !each.hidden && each !== tests && each !== charges);
    const same = named(tab);
    const sheets = same === undefined ? visible : [same];
    if (sheets.length === 0) return problem('missing', 'emptySheet', 'sheet', name);
    const read = (sheet: FileSheet): Outcome<Earlier> =>
      andThen(inventoryOf(memory, file, sheet, tests, charges), (earlier) =>
        answer({ earlier, sheet: sheet.name, hasTests: tests !== undefined }),
      );
    return firstInventory(sheets, read);
  });
}

// A file whose sheet is named otherwise may begin with a sheet of notes.
function firstInventory(
  sheets: readonly FileSheet[],
  read: (sheet: FileSheet) => Outcome<Earlier>,
): Outcome<Earlier> {
  const first = read(sheets[0]!);
  if (first.ok) return first;
  for (const sheet of sheets.slice(1)) {
    const next = read(sheet);
    if (next.ok) return next;
  }
  return first;
}

function inventoryOf(
  { settings, asOf }: Memory,
  file: WorkbookFile,
  sheet: FileSheet,
  tests: FileSheet | undefined,
  charges: FileSheet | undefined,
): Outcome<Inventory> {
  return readInventory({
    sheet: sheetRows(sheet, file),
    // Without them a file would differ from itself: verdicts come from the tests.
    ...(tests && { tests: sheetRows(tests, file) }),
    ...(charges && { charges: sheetRows(charges, file) }),
    ...{ asOf: asOf!, settings: settings! },
  });
}

type Sites = Pick<Compared, 'onlyBefore' | 'onlyNow'>;

function comparedSites(before: Inventory, now: Inventory): Outcome<FileComparison & Sites> {
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
