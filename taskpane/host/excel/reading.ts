import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Block } from '../../../src/report/sheet.ts';
import { isDateFormat } from '../dateFormat.ts';
import { rangeOn } from './cells.ts';
import { dateShift, firstDayOf1904 } from './dates.ts';
import { inExcel } from './session.ts';
import type { BlockContents, HostCell, SheetBlock, Work } from '../sheetHost.ts';

// Cells of one answer: at up to 100 bytes each with format and type, well under 5 MB.
const CELLS_AT_ONCE = 40_000;

/** Reads a block in pieces that an answer can carry. */
export function readExcelBlock({ sheet, block }: SheetBlock, work?: Work): Promise<Outcome<BlockContents>> {
  return inExcel(async (context) => {
    const found = context.workbook.worksheets.getItemOrNullObject(sheet);
    const first = firstDayOf1904(context.workbook);
    await context.sync();
    if (found.isNullObject) return problem('badInput', 'sheetNotThere', 'sheet', sheet);
    const reading = newReading(dateShift(first));
    for (const piece of piecesOf(block)) {
      work?.signal.throwIfAborted();
      await readPiece(context, found, piece, piece.row - block.row, reading);
      work?.progress((piece.row - block.row + piece.rows) / block.rows);
    }
    const { rows, dateCells, hiddenRows } = reading;
    return answer({ rows, dateCells, hiddenRows });
  });
}

type Reading = {
  readonly rows: HostCell[][];
  readonly dateCells: Map<number, Set<number>>;
  readonly hiddenRows: Set<number>;
  readonly shift: number;
};

const newReading = (shift: number): Reading => ({
  rows: [],
  dateCells: new Map(),
  hiddenRows: new Set(),
  shift,
});

/** A block in pieces of whole rows. */
export function piecesOf(block: Block): Block[] {
  const rows = Math.max(1, Math.floor(CELLS_AT_ONCE / block.columns));
  return Array.from({ length: Math.ceil(block.rows / rows) }, (_, index) => ({
    ...block,
    row: block.row + index * rows,
    rows: Math.min(rows, block.rows - index * rows),
  }));
}

type Loaded = Pick<Excel.Range, 'values' | 'valueTypes' | 'numberFormat' | 'rowHidden'>;

async function readPiece(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  piece: Block,
  offset: number,
  reading: Reading,
): Promise<void> {
  const loaded = await loadedPiece(context, rangeOn(sheet, piece), piece.rows > 1);
  if (loaded === undefined) return readHalves(context, sheet, piece, offset, reading);
  takeRows(loaded, offset, reading);
  // Null: some of the rows.
  if ((loaded.rowHidden as boolean | null) !== false)
    await readHidden(context, sheet, piece, offset, reading.hiddenRows);
}

/** A piece, or undefined where its texts are too long for one answer: an error, or nothing in place of values. */
async function loadedPiece(
  context: Excel.RequestContext,
  range: Excel.Range,
  canBeParted: boolean,
): Promise<Loaded | undefined> {
  range.load('values,valueTypes,numberFormat,rowHidden');
  try {
    await context.sync();
  } catch (error) {
    if (canBeParted && isTooLarge(error)) return undefined;
    throw error;
  }
  return canBeParted && (range.values as unknown) === null ? undefined : range;
}

const isTooLarge = (error: unknown): boolean =>
  error instanceof OfficeExtension.Error && error.code === 'ResponsePayloadSizeLimitExceeded';

async function readHalves(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  piece: Block,
  offset: number,
  reading: Reading,
): Promise<void> {
  const half = Math.ceil(piece.rows / 2);
  await readPiece(context, sheet, { ...piece, rows: half }, offset, reading);
  const rest = { ...piece, row: piece.row + half, rows: piece.rows - half };
  await readPiece(context, sheet, rest, offset + half, reading);
}

function takeRows({ values, valueTypes, numberFormat }: Loaded, offset: number, reading: Reading): void {
  values.forEach((row, index) =>
    reading.rows.push(
      row.map((value, column) => {
        const type = valueTypes[index]![column]!;
        const isDate = type === 'Double' && isDateFormat(String(numberFormat[index]![column]));
        if (isDate) noteDate(reading.dateCells, column, offset + index);
        return isDate ? Number(value) + reading.shift : cellOf(value, type);
      }),
    ),
  );
}

function noteDate(dateCells: Map<number, Set<number>>, column: number, row: number): void {
  const rows = dateCells.get(column);
  if (rows === undefined) dateCells.set(column, new Set([row]));
  else rows.add(row);
}

function cellOf(value: unknown, type: string): HostCell {
  if (type === 'Error') return { error: String(value), message: '' };
  if (type === 'Empty' || value === '' || value === null) return null;
  return value as HostCell;
}

// Whole rows are asked, for hidden columns count as hidden cells too.
async function readHidden(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  piece: Block,
  offset: number,
  hidden: Set<number>,
): Promise<void> {
  const visible = rangeOn(sheet, piece).getEntireRow().getSpecialCellsOrNullObject('Visible');
  visible.load('areas/items/rowIndex,areas/items/rowCount');
  await context.sync();
  const seen = new Set<number>();
  if (!visible.isNullObject)
    for (const { rowIndex, rowCount } of visible.areas.items)
      for (let row = rowIndex; row < rowIndex + rowCount; row += 1) seen.add(row);
  for (let row = 0; row < piece.rows; row += 1) if (!seen.has(piece.row + row)) hidden.add(offset + row);
}
