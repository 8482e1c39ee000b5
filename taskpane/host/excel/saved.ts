import type { Block } from '../../../src/report/sheet.ts';
import type { Entry } from './cells.ts';
import { chunksOf, rangeOn, textEntry, writeChunks } from './cells.ts';
import { piecesOf } from './reading.ts';
import type { Pending } from './session.ts';

/** What stood in a block, to be put back. */
export type SavedBlock = {
  readonly block: Block;
  readonly entries: readonly Entry[][];
  readonly formats: readonly string[][];
};

/** Remembers what stands in a block. */
export async function savedBlock(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  block: Block,
): Promise<SavedBlock> {
  const [entries, formats]: [Entry[][], string[][]] = [[], []];
  for (const piece of piecesOf(block)) await savePiece(context, rangeOn(sheet, piece), entries, formats);
  return { block, entries, formats };
}

async function savePiece(
  context: Excel.RequestContext,
  range: Excel.Range,
  entries: Entry[][],
  formats: string[][],
): Promise<void> {
  range.load('values,formulas,numberFormat');
  await context.sync();
  const { values, formulas, numberFormat } = range;
  formulas.forEach((row, r) => entries.push(row.map((entry, c) => entryAgain(entry, values[r]![c]))));
  formats.push(...(numberFormat as string[][]));
}

/** What was typed into a cell: a text that is its own value was no formula. */
function entryAgain(entry: unknown, value: unknown): Entry {
  if (typeof entry !== 'string') return entry as Entry;
  if (entry !== value) return entry;
  return /^#[A-Z/0]+[!?A]$/.test(entry) ? entry : textEntry(entry);
}

/** Puts back what stood in a block. Formats first: a cell of texts takes its text as it is. */
export async function putBack(sheet: Excel.Worksheet, saved: SavedBlock, pending: Pending): Promise<void> {
  const { block, entries, formats } = saved;
  for (const { from, rows } of chunksOf(formats as string[][])) {
    await pending.spend(rows.length * block.columns * 12);
    rangeOn(sheet, { ...block, row: block.row + from, rows: rows.length }).numberFormat = rows;
  }
  await writeChunks(sheet, block, chunksOf(entries as Entry[][]), pending);
}
