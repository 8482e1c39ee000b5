import type { ICellData } from '@univerjs/core';
import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Block, Format, Sheet, SheetCell } from '../../../src/report/sheet.ts';
import type { HostCell } from '../sheetHost.ts';
import { addLiveSheets } from './adding.ts';
import { writeCells } from './cellPatch.ts';
import type { StartedWorkbook } from './engine.ts';
import { valueCell } from './fillCells.ts';
import { isProtected, usedBlock } from './info.ts';
import type { LiveSheet } from './live.ts';
import { liveSheet } from './live.ts';
import { NUMBER_CODES } from '../sheetLooks.ts';
import { allOrNone } from './steps.ts';

/** One cell of a record, with the format of its number. */
export type RecordCell = { readonly value: HostCell; readonly format: Format };

const HEAD_WIDTH = 16;

/** A sheet of records that has its heads only. */
export function recordSheet(name: string, heads: readonly string[]): Sheet {
  const head = (value: string): SheetCell => ({ value, meaning: 'columnHead', format: 'text' });
  return {
    name,
    rows: [heads.map(head)],
    widths: heads.map((text) => Math.max(HEAD_WIDTH, Math.min(40, text.length + 2))),
    frozenRows: 1,
    names: [],
    tables: [],
    charts: [],
    pageBreaks: [],
    spans: [],
  };
}

/** Adds one row under the last one of a sheet of records. @returns its row, from 0 */
export async function appendRecord(
  started: StartedWorkbook,
  name: string,
  heads: readonly string[],
  cells: readonly RecordCell[],
  added: Parameters<typeof addLiveSheets>[3],
): Promise<Outcome<number>> {
  if (liveSheet(started, name) === undefined) {
    const made = await addLiveSheets(started, [recordSheet(name, heads)], undefined, added, false);
    if (!made.ok) return made;
  }
  const live = liveSheet(started, name)!;
  if (isProtected(live)) return problem('badInput', 'sheetProtected', 'sheet', name);
  const used = await usedBlock(live);
  return allOrNone(started, async (steps) => {
    const { headRow, places, newHeads } = placesOf(live, used, heads);
    const row = used === undefined ? 1 : Math.max(headRow + 1, used.row + used.rows);
    makeRows(started, live, row);
    writeCells(
      steps,
      live,
      new Map([
        [headRow, newHeads],
        [row, new Map(cells.map((cell, index) => [places[index]!, recordCell(cell)]))],
      ]),
    );
    return answer(row);
  });
}

const recordCell = ({ value, format }: RecordCell): ICellData => {
  const code = NUMBER_CODES[format];
  return { ...valueCell(value), ...(code !== undefined && { s: { n: { pattern: code } } }) };
};

type Places = {
  readonly headRow: number;
  /** Column of each head. */
  readonly places: readonly number[];
  /** Heads that the sheet lacks, at its right side. */
  readonly newHeads: ReadonlyMap<number, ICellData>;
};

function placesOf(live: LiveSheet, used: Block | undefined, heads: readonly string[]): Places {
  const headRow = used?.row ?? 0;
  const end = used === undefined ? 0 : used.column + used.columns;
  const known = new Map<string, number>();
  for (let column = used?.column ?? 0; column < end; column += 1) {
    const head = folded(live.value(headRow, column));
    if (head !== '' && !known.has(head)) known.set(head, column);
  }
  const newHeads = new Map<number, ICellData>();
  const places = heads.map((head) => {
    const column = known.get(folded(head)) ?? end + newHeads.size;
    if (!known.has(folded(head))) newHeads.set(column, valueCell(head));
    return column;
  });
  return { headRow, places, newHeads };
}

const folded = (head: unknown): string =>
  typeof head === 'string' || typeof head === 'number' ? String(head).trim().toLowerCase() : '';

function makeRows({ api }: StartedWorkbook, { sheet, bookId, id }: LiveSheet, row: number): void {
  if (row < sheet.getRowCount()) return;
  const params = { unitId: bookId, subUnitId: id, rowCount: row + 40 };
  api.syncExecuteCommand('sheet.mutation.set-worksheet-row-count', params);
}
