import type { ICellData, IStyleData, IWorksheetData } from '@univerjs/core';
import type { CellStyle } from 'hucre/xlsx';
import type { Sheet, SheetCell } from '../../../src/report/sheet.ts';
import { lookForGrid } from './looks.ts';
import { markOfText } from './sentences.ts';
import { rowHeights } from '../rowHeights.ts';
import { styleAt } from '../xlsx/sheetFile.ts';
import { columnPixels } from './sheetSnapshot.ts';
import { TRUTH } from './snapshot.ts';
import type { Followed } from './turns.ts';
import { inBlocks } from './turns.ts';

/** A sheet of our own as the engine takes it in: cells, looks, widths, heights, spans and frozen rows. */
export type DrawnSheet = {
  readonly sheet: Partial<IWorksheetData>;
  readonly styles: Record<string, IStyleData>;
};

type Rows = Record<number, Record<number, ICellData>>;

const TEXT = 1;
const NUMBER = 2;
const SPARE_ROWS = 40;
const SPARE_COLUMNS = 8;
const PIXELS_PER_POINT = 4 / 3;

/** Draws a sheet from its data, block by block; nothing is in the workbook yet. */
export async function drawnSheet(sheet: Sheet, id: string, work?: Followed): Promise<DrawnSheet> {
  const styles = new Map<CellStyle, string>();
  const cellData: Rows = {};
  await inBlocks(sheet.rows.length, work, (from, to) => {
    for (let row = from; row < to; row += 1) cellData[row] = rowCells(sheet, row, styles);
  });
  const width = Math.max(sheet.widths.length, ...sheet.rows.map((row) => row.length));
  return {
    sheet: {
      id,
      name: sheet.name,
      cellData,
      rowCount: sheet.rows.length + SPARE_ROWS,
      columnCount: width + SPARE_COLUMNS,
      rowData: heightsOf(sheet),
      columnData: widthsOf(sheet),
      mergeData: sheet.spans.map(({ row, column, columns }) => ({
        startRow: row,
        endRow: row,
        startColumn: column,
        endColumn: column + columns - 1,
      })),
      showGridlines: 0,
      ...(sheet.frozenRows > 0 && { freeze: frozen(sheet.frozenRows) }),
    },
    styles: Object.fromEntries([...styles].map(([style, name]) => [name, gridLook(style)])),
  };
}

// The grid cuts a text that runs into the next cells by its indent: such texts go without.
function gridLook(style: CellStyle): IStyleData {
  const { pd, ...look } = lookForGrid(style, []);
  return look.tb === undefined || pd === undefined ? look : { ...look, pd };
}

const frozen = (rows: number): IWorksheetData['freeze'] => ({
  xSplit: 0,
  ySplit: rows,
  startRow: rows,
  startColumn: -1,
});

/** Pixels of the button with which a column of a table is filtered. */
const FILTER_BUTTON = 22;

function widthsOf({ widths, tables }: Sheet): IWorksheetData['columnData'] {
  const hasButton = (column: number): boolean =>
    tables.some((table) => table.column <= column && column < table.column + table.heads.length);
  return Object.fromEntries(
    widths.map((each, column) => [
      column,
      { w: columnPixels(each) + (hasButton(column) ? FILTER_BUTTON : 0) },
    ]),
  );
}

const heightsOf = (sheet: Sheet): IWorksheetData['rowData'] =>
  Object.fromEntries(
    [...rowHeights(sheet)].map(([row, { height }]) => [
      row,
      { h: Math.round(height * PIXELS_PER_POINT), ia: 0 as const },
    ]),
  );

function rowCells(sheet: Sheet, row: number, styles: Map<CellStyle, string>): Record<number, ICellData> {
  const cells: Record<number, ICellData> = {};
  sheet.rows[row]!.forEach((cell, column) => {
    if (cell === null) return;
    cells[column] = { ...drawnCell(cell), s: styleName(styleAt(sheet, row, column), styles) };
  });
  return cells;
}

let named = 0;
const names = new WeakMap<CellStyle, string>();

// One name for each look, in every sheet that is drawn.
function styleName(style: CellStyle, styles: Map<CellStyle, string>): string {
  let name = names.get(style);
  if (name === undefined) {
    named += 1;
    name = `drawn${named}`;
    names.set(style, name);
  }
  styles.set(style, name);
  return name;
}

/** A cell as the engine takes it: text stays text, a formula brings the answer that it is expected to have. */
function drawnCell({ value, formula }: Pick<SheetCell, 'value' | 'formula'>): ICellData {
  const cell = typedValue(value);
  return formula === undefined ? cell : { ...cell, f: `=${formula}` };
}

/** A value with its kind, so that the engine guesses nothing. */
export function typedValue(value: string | number | boolean | null): ICellData {
  if (value === null) return {};
  if (typeof value === 'number') return { v: value, t: NUMBER };
  if (typeof value === 'boolean') return { v: value ? 1 : 0, t: TRUTH };
  return { v: value, t: TEXT, ...markOfText(value) };
}
