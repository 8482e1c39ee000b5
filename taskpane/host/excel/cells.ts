import type { Block } from '../../../src/report/sheet.ts';
import { isCellError } from '../../../functions/cell.ts';
import type { HostCell } from '../sheetHost.ts';
import type { Pending } from './session.ts';

/** A cell as Excel takes it in: a formula begins with "=", null leaves the cell as it is. */
export type Entry = string | number | boolean | null;

/** A text that stays a text, whatever it looks like: Excel reads "0514" and "=1+1" as if they were typed. */
export function textEntry(text: string): string {
  return text === '' ? '' : `'${text}`;
}

/** A value as Excel takes it in. */
export function entryOf(value: HostCell): Entry {
  if (value === null) return '';
  if (isCellError(value)) return value.error;
  return typeof value === 'string' ? textEntry(value) : value;
}

const encoder = new TextEncoder();

/** Bytes of a row on the line. */
function rowBytes(row: readonly Entry[]): number {
  return encoder.encode(JSON.stringify(row)).length + 1;
}

// The library parts large tables into pieces of so many cells, and this much goes around each on the line.
const CELLS_OF_PIECE = 1_500;
const BYTES_OF_PIECE = 1_400;

// One write holds at most this many bytes, what goes around them included.
const CHUNK_BYTES = 1_800_000;

/** Rows that go together: first row and what is written from there. */
export type Chunk = { readonly from: number; readonly rows: Entry[][]; readonly bytes: number };

/** Parts rows into chunks that a request can carry. */
export function chunksOf(rows: Iterable<Entry[]>): Chunk[] {
  const chunks: { from: number; rows: Entry[][]; bytes: number }[] = [];
  let from = 0;
  for (const row of rows) {
    const bytes = rowBytes(row) + (BYTES_OF_PIECE * row.length) / CELLS_OF_PIECE;
    const last = chunks.at(-1);
    if (last === undefined || last.bytes + bytes > CHUNK_BYTES) chunks.push({ from, rows: [row], bytes });
    else {
      last.rows.push(row);
      last.bytes += bytes;
    }
    from += 1;
  }
  return chunks;
}

/** Writes chunks below a corner of a sheet. */
export async function writeChunks(
  sheet: Excel.Worksheet,
  corner: Pick<Block, 'row' | 'column'>,
  chunks: readonly Chunk[],
  pending: Pending,
): Promise<void> {
  for (const { from, rows, bytes } of chunks) {
    const columns = rows[0]!.length;
    await pending.spend(bytes + BYTES_OF_PIECE);
    sheet.getRangeByIndexes(corner.row + from, corner.column, rows.length, columns).formulas = rows;
  }
}

/** The range over a block. */
export function rangeOn(sheet: Excel.Worksheet, { row, column, rows, columns }: Block): Excel.Range {
  return sheet.getRangeByIndexes(row, column, rows, columns);
}

/** One value for all cells of a range: Excel takes it alone, its types know only tables. */
export function forAll(value: string): string[][] {
  return value as unknown as string[][];
}
