import type { Block, Sheet, Table } from '../../../src/report/sheet.ts';
import { fixedBlock, quotedSheet } from '../../../src/report/sheet.ts';
import type { Chunk, Entry } from './cells.ts';
import { chunksOf, rangeOn, writeChunks } from './cells.ts';
import { entryIn } from './dates.ts';
import { writeCharts } from './charts.ts';
import { writeLooks } from './looks.ts';
import type { Pending } from './session.ts';
import { rowHeights } from '../rowHeights.ts';

/** A sheet that is being built: its data, the name it has until the end, and its rows in chunks. */
export type SheetDraft = {
  readonly sheet: Sheet;
  readonly temporary: string;
  readonly chunks: readonly Chunk[];
};

/** Sheets ready to be written; formulas that speak of one of them do so under its temporary name. */
export function draftsOf(
  sheets: readonly Sheet[],
  temporary: readonly string[],
  shift: number,
): SheetDraft[] {
  const names = sheets.map(({ name }, index) => [name, temporary[index]!] as const);
  return sheets.map((sheet, index) => ({
    sheet,
    temporary: temporary[index]!,
    chunks: chunksOf(entryRows(sheet, names, shift)),
  }));
}

function* entryRows(
  sheet: Sheet,
  names: readonly (readonly [string, string])[],
  shift: number,
): Generator<Entry[]> {
  const width = Math.max(1, ...sheet.rows.map((row) => row.length));
  for (const row of sheet.rows) {
    yield Array.from({ length: width }, (_, column) => {
      const cell = row[column];
      if (cell == null) return '';
      return cell.formula === undefined
        ? entryIn(shift, cell.value, cell.format)
        : `=${renamed(cell.formula, names)}`;
    });
  }
}

function renamed(formula: string, names: readonly (readonly [string, string])[]): string {
  return names.reduce(
    (text, [name, temporary]) => text.replaceAll(`${quotedSheet(name)}!`, `${quotedSheet(temporary)}!`),
    formula,
  );
}

// Bytes of one setting on the line, about.
const SETTING_BYTES = 500;

/** Writes a sheet of our own on an empty one: names, values, then looks, tables, charts and page. */
export async function writeSheet(
  on: Excel.Worksheet,
  { sheet, chunks }: SheetDraft,
  tableName: (wanted: string) => string,
  pending: Pending,
): Promise<void> {
  await writeNames(on, sheet, pending);
  await writeChunks(on, { row: 0, column: 0 }, chunks, pending);
  await writeLooks(on, sheet, pending);
  await writeSizes(on, sheet, pending);
  for (const table of sheet.tables) {
    await pending.spend(SETTING_BYTES * 4);
    defineTable(on, table, tableName(table.name));
  }
  await writeCharts(on, sheet, pending);
  await writePage(on, sheet, pending);
}

/** The block of a table, heads included. */
function blockOfTable({ row, column, rows, heads }: Table): Block {
  return { row, column, rows: rows + 1, columns: heads.length };
}

// Formulas that use a name are read with the name in place.
async function writeNames(on: Excel.Worksheet, { names }: Sheet, pending: Pending): Promise<void> {
  for (const { name, row, column } of names) {
    await pending.spend(SETTING_BYTES);
    on.names.add(name, rangeOn(on, { row, column, rows: 1, columns: 1 }));
  }
}

/** Makes a table of cells that are written already. */
export function defineTable(on: Excel.Worksheet, table: Table, name: string): void {
  const defined = on.tables.add(rangeOn(on, blockOfTable(table)), true);
  defined.name = name;
  defined.style = 'TableStyleLight1';
  defined.showBandedRows = false;
}

/** Points of a column that is so many characters wide: a digit takes seven pixels, the edges five. */
const columnPoints = (characters: number): number => Math.round((characters * 7 + 5) * 0.75 * 100) / 100;

async function writeSizes(on: Excel.Worksheet, sheet: Sheet, pending: Pending): Promise<void> {
  await pending.spend(SETTING_BYTES * (sheet.widths.length + sheet.spans.length));
  sheet.widths.forEach((width, column) => {
    rangeOn(on, { row: 0, column, rows: 1, columns: 1 }).format.columnWidth = columnPoints(width);
  });
  for (const span of sheet.spans) rangeOn(on, { ...span, rows: 1 }).merge(false);
  for (const [block, height] of heightRuns(sheet)) {
    await pending.spend(SETTING_BYTES);
    rangeOn(on, block).format.rowHeight = height;
  }
  for (const { row, rows } of sheet.tables) {
    if (rows > 0) rangeOn(on, { row: row + 1, column: 0, rows, columns: 1 }).format.autofitRows();
  }
}

/** Runs of rows of one height. Those in tables fit themselves: there can be very many, each with its own. */
function heightRuns(sheet: Sheet): [Block, number][] {
  const runs: [Block, number][] = [];
  const inTable = (at: number): boolean => sheet.tables.some(({ row, rows }) => at > row && at <= row + rows);
  for (const [row, { height }] of rowHeights(sheet)) {
    const last = runs.at(-1);
    if (inTable(row)) continue;
    if (last !== undefined && last[1] === height && last[0].row + last[0].rows === row)
      last[0] = { ...last[0], rows: last[0].rows + 1 };
    else runs.push([{ row, column: 0, rows: 1, columns: 1 }, height]);
  }
  return runs;
}

const INCH = 72;

async function writePage(on: Excel.Worksheet, sheet: Sheet, pending: Pending): Promise<void> {
  await pending.spend(SETTING_BYTES * (16 + sheet.pageBreaks.length));
  const { pageLayout } = on;
  on.showGridlines = false;
  if (sheet.frozenRows > 0) on.freezePanes.freezeRows(sheet.frozenRows);
  pageLayout.orientation = 'Landscape';
  pageLayout.paperSize = 'A4';
  pageLayout.zoom = { horizontalFitToPages: 1 };
  pageLayout.leftMargin = 0.4 * INCH;
  pageLayout.rightMargin = 0.4 * INCH;
  pageLayout.topMargin = 0.5 * INCH;
  pageLayout.bottomMargin = 0.6 * INCH;
  pageLayout.headersFooters.defaultForAllPages.leftFooter = '&A';
  pageLayout.headersFooters.defaultForAllPages.rightFooter = 'Page &P of &N';
  if (sheet.printedColumns !== undefined) {
    const printed = { row: 0, column: 0, rows: sheet.rows.length, columns: sheet.printedColumns };
    pageLayout.setPrintArea(fixedBlock(printed));
  }
  if (sheet.repeatedRows !== undefined) {
    const [first, last] = sheet.repeatedRows;
    pageLayout.setPrintTitleRows(`$${first + 1}:$${last + 1}`);
  }
  for (const row of sheet.pageBreaks) on.horizontalPageBreaks.add(cellName(row));
}

const cellName = (row: number): string =>
  fixedBlock({ row, column: 0, rows: 1, columns: 1 }).split(':')[0]!.replace(/\$/g, '');
