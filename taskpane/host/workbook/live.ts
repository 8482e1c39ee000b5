import type { ICellData, Worksheet } from '@univerjs/core';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { CellRange } from '../cellAddress.ts';
import type { HostCell } from '../sheetHost.ts';
import type { StartedWorkbook } from './engine.ts';
import { openBook } from './engine.ts';
import { isMarkedText, sentenceIn } from './sentences.ts';
import { TRUTH } from './snapshot.ts';

type BySpot<T> = Record<number, Record<number, T | undefined> | undefined>;

/** One sheet of the open workbook as it is now: its cells, and what formulas spilled into others. */
export type LiveSheet = {
  readonly name: string;
  readonly id: string;
  readonly bookId: string;
  readonly facade: FWorksheet;
  readonly sheet: Worksheet;
  /** How far each formula spills. */
  readonly ranges: BySpot<CellRange>;
  readonly spilled: BySpot<ICellData>;
  /** What stands in a cell, spilled answers included. */
  readonly cell: (row: number, column: number) => ICellData | undefined;
  /** Code of a cell's number format. */
  readonly numberCode: (row: number, column: number) => string | undefined;
  readonly value: (row: number, column: number) => HostCell;
};

/** The sheet with that name, or undefined. */
export function liveSheet(started: StartedWorkbook, name: string): LiveSheet | undefined {
  const facade = openBook(started).getSheetByName(name);
  return facade === null ? undefined : liveFrom(started, facade);
}

/** All sheets in their order. */
export function liveSheets(started: StartedWorkbook): LiveSheet[] {
  return openBook(started)
    .getSheets()
    .map((facade) => liveFrom(started, facade));
}

function liveFrom(started: StartedWorkbook, facade: FWorksheet): LiveSheet {
  const book = openBook(started);
  const [bookId, id, sheet] = [book.getId(), facade.getSheetId(), facade.getSheet()];
  const model = started.univer.__getInjector().get(started.engine.FormulaDataModel);
  const spilled = (model.getArrayFormulaCellData()?.[bookId]?.[id] ?? {}) as BySpot<ICellData>;
  const ranges = (model.getArrayFormulaRange()?.[bookId]?.[id] ?? {}) as BySpot<CellRange>;
  const cell = (row: number, column: number): ICellData | undefined => {
    const own = sheet.getCellRaw(row, column) ?? undefined;
    return own === undefined || isEmptyCell(own) ? (spilled[row]?.[column] ?? own) : own;
  };
  return {
    name: facade.getSheetName(),
    id,
    bookId,
    facade,
    sheet,
    ranges,
    spilled,
    cell,
    numberCode: numberCodes(facade),
    value: (row, column) =>
      hostCell(started, cell(row, column), (error) => {
        const isFormula = sheet.getCellRaw(row, column)?.f !== undefined;
        const anchor = isFormula ? { row, column } : anchorOf(ranges, row, column);
        return started.sentences.last({ sheet: id, ...anchor }, error);
      }),
  };
}

const isEmptyCell = ({ v, p }: ICellData): boolean => (v === undefined || v === null) && p === undefined;

/** The cell with the formula whose answers reach into a cell: itself where none do. */
export function anchorOf(
  ranges: BySpot<CellRange>,
  row: number,
  column: number,
): { readonly row: number; readonly column: number } {
  for (const [anchorRow, columns] of Object.entries(ranges)) {
    if (Number(anchorRow) > row) break;
    for (const [anchorColumn, range] of Object.entries(columns ?? {})) {
      const inside =
        range !== undefined &&
        range.startRow <= row &&
        row <= range.endRow &&
        range.startColumn <= column &&
        column <= range.endColumn;
      if (inside) return { row: Number(anchorRow), column: Number(anchorColumn) };
    }
  }
  return { row, column };
}

// The style of a cell, else of its row, else of its column; styles are few and shared.
function numberCodes(facade: FWorksheet): (row: number, column: number) => string | undefined {
  const sheet = facade.getSheet();
  const styles = facade.getWorkbook().getStyles();
  const ofColumns = new Map<number, string | undefined>();
  const ofColumn = (column: number): string | undefined => {
    if (!ofColumns.has(column)) ofColumns.set(column, sheet.getColumnStyle(column)?.n?.pattern);
    return ofColumns.get(column);
  };
  return (row, column) => {
    const own = sheet.getCellRaw(row, column);
    const style = own?.s === undefined ? undefined : styles.getStyleByCell(own);
    return style?.n?.pattern ?? sheet.getRowStyle(row)?.n?.pattern ?? ofColumn(column);
  };
}

/** A cell of the engine in the host's terms. */
function hostCell(
  { engine }: StartedWorkbook,
  cell: ICellData | undefined,
  lastSentence: (error: string) => string,
): HostCell {
  const value: unknown = cell?.v ?? cell?.p?.body?.dataStream.replace(/\r?\n?$/, '');
  if (value === null || value === undefined) return null;
  const isError = typeof value === 'string' && engine.ERROR_TYPE_SET.has(value as never);
  if (isError && !isMarkedText(cell!)) {
    return { error: value, message: sentenceIn(cell?.custom, value) || lastSentence(value) };
  }
  return cell?.t === TRUTH ? value === 1 || value === true : (value as HostCell);
}
