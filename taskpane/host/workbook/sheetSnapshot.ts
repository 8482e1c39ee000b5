import type { ICellData, IWorksheetData } from '@univerjs/core';
import type { Cell, Sheet } from 'hucre';
import { rangeOf } from '../cellAddress.ts';
import { formulaForGrid } from '../xlsx/formulaNames.ts';
import type { LookTable } from './looks.ts';

type Row = Record<number, ICellData>;

/** Puts the looks and formulas of a sheet's cells on the rows of values that were made from it. */
export function putCells(rows: Row[], sheet: Sheet, looks: LookTable): void {
  const cells = sheet.cells ?? new Map<string, Cell>();
  for (const [key, cell] of cells) {
    const look = cell.style && looks.nameOf(cell.style);
    if (look === undefined && cell.formula === undefined) continue;
    const [row, column] = spot(key);
    const own = ((rows[row] ??= {})[column] ??= {});
    if (look !== undefined) own.s = look;
    if (cell.formula !== undefined) putFormula(own, cell);
  }
  for (const [key, cell] of cells) if (cell.formulaType === 'array') clearAnswers(rows, spot(key), cell);
}

const spot = (key: string): [number, number] => {
  const comma = key.indexOf(',');
  return [Number(key.slice(0, comma)), Number(key.slice(comma + 1))];
};

// The first cell of a formula shared by many holds its text, the others its number alone.
function putFormula(own: ICellData, cell: Cell): void {
  if (cell.formula !== '') own.f = `=${formulaForGrid(cell.formula!)}`;
  if (cell.formulaType === 'shared') own.si = `shared${cell.formulaSharedIndex}`;
}

// The answers saved in the other cells of an array formula would stand in the way of those to come.
function clearAnswers(rows: Row[], [row, column]: [number, number], cell: Cell): void {
  const range = rangeOf(cell.formulaRef ?? '');
  if (range === undefined) return;
  for (let r = range.startRow; r <= range.endRow; r += 1) {
    for (let c = range.startColumn; c <= range.endColumn; c += 1) {
      const own = rows[r]?.[c];
      if (own === undefined || (r === row && c === column)) continue;
      delete own.v;
      delete own.t;
    }
  }
}

/** Pixels of a column that is a number of characters wide, and of a row that is a number of points high. */
export const columnPixels = (characters: number): number => Math.round(characters * 7 + 5);
const rowPixels = (points: number): number => Math.round((points * 4) / 3);

/** Everything of a sheet that does not stand in a cell: widths, heights, what is hidden, merged, frozen. */
export function sheetLooks(sheet: Sheet): Partial<IWorksheetData> {
  const { freezePane, view, columns, rowDefs, merges } = sheet;
  const [rows, across] = [freezePane?.rows ?? 0, freezePane?.columns ?? 0];
  return {
    hidden: sheet.hidden || sheet.veryHidden ? 1 : 0,
    ...(freezePane && { freeze: { ySplit: rows, xSplit: across, startRow: rows, startColumn: across } }),
    ...(view?.showGridLines === false && { showGridlines: 0 }),
    ...(view?.rightToLeft && { rightToLeft: 1 }),
    columnData: Object.fromEntries(
      (columns ?? []).flatMap(({ width, hidden }, index) =>
        sized(index, width && columnPixels(width), hidden, 'w'),
      ),
    ),
    rowData: Object.fromEntries(
      [...(rowDefs ?? [])].flatMap(([row, { height, hidden }]) =>
        sized(row, height && rowPixels(height), hidden, 'h'),
      ),
    ),
    mergeData: (merges ?? []).map(({ startRow, startCol, endRow, endCol }) => ({
      startRow,
      endRow,
      startColumn: startCol,
      endColumn: endCol,
    })),
  };
}

type Sized = { readonly hd?: 1; readonly w?: number; readonly h?: number; readonly ia?: 0 };

function sized(
  index: number,
  size: number | undefined,
  hidden: boolean | undefined,
  as: 'w' | 'h',
): [number, Sized][] {
  if (!size && !hidden) return [];
  const fixed = as === 'h' ? { h: size!, ia: 0 as const } : { w: size! };
  return [[index, { ...(size && fixed), ...(hidden && { hd: 1 as const }) }]];
}
