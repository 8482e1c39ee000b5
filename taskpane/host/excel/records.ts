import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Block, Sheet, SheetCell } from '../../../src/report/sheet.ts';
import { isCellError } from '../../../functions/cell.ts';
import { addExcelSheets } from './adding.ts';
import { forAll, rangeOn, textEntry } from './cells.ts';
import { dateShift, entryIn, firstDayOf1904 } from './dates.ts';
import { hasExcelApi } from './requirements.ts';
import { allOrNone } from './session.ts';
import { emptyRecords } from '../recordSheet.ts';
import type { SheetHost } from '../sheetHost.ts';
import { NUMBER_CODES } from '../sheetLooks.ts';

type RecordCells = Parameters<SheetHost['appendRow']>[2];

/** Adds one row under the last one of a sheet of records, which is made where it does not exist. */
export async function appendExcelRow(
  name: string,
  heads: readonly string[],
  cells: RecordCells,
): Promise<Outcome<number>> {
  const added = await appendToSheet(name, heads, cells);
  if (added.ok || added.problem.because !== 'sheetNotThere') return added;
  // Sheet and record in one: a sheet that stays without its record would be half of what was asked.
  const made = await addExcelSheets([firstRecord(name, heads, cells)]);
  return made.ok ? answer(1) : made;
}

function firstRecord(name: string, heads: readonly string[], cells: RecordCells): Sheet {
  const empty = emptyRecords(name, heads);
  const row = cells.map(({ value, format }): SheetCell => ({
    ...(isCellError(value) ? { value: value.error } : { value }),
    ...{ meaning: 'body', format },
  }));
  return { ...empty, rows: [...empty.rows, row] };
}

/** What is to be taken back: cells that were empty, and tables that were shorter. */
type Made = { cells: readonly Block[]; tables: readonly { readonly name: string; readonly block: Block }[] };

function appendToSheet(name: string, heads: readonly string[], cells: RecordCells): Promise<Outcome<number>> {
  const made: Made = { cells: [], tables: [] };
  return allOrNone<number>({
    work: undefined,
    make: (context) => append(context, name, heads, cells, made),
    takeBack: (context) => takeBack(context, name, made),
    what: () => (made.cells.length > 0 ? name : ''),
    undoneAtOnce: true,
  });
}

async function append(
  context: Excel.RequestContext,
  name: string,
  heads: readonly string[],
  cells: RecordCells,
  made: Made,
): Promise<Outcome<number>> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(name);
  const used = sheet.getUsedRangeOrNullObject(true);
  sheet.load('protection/protected');
  used.load('rowIndex,columnIndex,rowCount,columnCount');
  sheet.tables.load('items/name');
  const first = firstDayOf1904(context.workbook);
  await context.sync();
  if (sheet.isNullObject) return problem('badInput', 'sheetNotThere', 'sheet', name);
  if (sheet.protection.protected) return problem('badInput', 'sheetProtected', 'sheet', name);
  const places = await placesOf(context, sheet, used, heads);
  const row = used.isNullObject ? 1 : Math.max(places.headRow + 1, used.rowIndex + used.rowCount);
  made.tables = await tablesAbove(context, sheet, row);
  made.cells = [...headsBeside(places), rowUnder(row, places, made.tables)];
  writeRecord(sheet, places, row, cells, dateShift(first));
  for (const { name: table, block } of made.tables)
    sheet.tables.getItem(table).resize(rangeOn(sheet, { ...block, rows: block.rows + 1 }));
  await context.sync();
  return answer(row);
}

async function takeBack(context: Excel.RequestContext, name: string, { cells, tables }: Made): Promise<void> {
  if (cells.length === 0) return;
  const sheet = context.workbook.worksheets.getItem(name);
  for (const { name: table, block } of tables) sheet.tables.getItem(table).resize(rangeOn(sheet, block));
  for (const cell of cells) rangeOn(sheet, cell).clear();
  await context.sync();
}

const cellAt = (row: number, column: number): Block => ({ row, column, rows: 1, columns: 1 });

/** The new heads, which stand side by side. */
const headsBeside = ({ headRow: row, newHeads }: Places): Block[] =>
  newHeads.length === 0 ? [] : [{ row, column: newHeads[0]!.column, rows: 1, columns: newHeads.length }];

/** The new row, from its first cell to its last: a table fills its own with the formulas of its columns. */
function rowUnder(row: number, { columns }: Places, tables: Made['tables']): Block {
  const first = Math.min(...columns, ...tables.map(({ block }) => block.column));
  const ends = tables.map(({ block }) => block.column + block.columns);
  return {
    row,
    column: first,
    rows: 1,
    columns: Math.max(...columns.map((each) => each + 1), ...ends) - first,
  };
}

type Places = {
  readonly headRow: number;
  /** Column of each head. */
  readonly columns: readonly number[];
  /** Heads that the sheet lacks, at its right side. */
  readonly newHeads: readonly { readonly column: number; readonly head: string }[];
};

async function placesOf(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  used: Excel.Range,
  heads: readonly string[],
): Promise<Places> {
  if (used.isNullObject) return placesAmong([], 0, 0, heads);
  const { rowIndex: row, columnIndex: column, columnCount: columns } = used;
  const range = rangeOn(sheet, { row, column, rows: 1, columns });
  range.load('values');
  await context.sync();
  return placesAmong(range.values[0]!, row, column, heads);
}

const folded = (head: unknown): string => String(head).trim().toLowerCase();

function placesAmong(
  found: readonly unknown[],
  headRow: number,
  first: number,
  heads: readonly string[],
): Places {
  const known = found.map(folded);
  const newHeads: { column: number; head: string }[] = [];
  const columns = heads.map((head) => {
    const index = known.indexOf(folded(head));
    if (index >= 0) return first + index;
    const column = first + found.length + newHeads.length;
    newHeads.push({ column, head });
    return column;
  });
  return { headRow, columns, newHeads };
}

function writeRecord(
  sheet: Excel.Worksheet,
  { headRow, columns, newHeads }: Places,
  row: number,
  cells: RecordCells,
  shift: number,
): void {
  const cell = (at: number, column: number): Excel.Range => rangeOn(sheet, cellAt(at, column));
  for (const { column, head } of newHeads) cell(headRow, column).values = forAll(textEntry(head));
  cells.forEach(({ value, format }, index) => {
    const range = cell(row, columns[index]!);
    range.values = [[entryIn(shift, value, format)]];
    const code = NUMBER_CODES[format];
    if (code !== undefined) range.numberFormat = forAll(code);
  });
}

/** The tables that the row under them joins. */
async function tablesAbove(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  row: number,
): Promise<Made['tables']> {
  if (!hasExcelApi('1.13') || sheet.tables.items.length === 0) return [];
  const ranges = sheet.tables.items.map((table) => table.getRange());
  ranges.forEach((range) => range.load('rowIndex,columnIndex,rowCount,columnCount'));
  await context.sync();
  return sheet.tables.items
    .map(({ name }, index) => ({ name, block: blockOf(ranges[index]!) }))
    .filter(({ block }) => block.row + block.rows === row);
}

function blockOf({
  rowIndex: row,
  columnIndex: column,
  rowCount: rows,
  columnCount: columns,
}: Excel.Range): Block {
  return { row, column, rows, columns };
}
