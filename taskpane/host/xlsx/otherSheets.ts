import { listedSheets } from './bookPart.ts';
import type { Package } from './package.ts';
import { openPackage, partText } from './package.ts';
import { relationsOf, workbookPath } from './parts.ts';
import type { SheetState, WorkbookState } from './workbookState.ts';

/** The names of the sheets of a file that hold no cells: charts and dialogs that are sheets of their own. */
export async function sheetsWithoutCells(bytes: Uint8Array): Promise<string[]> {
  try {
    return await otherSheets(openPackage(bytes));
  } catch {
    // A file that can't be taken apart is refused by whoever reads it.
    return [];
  }
}

/** The names of the sheets of an opened file that hold no cells. */
export async function otherSheets(parts: Package): Promise<string[]> {
  const book = await workbookPath(parts);
  const relations = await relationsOf(parts, book);
  const isOther = (id: string): boolean =>
    relations.some((relation) => relation.id === id && relation.kind !== 'worksheet');
  return listedSheets((await partText(parts, book)) ?? '')
    .filter(({ relation }) => isOther(relation))
    .map(({ name }) => name);
}

/** The sheets of now with those that hold no cells, which nobody could see or change, each behind the one before it. */
export async function withOtherSheets(parts: Package, state: WorkbookState): Promise<WorkbookState> {
  const named = new Set(state.sheets.map(({ original }) => original));
  const others = (await otherSheets(parts)).filter((name) => !named.has(name));
  if (others.length === 0) return state;
  const listed = listedSheets((await partText(parts, await workbookPath(parts))) ?? '').map(
    ({ name }) => name,
  );
  const sheets = [...state.sheets];
  for (const name of others) {
    const before = listed[listed.indexOf(name) - 1];
    const place = sheets.findIndex(({ original }) => original === before && before !== undefined) + 1;
    sheets.splice(place, 0, { name, original: name, cells: [] } satisfies SheetState);
  }
  return { ...state, sheets };
}
