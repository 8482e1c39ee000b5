import type {} from '@univerjs/sheets-table/facade';
import type { ICellData, Nullable } from '@univerjs/core';
import type { Block } from '../../../src/report/sheet.ts';
import type { CellRange } from '../cellAddress.ts';
import type { HostTable, SheetBlock, SheetInfo } from '../sheetHost.ts';
import type { StartedWorkbook } from './engine.ts';
import { openBook } from './engine.ts';
import type { LiveSheet } from './live.ts';
import { liveSheets } from './live.ts';
import { turn } from './turns.ts';

/** What can be known about every sheet without handing out its cells. */
export async function sheetInfos(started: StartedWorkbook): Promise<SheetInfo[]> {
  const infos: SheetInfo[] = [];
  for (const live of liveSheets(started)) {
    infos.push({
      name: live.name,
      hidden: live.facade.isSheetHidden(),
      isProtected: isProtected(live),
      used: await usedBlock(live),
      tables: tablesOn(started, live),
    });
  }
  return infos;
}

/** Whether the file, or someone since, protects a sheet. */
export function isProtected({ facade }: LiveSheet): boolean {
  return facade.getCustomMetadata()?.isProtected === true || facade.getWorksheetPermission().isProtected();
}

/** Rows looked at between turns of the event loop. */
const ROWS_AT_ONCE = 10_000;

/** The block that holds anything, spilled answers included; undefined where the sheet is empty. */
export async function usedBlock({ sheet, spilled }: LiveSheet): Promise<Block | undefined> {
  const found = { top: Infinity, left: Infinity, bottom: -1, right: -1 };
  const both: BySpot[] = [sheet.getCellMatrix().getMatrix() as BySpot, spilled as BySpot];
  for (const cells of both) {
    let looked = 0;
    for (const row of Object.keys(cells)) {
      widen(found, Number(row), cells[Number(row)]);
      looked += 1;
      if (looked % ROWS_AT_ONCE === 0) await turn();
    }
  }
  if (found.bottom < 0) return undefined;
  const { top, left, bottom, right } = found;
  return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

type BySpot = Record<number, Record<number, ICellData> | undefined>;
type Extent = { top: number; left: number; bottom: number; right: number };

function widen(found: Extent, row: number, cells: Record<number, ICellData> | undefined): void {
  for (const [key, cell] of Object.entries(cells ?? {})) {
    if (!holdsSomething(cell)) continue;
    const column = Number(key);
    found.top = Math.min(found.top, row);
    found.bottom = Math.max(found.bottom, row);
    found.left = Math.min(found.left, column);
    found.right = Math.max(found.right, column);
  }
}

/** Whether a cell holds a value, a text with formats, or a formula. */
export function holdsSomething(cell: Nullable<ICellData>): boolean {
  if (!cell) return false;
  const { v, p, f, si } = cell;
  return (v !== null && v !== undefined && v !== '') || Boolean(p) || Boolean(f) || Boolean(si);
}

/** The tables of a sheet; their heads are what stands in the head row. */
export function tablesOn(started: StartedWorkbook, live: LiveSheet): HostTable[] {
  const tables = openBook(started).getTableList();
  return tables
    .filter(({ subUnitId }) => subUnitId === live.id)
    .map(({ name, range }) => ({ name, block: blockFrom(range), heads: headsOf(live, range) }));
}

function headsOf(live: LiveSheet, range: CellRange): string[] {
  const columns = Array.from({ length: range.endColumn - range.startColumn + 1 }, (_, index) => index);
  return columns.map((index) => String(live.value(range.startRow, range.startColumn + index) ?? ''));
}

/** A block from its corners. */
function blockFrom({ startRow, startColumn, endRow, endColumn }: CellRange): Block {
  return {
    row: startRow,
    column: startColumn,
    rows: endRow - startRow + 1,
    columns: endColumn - startColumn + 1,
  };
}

/** Where the user stands, or undefined. */
export function selectedBlock(started: StartedWorkbook): SheetBlock | undefined {
  const book = openBook(started);
  const range = book.getActiveRange()?.getRange();
  if (range === undefined) return undefined;
  return { sheet: book.getActiveSheet().getSheetName(), block: blockFrom(wholeRange(range, book)) };
}

// Whole rows and columns come without their other ends.
function wholeRange(range: CellRange, book: ReturnType<typeof openBook>): CellRange {
  const sheet = book.getActiveSheet();
  const or = (value: number, other: number): number => (Number.isFinite(value) ? value : other);
  return {
    startRow: or(range.startRow, 0),
    startColumn: or(range.startColumn, 0),
    endRow: or(range.endRow, sheet.getMaxRows() - 1),
    endColumn: or(range.endColumn, sheet.getMaxColumns() - 1),
  };
}
