import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Block } from '../../../src/report/sheet.ts';
import { address } from '../../../src/report/sheet.ts';
import { forAll, rangeOn } from './cells.ts';
import { writeColumns } from './columns.ts';
import { countsFrom1904, dateShift, firstDayOf1904 } from './dates.ts';
import { hasExcelApi } from './requirements.ts';
import type { SavedBlock } from './saved.ts';
import { putBack, savedBlock } from './saved.ts';
import type { Pending } from './session.ts';
import { allOrNone, pendingWrites } from './session.ts';
import type { FillRequest, Work } from '../sheetHost.ts';

/** What is to be taken back: the cells as they were, and how wide the table was. */
type Before = { saved: SavedBlock | undefined; table: Block | undefined; begun: boolean };

/** Adds columns beside an inventory: all or none. */
export function fillInExcel(request: FillRequest, work?: Work): Promise<Outcome<void>> {
  const before: Before = { saved: undefined, table: undefined, begun: false };
  return allOrNone<void>({
    work,
    make: (context, pending) => fill(context, request, before, pending),
    takeBack: (context) => takeBack(context, request, before),
    what: () => (before.begun ? `${request.sheet}, ${addressOf(targetOf(request))}` : ''),
    undoneAtOnce: true,
  });
}

/** The cells that will be written, heads included. */
const targetOf = ({ headRow, rows, column, columns }: FillRequest): Block => ({
  row: headRow,
  column,
  rows: rows + 1,
  columns: columns.length,
});

function addressOf({ row, column, rows, columns }: Block): string {
  return `${address(row, column)}:${address(row + rows - 1, column + columns - 1)}`;
}

async function fill(
  context: Excel.RequestContext,
  request: FillRequest,
  before: Before,
  pending: Pending,
): Promise<Outcome<void>> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(request.sheet);
  const target = targetOf(request);
  sheet.load('protection/protected');
  const first = firstDayOf1904(context.workbook);
  const table = request.as === 'tableColumn' ? tableOf(context, request) : undefined;
  await context.sync();
  if (sheet.isNullObject) return problem('badInput', 'sheetNotThere', 'sheet', request.sheet);
  if (sheet.protection.protected) return problem('badInput', 'sheetProtected', 'sheet', request.sheet);
  if (countsFrom1904(first) && request.columns.some(({ formula }) => formula !== undefined))
    return problem('badInput', 'formulasIn1904', 'workbook');
  if (table !== undefined) {
    const misplaced = await placeInTable(context, table, request, before);
    if (!misplaced.ok) return misplaced;
  }
  const free = await emptyOrSaved(context, sheet, target, request, before);
  if (!free.ok) return free;
  before.begun = true;
  await writeColumns(context, { sheet, table, dateShift: dateShift(first) }, request, pending);
  return request.as === 'spill' ? roomOf(context, sheet, request) : answer(undefined);
}

function tableOf({ workbook }: Excel.RequestContext, { table: name }: FillRequest): Excel.Table {
  const table = workbook.tables.getItemOrNullObject(name ?? 'none');
  table.load('worksheet/name');
  return table;
}

async function placeInTable(
  context: Excel.RequestContext,
  table: Excel.Table,
  { sheet, table: name, headRow, rows, column }: FillRequest,
  before: Before,
): Promise<Outcome<void>> {
  if (table.isNullObject || table.worksheet.name.toLowerCase() !== sheet.toLowerCase())
    return problem('badInput', 'tableNotThere', 'table', name);
  const range = table.getRange();
  range.load('rowIndex,columnIndex,rowCount,columnCount');
  await context.sync();
  const { rowIndex, columnIndex, rowCount, columnCount } = range;
  const beside = columnIndex + columnCount;
  if (headRow !== rowIndex || rows !== rowCount - 1)
    return problem('badInput', 'rowsNotOfTable', 'table', name);
  if (column < columnIndex || column > beside) {
    const letters = address(0, beside).replace(/\d+$/, '');
    return problem('badInput', 'columnsNotBesideTable', 'table', name, { more: { beside: letters } });
  }
  before.table = { row: rowIndex, column: columnIndex, rows: rowCount, columns: columnCount };
  return answer(undefined);
}

/** Refuses cells that hold something, or remembers what they hold where the user has said yes. */
async function emptyOrSaved(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  target: Block,
  request: FillRequest,
  before: Before,
): Promise<Outcome<void>> {
  const used = rangeOn(sheet, target).getUsedRangeOrNullObject(true);
  await context.sync();
  if (used.isNullObject) return answer(undefined);
  const saved = await savedBlock(context, sheet, target);
  const count = saved.entries.flat().filter((entry) => entry !== '').length;
  if (request.overwrite || count === 0) {
    before.saved = saved;
    return answer(undefined);
  }
  const more = { count, block: addressOf(target) };
  return problem('badInput', 'cellsNotEmpty', 'column', request.sheet, { more });
}

/** A spilled formula whose answers meet cells that are not empty shows an error in place of all of them. */
async function roomOf(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  { sheet: name, headRow, column, columns }: FillRequest,
): Promise<Outcome<void>> {
  const first = rangeOn(sheet, { row: headRow + 1, column, rows: 1, columns: columns.length });
  first.load('values');
  await context.sync();
  const blocked = first.values[0]!.indexOf('#SPILL!');
  if (blocked < 0) return answer(undefined);
  const cell = address(headRow + 1, column + blocked);
  return problem('badInput', 'answerHasNoRoom', 'column', name, { more: { cell } });
}

async function takeBack(
  context: Excel.RequestContext,
  request: FillRequest,
  { saved, table, begun }: Before,
): Promise<void> {
  if (!begun) return;
  const sheet = context.workbook.worksheets.getItem(request.sheet);
  const target = targetOf(request);
  const pending = pendingWrites(context, undefined);
  if (table !== undefined) await narrowTable(context, request, table);
  rangeOn(sheet, target).clear('Contents');
  // Nothing but formats of numbers was set; colours that were there before stay.
  if (saved === undefined) rangeOn(sheet, target).numberFormat = forAll('General');
  else await putBack(sheet, saved, pending);
  await pending.send();
}

/** Gives a table the width it had; where that can't be set, its new columns are deleted. */
async function narrowTable(
  context: Excel.RequestContext,
  request: FillRequest,
  before: Block,
): Promise<void> {
  const table = context.workbook.tables.getItem(request.table!);
  if (hasExcelApi('1.13')) {
    table.resize(rangeOn(context.workbook.worksheets.getItem(request.sheet), before));
    return context.sync();
  }
  table.columns.load('items/name');
  await context.sync();
  table.columns.items
    .slice(before.columns)
    .reverse()
    .forEach((column) => column.delete());
  return context.sync();
}
