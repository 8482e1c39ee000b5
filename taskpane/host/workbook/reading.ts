import { isDateFormat } from '../dateFormat.ts';
import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { BlockContents, HostCell, SheetBlock, Work } from '../sheetHost.ts';
import type { StartedWorkbook } from './engine.ts';
import type { LiveSheet } from './live.ts';
import { liveSheet } from './live.ts';
import { inBlocks } from './turns.ts';

/** The cells of a block as they are now, answers that formulas spilled included. */
export async function readLiveBlock(
  started: StartedWorkbook,
  { sheet, block }: SheetBlock,
  work?: Work,
): Promise<Outcome<BlockContents>> {
  const live = liveSheet(started, sheet);
  if (live === undefined) return problem('badInput', 'sheetNotThere', 'sheet', sheet);
  const rows: HostCell[][] = [];
  const dateCells = new Map<number, Set<number>>();
  const hiddenRows = new Set<number>();
  await inBlocks(block.rows, work, (from, to) => {
    for (let row = from; row < to; row += 1) {
      rows.push(readRow(live, block, row, dateCells));
      if (!live.sheet.getRowVisible(block.row + row)) hiddenRows.add(row);
    }
  });
  return answer({ rows, dateCells, hiddenRows });
}

function readRow(
  live: LiveSheet,
  block: SheetBlock['block'],
  row: number,
  dateCells: Map<number, Set<number>>,
): HostCell[] {
  const cells: HostCell[] = [];
  for (let column = 0; column < block.columns; column += 1) {
    const [at, across] = [block.row + row, block.column + column];
    const value = live.value(at, across);
    cells.push(value);
    if (typeof value !== 'number' || !isDateFormat(live.numberCode(at, across) ?? '')) continue;
    if (!dateCells.has(column)) dateCells.set(column, new Set());
    dateCells.get(column)!.add(row);
  }
  return cells;
}
