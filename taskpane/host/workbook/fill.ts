import type { ICellData } from '@univerjs/core';
import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Block } from '../../../src/report/sheet.ts';
import { address } from '../../../src/report/sheet.ts';
import type { FillRequest, HostTable, Work } from '../sheetHost.ts';
import { calculated, oneByOne } from './calculation.ts';
import type { CellPatch } from './cellPatch.ts';
import { writeCells } from './cellPatch.ts';
import type { StartedWorkbook } from './engine.ts';
import { fillPatch } from './fillCells.ts';
import { holdsSomething, isProtected, tablesOn } from './info.ts';
import type { LiveSheet } from './live.ts';
import { liveSheet } from './live.ts';
import type { Steps } from './steps.ts';
import { allOrNone } from './steps.ts';
import { widenTable } from './tables.ts';
import type { Followed } from './turns.ts';
import { inBlocks, partOf } from './turns.ts';

/** Adds columns beside an inventory: all or none, in one step that can be undone. */
export function fillColumns(
  started: StartedWorkbook,
  request: FillRequest,
  work?: Work,
): Promise<Outcome<void>> {
  return allOrNone(started, async (steps) => {
    const live = liveSheet(started, request.sheet);
    if (live === undefined) return problem('badInput', 'sheetNotThere', 'sheet', request.sheet);
    const refusal = await refusalOf(started, live, request, work);
    if (refusal !== undefined) return refusal;
    const calculates = request.as !== 'values';
    const write = (): Promise<void> =>
      writeColumns(started, steps, live, request, calculates ? partOf(work, 0, 0.4) : work);
    const calculate = (): Promise<void> => calculated(started, write, partOf(work, 0.4, 0.6));
    if (request.as === 'spill') await oneByOne(started, calculate);
    else if (calculates) await calculate();
    else await write();
    work?.signal.throwIfAborted();
    work?.progress(1);
    return roomOf(started, request);
  });
}

async function refusalOf(
  started: StartedWorkbook,
  live: LiveSheet,
  request: FillRequest,
  work: Followed | undefined,
): Promise<ReturnType<typeof problem> | undefined> {
  if (isProtected(live)) return problem('badInput', 'sheetProtected', 'sheet', live.name);
  if (request.as === 'tableColumn') {
    const table = tablesOn(started, live).find(({ name }) => name === request.table);
    if (table === undefined) return problem('badInput', 'tableNotThere', 'table', request.table);
    const misplaced = misplacedIn(table, request);
    if (misplaced !== undefined) return misplaced;
  }
  return request.overwrite ? undefined : filledCells(live, targetOf(request), work);
}

/** The cells that will be written, heads included. */
const targetOf = ({ headRow, rows, column, columns }: FillRequest): Block => ({
  row: headRow,
  column,
  rows: rows + 1,
  columns: columns.length,
});

function misplacedIn(
  { name, block }: HostTable,
  { headRow, rows, column }: FillRequest,
): ReturnType<typeof problem> | undefined {
  const beside = block.column + block.columns;
  if (headRow !== block.row || rows !== block.rows - 1)
    return problem('badInput', 'rowsNotOfTable', 'table', name);
  if (column >= block.column && column <= beside) return undefined;
  const letters = address(0, beside).replace(/\d+$/, '');
  return problem('badInput', 'columnsNotBesideTable', 'table', name, { more: { beside: letters } });
}

async function filledCells(
  live: LiveSheet,
  target: Block,
  work: Followed | undefined,
): Promise<ReturnType<typeof problem> | undefined> {
  let count = 0;
  await inBlocks(target.rows, unheard(work), (from, to) => {
    for (let row = target.row + from; row < target.row + to; row += 1)
      for (let column = target.column; column < target.column + target.columns; column += 1)
        if (holdsSomething(live.cell(row, column))) count += 1;
  });
  if (count === 0) return undefined;
  const last = address(target.row + target.rows - 1, target.column + target.columns - 1);
  const block = `${address(target.row, target.column)}:${last}`;
  return problem('badInput', 'cellsNotEmpty', 'column', live.name, { more: { count, block } });
}

// Looking tells nothing of how far it is: it takes a moment.
const unheard = ({ signal }: Followed = {}): Followed => (signal === undefined ? {} : { signal });

async function writeColumns(
  started: StartedWorkbook,
  steps: Steps,
  live: LiveSheet,
  request: FillRequest,
  work: Followed | undefined,
): Promise<void> {
  makeRoom(steps, live, request.column + request.columns.length);
  if (!request.overwrite) widen(steps, live, request);
  const { head, cell } = fillPatch(live, request);
  writeCells(steps, live, new Map([[request.headRow, head]]));
  if (request.as === 'tableColumn') widenTable(started, steps, live, request);
  await inBlocks(request.rows, work, (from, to) => {
    const patch: CellPatch = new Map();
    for (let row = from; row < to; row += 1)
      patch.set(request.headRow + 1 + row, rowPatch(request, row, cell));
    writeCells(steps, live, patch);
  });
}

function rowPatch(
  { column, columns }: FillRequest,
  row: number,
  cell: (row: number, index: number) => ICellData,
): Map<number, ICellData> {
  return new Map(columns.map((_, index) => [column + index, cell(row, index)]));
}

/** Gives the sheet as many columns as are needed, and some to go on. */
function makeRoom(steps: Steps, { sheet, bookId, id }: LiveSheet, columns: number): void {
  const before = sheet.getColumnCount();
  if (columns < before) return;
  const count = (columnCount: number) => ({
    id: 'sheet.mutation.set-worksheet-column-count',
    params: { unitId: bookId, subUnitId: id, columnCount },
  });
  steps.make(count(columns + 8), count(before));
}

/** Makes new columns wide enough for their heads, which the heads beside them would cut off. */
function widen(steps: Steps, { sheet, bookId, id }: LiveSheet, { column, columns }: FillRequest): void {
  columns.forEach(({ head }, index) => {
    const at = column + index;
    const [before, needed] = [sheet.getColumnWidth(at), 16 + head.length * 8.5];
    if (needed <= before) return;
    const ranges = [{ startColumn: at, endColumn: at, startRow: 0, endRow: sheet.getRowCount() - 1 }];
    const width = (colWidth: number) => ({
      id: 'sheet.mutation.set-worksheet-col-width',
      params: { unitId: bookId, subUnitId: id, ranges, colWidth },
    });
    steps.make(width(needed), width(before));
  });
}

/** A spilled formula whose answers meet cells that are not empty shows an error in place of all of them. */
function roomOf(
  started: StartedWorkbook,
  { as, sheet, headRow, column, columns }: FillRequest,
): Outcome<void> {
  const live = liveSheet(started, sheet)!;
  const row = headRow + 1;
  const blocked = columns.findIndex(
    (_, index) => live.sheet.getCellRaw(row, column + index)?.v === '#SPILL!',
  );
  if (as !== 'spill' || blocked < 0) return answer(undefined);
  const cell = address(row, column + blocked);
  return problem('badInput', 'answerHasNoRoom', 'column', sheet, { more: { cell } });
}
