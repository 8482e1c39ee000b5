import type { CellStyle } from 'hucre/xlsx';
import type { CellRange } from '../cellAddress.ts';
import type { HostCell } from '../sheetHost.ts';
import { calculatedOnOpening, countsFrom1904, placeToDefine, withNames } from './bookPart.ts';
import { dynamicMark } from './dynamicArrays.ts';
import { formulaForFile } from './formulaNames.ts';
import type { AddedSheet } from './newSheets.ts';
import type { Package } from './package.ts';
import { partText, putText } from './package.ts';
import { removeRelations } from './parts.ts';
import { changedSheetXml, headAt, isChanged, spills } from './sheetChanges.ts';
import { withoutOurColumns } from './sheetEdits.ts';
import type { ValueInStyle } from './sheetPart.ts';
import type { SheetState, WorkbookState } from './workbookState.ts';
import type { StylesPart } from './stylesPart.ts';
import { dateStyles, withNumberFormat } from './stylesPart.ts';
import { tableBlock, tablePaths, thisRowForFile, withHeads, withTables } from './tablePart.ts';

/** One sheet of now, the part that it is kept in, and the names that it brings where it is new. */
export type PlacedSheet = {
  readonly state: SheetState;
  readonly path: string;
  readonly names: AddedSheet['names'];
};

/** What the sheets of a file are written with. */
export type SaveOptions = {
  readonly as: 'formulas' | 'values';
  readonly styles: StylesPart & { readonly path: string };
  readonly lookNumber: (look: CellStyle) => number;
};

/** Defines the names that are new: those of the whole workbook and those that new sheets bring. */
export async function defineNames(
  parts: Package,
  book: string,
  state: WorkbookState,
  placed: readonly PlacedSheet[],
): Promise<void> {
  const brought = placed.flatMap(({ names }, sheet) =>
    names.map(({ name, range }) => ({ name, refersTo: range, sheet })),
  );
  const all = [...(state.names ?? []).map(placeToDefine), ...brought];
  if (all.length > 0) await putText(parts, book, withNames((await partText(parts, book))!, all));
}

/** Writes what was changed on each sheet; sheets without changes are not touched. */
export async function writeSheets(
  parts: Package,
  book: string,
  placed: readonly PlacedSheet[],
  { as, styles, lookNumber }: SaveOptions,
): Promise<void> {
  const isDynamic = as === 'formulas' && placed.some(({ state }) => state.cells.some(spills));
  const dynamic = isDynamic ? await dynamicMark(parts, book) : 0;
  const value = await valueInStyle(parts, book, styles);
  const formatted = formatting(styles);
  for (const sheet of placed) {
    const tables = await tablesOf(parts, sheet);
    await writeSheet(parts, sheet, { as, dynamic, value, formatted, lookNumber, tables });
  }
  if (as === 'values') await dropOurColumns(parts);
  await putText(parts, styles.path, styles.text);
  if (placed.some(({ state, names }) => isChanged(state) || names.length > 0)) await forgetOrder(parts, book);
}

// The order in which everything was calculated is not true any more; programs find it anew.
async function forgetOrder(parts: Package, book: string): Promise<void> {
  await removeRelations(parts, book, ({ kind }) => kind === 'calcChain');
  await putText(parts, book, calculatedOnOpening((await partText(parts, book))!));
}

const DAYS_1904_AFTER_1900 = 1462;

async function valueInStyle(parts: Package, book: string, styles: StylesPart): Promise<ValueInStyle> {
  if (!countsFrom1904((await partText(parts, book))!)) return (value) => value;
  // Asked while styles are still being added, so it looks again where it does not know one.
  const isDate = (style: number): boolean => dateStyles(styles)(style);
  const known = new Map<number, boolean>();
  return (value: HostCell, style: number) => {
    if (typeof value !== 'number') return value;
    if (!known.has(style)) known.set(style, isDate(style));
    return known.get(style) ? value - DAYS_1904_AFTER_1900 : value;
  };
}

function formatting(styles: StylesPart): (had: number, code: string) => number {
  const known = new Map<string, number>();
  return (had, code) => {
    const key = `${had} ${code}`;
    const made = known.get(key) ?? withNumberFormat(styles, had, code);
    known.set(key, made);
    return made;
  };
}

type NamedBlock = { readonly name: string; readonly block: CellRange };

async function tablesOf(parts: Package, { state, path }: PlacedSheet): Promise<NamedBlock[]> {
  const changed = (state.tables ?? []).map(({ name, block }) => ({ name, block }));
  const there: NamedBlock[] = [];
  for (const [name, part] of await tablePaths(parts, path)) {
    const block = tableBlock((await partText(parts, part))!);
    if (block !== undefined) there.push({ name, block });
  }
  return [...changed, ...there];
}

async function writeSheet(
  parts: Package,
  { state, path }: PlacedSheet,
  writing: Parameters<typeof changedSheetXml>[2],
): Promise<void> {
  const tables = state.tables ?? [];
  const isTouched = isChanged(state) || tables.length > 0;
  if (writing.as === 'formulas' && !isTouched) return;
  const xml = (await partText(parts, path))!;
  if (!isTouched && !xml.includes('_xldudf_CRANK_')) return;
  await renameHeads(parts, path, state, writing.tables);
  const changed = changedSheetXml(xml, state, writing);
  const whole = await withTables(parts, path, changed, tables, (formula, table) =>
    thisRowForFile(formulaForFile(formula), table),
  );
  if (whole !== xml) await putText(parts, path, whole);
}

/** A table must call its columns as their heads do, or the file counts as damaged. */
async function renameHeads(
  parts: Package,
  sheet: string,
  { cells }: SheetState,
  tables: readonly NamedBlock[],
): Promise<void> {
  for (const [name, path] of await tablePaths(parts, sheet)) {
    const own = tables.filter((table) => table.name === name).slice(-1);
    const start = own[0]?.block.startColumn ?? 0;
    const heads = cells.flatMap((cell) => {
      const head = headAt(own, cell);
      return head === undefined ? [] : [[cell.column - start, head] as const];
    });
    if (heads.length > 0)
      await putText(parts, path, withHeads((await partText(parts, path))!, new Map(heads)));
  }
}

async function dropOurColumns(parts: Package): Promise<void> {
  for (const path of [...parts.keys()]) {
    if (!/^xl\/tables\/[^/]+\.xml$/i.test(path)) continue;
    const text = (await partText(parts, path))!;
    const bare = withoutOurColumns(text);
    if (bare !== text) await putText(parts, path, bare);
  }
}
