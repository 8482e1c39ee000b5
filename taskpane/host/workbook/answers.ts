import type { CellRange } from '../cellAddress.ts';
import type { FormulaAnswer, FormulaScalar, HeadlessWorkbook } from './headlessWorkbook.ts';
import { sentenceIn } from './sentences.ts';
import type { PlacedFormula } from './snapshot.ts';
import { TRUTH } from './snapshot.ts';

type RawCell = { readonly v?: unknown; readonly t?: unknown; readonly custom?: unknown };
type BySpot<T> = Record<number, Record<number, T | undefined> | undefined>;

/** What the engine keeps of a sheet: its cells, and beside them how far each formula spills and what into. */
type Calculated = {
  readonly id: string;
  readonly cellAt: (row: number, column: number) => RawCell;
  readonly ranges: BySpot<CellRange>;
  readonly spilled: BySpot<RawCell>;
};

/** What stands in the cell of each formula of a sheet, with the cells into which it spilled. */
export function answersOf(
  workbook: HeadlessWorkbook,
  sheetName: string,
  formulas: readonly PlacedFormula[],
): FormulaAnswer[] {
  const sheet = calculatedSheet(workbook, sheetName);
  return formulas.map((formula) => answerOf(workbook, sheet, formula));
}

function calculatedSheet({ api, univer, engine }: HeadlessWorkbook, name: string): Calculated {
  const book = api.getActiveWorkbook()!;
  const sheet = book.getSheetByName(name)!;
  const model = univer.__getInjector().get(engine.FormulaDataModel);
  const id = sheet.getSheetId();
  return {
    id,
    // What the sheet shows is rounded to 12 digits; what it keeps is not.
    cellAt: (row, column) => sheet.getSheet().getCellRaw(row, column) ?? {},
    ranges: (model.getArrayFormulaRange()?.[book.getId()]?.[id] ?? {}) as BySpot<CellRange>,
    spilled: (model.getArrayFormulaCellData()?.[book.getId()]?.[id] ?? {}) as BySpot<RawCell>,
  };
}

function answerOf(
  workbook: HeadlessWorkbook,
  sheet: Calculated,
  { row, column }: PlacedFormula,
): FormulaAnswer {
  const scalar = (cell: RawCell | undefined): FormulaScalar =>
    scalarOf(workbook, cell, (error) => workbook.sentences.last({ sheet: sheet.id, row, column }, error));
  const range = sheet.ranges[row]?.[column];
  const own = sheet.cellAt(row, column);
  const spills = range !== undefined && (range.endRow > row || range.endColumn > column);
  if (!spills || own.v === '#SPILL!') return scalar(own);
  return Array.from({ length: range.endRow - row + 1 }, (_, down) =>
    Array.from({ length: range.endColumn - column + 1 }, (_, right) =>
      scalar(sheet.spilled[row + down]?.[column + right]),
    ),
  );
}

function scalarOf(
  { engine }: HeadlessWorkbook,
  cell: RawCell | undefined,
  lastSentence: (error: string) => string,
): FormulaScalar {
  const value = cell?.v;
  if (value === null || value === undefined) return '';
  if (typeof value === 'string' && engine.ERROR_TYPE_SET.has(value as never)) {
    return { error: value, message: sentenceIn(cell?.custom, value) || lastSentence(value) };
  }
  return cell?.t === TRUTH ? value === 1 || value === true : (value as FormulaScalar);
}
