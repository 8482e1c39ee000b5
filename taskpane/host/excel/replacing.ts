import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Block, Sheet } from '../../../src/report/sheet.ts';
import { addExcelSheets } from './adding.ts';
import { rangeOn, writeChunks } from './cells.ts';
import { dateShift, firstDayOf1904 } from './dates.ts';
import { writeLooks } from './looks.ts';
import type { SavedBlock } from './saved.ts';
import { putBack, savedBlock } from './saved.ts';
import type { Pending } from './session.ts';
import { allOrNone, pendingWrites } from './session.ts';
import { defineTable, draftsOf } from './sheet.ts';
import type { Work } from '../sheetHost.ts';

/** Writes a sheet over the one of the same name, whose place and whose cells' names stay, or adds it. */
export async function replaceExcelSheet(sheet: Sheet, work?: Work): Promise<Outcome<void>> {
  const written = await writeOver(sheet, work);
  if (written.ok || written.problem.because !== 'sheetNotThere') return written;
  return addExcelSheets([sheet], work);
}

type SavedTable = { readonly name: string; readonly style: string; readonly block: Block };
type Before = { saved: SavedBlock | undefined; tables: readonly SavedTable[] };

function writeOver(sheet: Sheet, work?: Work): Promise<Outcome<void>> {
  const before: Before = { saved: undefined, tables: [] };
  return allOrNone<void>({
    work,
    make: (context, pending) => replace(context, sheet, before, pending),
    takeBack: (context) => takeBack(context, sheet.name, before),
    what: () => (before.saved === undefined ? '' : sheet.name),
  });
}

async function replace(
  context: Excel.RequestContext,
  sheet: Sheet,
  before: Before,
  pending: Pending,
): Promise<Outcome<void>> {
  const found = context.workbook.worksheets.getItemOrNullObject(sheet.name);
  const used = found.getUsedRangeOrNullObject(true);
  const first = firstDayOf1904(context.workbook);
  found.load('protection/protected');
  found.tables.load('items/name,items/style');
  used.load('rowIndex,columnIndex,rowCount,columnCount');
  await context.sync();
  if (found.isNullObject) return problem('badInput', 'sheetNotThere', 'sheet', sheet.name);
  if (found.protection.protected) return problem('badInput', 'sheetProtected', 'sheet', sheet.name);
  before.tables = await savedTables(context, found.tables.items);
  const whole = wholeBlock(sheet, used);
  before.saved = await savedBlock(context, found, whole);
  found.tables.items.forEach((table) => table.convertToRange());
  rangeOn(found, whole).clear();
  const [draft] = draftsOf([sheet], [sheet.name], dateShift(first));
  await writeChunks(found, { row: 0, column: 0 }, draft!.chunks, pending);
  await writeLooks(found, sheet, pending);
  sheet.tables.forEach((table) => defineTable(found, table, table.name));
  await pending.send();
  return answer(undefined);
}

async function savedTables(
  context: Excel.RequestContext,
  tables: readonly Excel.Table[],
): Promise<SavedTable[]> {
  const ranges = tables.map((table) => table.getRange());
  ranges.forEach((range) => range.load('rowIndex,columnIndex,rowCount,columnCount'));
  await context.sync();
  return tables.map(({ name, style }, index) => {
    const { rowIndex: row, columnIndex: column, rowCount: rows, columnCount: columns } = ranges[index]!;
    return { name, style, block: { row, column, rows, columns } };
  });
}

async function takeBack(context: Excel.RequestContext, name: string, before: Before): Promise<void> {
  if (before.saved === undefined) return;
  const pending = pendingWrites(context, undefined);
  const sheet = context.workbook.worksheets.getItem(name);
  sheet.tables.load('items/name');
  await context.sync();
  sheet.tables.items.forEach((table) => table.convertToRange());
  rangeOn(sheet, before.saved.block).clear();
  await putBack(sheet, before.saved, pending);
  for (const each of before.tables) {
    const table = sheet.tables.add(rangeOn(sheet, each.block), true);
    table.name = each.name;
    table.style = each.style;
  }
  await pending.send();
}

/** From the first cell to the last one that is written or was. */
function wholeBlock({ rows }: Sheet, used: Excel.Range): Block {
  const width = Math.max(1, ...rows.map((row) => row.length));
  const [bottom, right] = used.isNullObject
    ? [0, 0]
    : [used.rowIndex + used.rowCount, used.columnIndex + used.columnCount];
  return { row: 0, column: 0, rows: Math.max(1, rows.length, bottom), columns: Math.max(width, right) };
}
