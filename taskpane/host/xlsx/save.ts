import type { CellStyle } from 'hucre/xlsx';
import { writeXlsx } from 'hucre/xlsx';
import type { ListedSheet } from './bookPart.ts';
import { listedSheets, withSheets } from './bookPart.ts';
import { lossesBetween } from './losses.ts';
import { withoutMacros } from './macros.ts';
import type { AddedSheet } from './newSheets.ts';
import { addSheetsOfOurs } from './newSheets.ts';
import type { Package } from './package.ts';
import { withOtherSheets } from './otherSheets.ts';
import { openPackage, packageBytes, partText, putText } from './package.ts';
import { dropUnreachable, reachable, relationsOf, removeRelations, workbookPath } from './parts.ts';
import { renameSheets } from './renames.ts';
import { lookKey, looksOf, openStyles } from './saveStyles.ts';
import type { PlacedSheet } from './saveSheets.ts';
import { defineNames, writeSheets } from './saveSheets.ts';
import type { SavedWorkbook, WorkbookState } from './workbookState.ts';

export type * from './workbookState.ts';

/**
 * The workbook as an .xlsx file: the original with the changes put in. Parts and cells that were not changed stay as
 * the other program wrote them, letter by letter: looks, rules, pictures, charts, names and whatever else it has.
 * Show `lost` to the user before the bytes are given away.
 * @param original  the bytes that were opened, or undefined where the workbook was new or a .csv
 * @param now       what there is now, see workbookState.ts
 * @param as        `formulas` keeps our own functions as formulas for the add-in; `values` writes their answers in place
 */
export async function savedWorkbook(
  original: Uint8Array | undefined,
  now: WorkbookState,
  as: 'formulas' | 'values',
): Promise<SavedWorkbook> {
  const parts = openPackage(original ?? (await emptyFile()));
  const state = await withOtherSheets(parts, now);
  const before = new Map(parts);
  const had = await reachable(parts);
  await withoutMacros(parts);
  const book = await workbookPath(parts);
  const styles = await openStyles(parts, book);
  const looks = looksOf(state);
  const fresh = state.sheets.filter((sheet) => sheet.original === undefined);
  const added = await addSheetsOfOurs(parts, fresh, [...looks.values()], styles);
  const listed = listedSheets((await partText(parts, book))!).map(({ name }) => name);
  const placed = await placeSheets(parts, book, state, added.sheets);
  await renameSheets(parts, listed, placed);
  await defineNames(parts, book, state, placed);
  const lookNumber = (look: CellStyle): number => added.looks.get(looks.get(lookKey(look))!)!;
  await writeSheets(parts, book, placed, { as, styles, lookNumber });
  await dropUnreachable(parts, had);
  const lost = original === undefined ? [] : await lossesBetween(before, parts, state);
  return { bytes: packageBytes(parts), lost };
}

// A file can't be without a sheet: this one is not among those of now, so it goes.
const emptyFile = (): Promise<Uint8Array> => writeXlsx({ sheets: [{ name: 'Empty', rows: [] }] });

/** Lists the sheets of now in the workbook part; those of the original that are gone lose their place in the file. */
async function placeSheets(
  parts: Package,
  book: string,
  state: WorkbookState,
  added: readonly AddedSheet[],
): Promise<PlacedSheet[]> {
  const xml = (await partText(parts, book))!;
  const [listed, relations] = [listedSheets(xml), await relationsOf(parts, book)];
  const pathOf = (relation: string): string => relations.find(({ id }) => id === relation)?.target ?? '';
  const left = [...added];
  const placed = state.sheets.map(
    (sheet): PlacedSheet & { from: ListedSheet | undefined; relation: string } => {
      const from = listed.find(({ name }) => name === sheet.original);
      if (from !== undefined)
        return { state: sheet, from, relation: from.relation, path: pathOf(from.relation), names: [] };
      const { path, relation, names } = left.shift()!;
      return { state: sheet, from, relation, path, names };
    },
  );
  const list = placed.map(({ state: { name, hidden }, from, relation }) => ({
    name,
    from,
    relation,
    hidden,
  }));
  await putText(parts, book, withSheets(xml, list));
  const kept = new Set(placed.map(({ relation }) => relation));
  const gone = listed.filter(({ relation }) => !kept.has(relation));
  await removeRelations(parts, book, ({ id }) => gone.some(({ relation }) => relation === id));
  return placed;
}
