import type { Block } from '../../../src/report/sheet.ts';
import { chunksOf, forAll, rangeOn, textEntry, writeChunks } from './cells.ts';
import { entryIn } from './dates.ts';
import { hasExcelApi } from './requirements.ts';
import type { Pending } from './session.ts';
import type { FilledColumn, FillRequest } from '../sheetHost.ts';
import { NUMBER_CODES } from '../sheetLooks.ts';

// Bytes of one setting on the line, about.
const SETTING_BYTES = 500;

/** Where columns go: the sheet, the table that takes them in, and how the workbook counts its dates. */
export type FilledPlace = {
  readonly sheet: Excel.Worksheet;
  readonly table: Excel.Table | undefined;
  readonly dateShift: number;
};

/** Writes heads, takes the columns into their table, then writes values or formulas, and formats last. */
export async function writeColumns(
  context: Excel.RequestContext,
  place: FilledPlace,
  request: FillRequest,
  pending: Pending,
): Promise<void> {
  const { sheet, table } = place;
  const { headRow: row, rows, column, columns } = request;
  const body = { row: row + 1, column, rows, columns: columns.length };
  await pending.spend(SETTING_BYTES * (columns.length + 4));
  if (rows > 0) rangeOn(sheet, body).clear('Contents');
  if (table !== undefined) await widenTable(context, sheet, table, request);
  const heads = columns.map(({ head }) => textEntry(head));
  rangeOn(sheet, { row, column, rows: 1, columns: columns.length }).formulas = [heads];
  for (const [index, each] of columns.entries()) {
    await writeColumn(place, request, each, { ...body, column: column + index, columns: 1 }, pending);
  }
  await writeFormats(sheet, columns, body, pending);
  await pending.send();
}

async function writeFormats(
  sheet: Excel.Worksheet,
  columns: readonly FilledColumn[],
  body: Block,
  pending: Pending,
): Promise<void> {
  for (const [index, { format, formula }] of columns.entries()) {
    const code = NUMBER_CODES[format];
    // A cell with a formula and the format of texts would show the formula when it is edited.
    if (code === undefined || body.rows === 0 || (code === '@' && formula !== undefined)) continue;
    await pending.spend(SETTING_BYTES);
    rangeOn(sheet, { ...body, column: body.column + index, columns: 1 }).numberFormat = forAll(code);
  }
}

async function writeColumn(
  { sheet, dateShift }: FilledPlace,
  { as }: FillRequest,
  { formula, values, format }: FilledColumn,
  cells: Block,
  pending: Pending,
): Promise<void> {
  if (cells.rows === 0) return;
  if (formula !== undefined) {
    await pending.spend(SETTING_BYTES + formula.length);
    // One formula over all cells of a table's column makes it a calculated column; beside a block one cell spills.
    rangeOn(sheet, as === 'tableColumn' ? cells : { ...cells, rows: 1 }).formulas = forAll(`=${formula}`);
    return;
  }
  const chunks = chunksOf((values ?? []).map((value) => [entryIn(dateShift, value, format)]));
  pending.expect(chunks.reduce((sum, { bytes }) => sum + bytes, 0));
  await writeChunks(sheet, cells, chunks, pending);
}

/** Takes those new columns into their table that stand at its right side. */
async function widenTable(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  table: Excel.Table,
  { headRow, rows, column, columns }: FillRequest,
): Promise<void> {
  const range = table.getRange();
  range.load('columnIndex,columnCount');
  await context.sync();
  const end = range.columnIndex + range.columnCount;
  const joining = columns.slice(Math.max(0, end - column));
  if (joining.length === 0) return;
  // Older programs can only add columns, which moves what stands beside the table.
  if (!hasExcelApi('1.13'))
    return joining.forEach(({ head }) => table.columns.add(undefined, undefined, head));
  const heads = joining.map(({ head }) => textEntry(head));
  rangeOn(sheet, { row: headRow, column: end, rows: 1, columns: heads.length }).formulas = [heads];
  const wide = column + columns.length - range.columnIndex;
  table.resize(rangeOn(sheet, { row: headRow, column: range.columnIndex, rows: rows + 1, columns: wide }));
}
