import type { ICellData } from '@univerjs/core';
import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Sheet } from '../../../src/report/sheet.ts';
import type { Work } from '../sheetHost.ts';
import { CLEARED, writeCells } from './cellPatch.ts';
import type { StartedWorkbook } from './engine.ts';
import { isProtected, usedBlock } from './info.ts';
import { liveSheet } from './live.ts';
import { drawnSheet } from './sheetCells.ts';
import { allOrNone } from './steps.ts';

/** Writes a sheet's cells over those of the sheet of the same name, which keeps its place and what speaks of it. */
export async function writeOverSheet(
  started: StartedWorkbook,
  sheet: Sheet,
  work?: Work,
): Promise<Outcome<void>> {
  const live = liveSheet(started, sheet.name);
  if (live === undefined) return problem('badInput', 'sheetNotThere', 'sheet', sheet.name);
  if (isProtected(live)) return problem('badInput', 'sheetProtected', 'sheet', sheet.name);
  const drawn = await drawnSheet(sheet, live.id, work);
  const used = await usedBlock(live);
  const { cellData = {}, columnData = {}, rowCount, columnCount } = drawn.sheet;
  const cellsAt = (row: number): Map<number, ICellData> => {
    const width = Math.max(sheet.widths.length, used === undefined ? 0 : used.column + used.columns);
    return new Map(
      Array.from({ length: width }, (_, column) => [column, styled(cellData[row]?.[column], drawn.styles)]),
    );
  };
  return allOrNone(started, async (steps) => {
    const rows = Math.max(sheet.rows.length, used === undefined ? 0 : used.row + used.rows);
    const { facade } = live;
    if (facade.getMaxRows() < rowCount!) facade.setRowCount(rowCount!);
    if (facade.getMaxColumns() < columnCount!) facade.setColumnCount(columnCount!);
    writeCells(steps, live, new Map(Array.from({ length: rows }, (_, row) => [row, cellsAt(row)])));
    for (const [column, data] of Object.entries(columnData)) facade.setColumnWidth(Number(column), data.w!);
    return answer(undefined);
  });
}

const styled = (cell: ICellData | undefined, styles: Record<string, object>): ICellData =>
  cell === undefined
    ? ({ ...CLEARED, s: null } as ICellData)
    : { ...cell, s: styles[String(cell.s)] ?? null };
