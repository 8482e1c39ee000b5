import { NAMESPACE } from '../../functions/list.ts';
import type { FileSheet } from './workbookSheet.ts';
import type { FormulaAnswer, FormulaScalar, HeadlessWorkbook } from './workbookHeadless.ts';
import { openHeadless } from './workbookHeadless.ts';
import type { CellPlace } from './workbookSentences.ts';
import type { PlacedFormula } from './workbookSnapshot.ts';
import { MOST_COLUMNS, MOST_ROWS, snapshotOf, TRUTH } from './workbookSnapshot.ts';

/** Columns kept free beside each formula, for what it spills. */
const STRIDE = 300;
/** Rows and columns kept free between the data and the formulas. */
const GAP = 10;

const EMPTY_SHEET: Pick<FileSheet, 'name' | 'rows'> = { name: 'Sheet1', rows: [] };

/**
 * Evaluates formulas beside the data of some sheets, many in one calculation.
 * @param workbook  a started engine
 * @param sheets    the sheets, in order
 * @param active    name of the sheet that references without a sheet name mean
 * @param formulas  each with its "="
 * @returns the answers in order
 */
export async function evaluateFormulas(
  workbook: HeadlessWorkbook,
  sheets: readonly FileSheet[],
  active: string | undefined,
  formulas: readonly string[],
): Promise<FormulaAnswer[]> {
  const all = sheets.length > 0 ? sheets : [EMPTY_SHEET as FileSheet];
  const sheet = all.find(({ name }) => name === active) ?? all[0]!;
  const answers: FormulaAnswer[] = [];
  const room = roomBeside(sheet);
  for (let done = 0; done < formulas.length; done += room.most) {
    const placed = formulas.slice(done, done + room.most).map((formula, index) => ({
      formula,
      row: room.row,
      column: room.column + index * STRIDE,
    }));
    await openHeadless(workbook, snapshotOf(all, sheet.name, placed));
    answers.push(...placed.map((each) => answerAt(workbook, sheet.name, each)));
  }
  return answers;
}

function roomBeside({ rows }: FileSheet): { row: number; column: number; most: number } {
  const widest = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const column = widest + GAP;
  return {
    row: Math.min(rows.length + GAP, MOST_ROWS - 1),
    column,
    most: Math.max(1, Math.floor((MOST_COLUMNS - column) / STRIDE)),
  };
}

type Range = {
  readonly startRow: number;
  readonly startColumn: number;
  readonly endRow: number;
  readonly endColumn: number;
};

/** What stands in a formula's cell, and in the cells into which it spilled. */
function answerAt(
  workbook: HeadlessWorkbook,
  sheetName: string,
  { formula, row, column }: PlacedFormula,
): FormulaAnswer {
  const book = workbook.api.getActiveWorkbook()!;
  const sheet = book.getSheetByName(sheetName)!;
  const ours = formula.toUpperCase().includes(`${NAMESPACE}.`);
  const place = { sheet: sheet.getSheetId(), row, column };
  const spill = spillOf(workbook, book.getId(), place);
  const shape = { rows: spill.endRow - row + 1, columns: spill.endColumn - column + 1 };
  const cells = spilledCells(workbook, book.getId(), place.sheet);
  const own = sheet.getRange(row, column).getCellData() ?? {};
  const scalar = (down: number, right: number): FormulaScalar => {
    const spilled = cells?.[row + down]?.[column + right];
    const cell = down === 0 && right === 0 && spilled === undefined ? own : spilled;
    return scalarOf(workbook, cell, (error) =>
      ours ? workbook.sentences.of(place, { error, shape, down, right }) : '',
    );
  };
  if (shape.rows === 1 && shape.columns === 1) return scalar(0, 0);
  return Array.from({ length: shape.rows }, (_, down) =>
    Array.from({ length: shape.columns }, (_, right) => scalar(down, right)),
  );
}

function scalarOf(
  { engine }: HeadlessWorkbook,
  cell: RawCell | undefined,
  sentence: (error: string) => string,
): FormulaScalar {
  const value = cell?.v;
  if (value === null || value === undefined) return '';
  if (typeof value === 'string' && engine.ERROR_TYPE_SET.has(value as never)) {
    return { error: value, message: sentence(value) };
  }
  return cell?.t === TRUTH ? value === 1 || value === true : (value as FormulaScalar);
}

function spillOf(
  { univer, engine }: HeadlessWorkbook,
  book: string,
  { sheet, row, column }: CellPlace,
): Range {
  const model = univer.__getInjector().get(engine.FormulaDataModel);
  const range = model.getArrayFormulaRange()?.[book]?.[sheet]?.[row]?.[column] as Range | undefined;
  return range ?? { startRow: row, startColumn: column, endRow: row, endColumn: column };
}

type RawCell = { readonly v?: unknown; readonly t?: unknown };
type Cells = Record<number, Record<number, RawCell | undefined> | undefined>;

function spilledCells({ univer, engine }: HeadlessWorkbook, book: string, sheet: string): Cells | undefined {
  const model = univer.__getInjector().get(engine.FormulaDataModel);
  return model.getArrayFormulaCellData()?.[book]?.[sheet] as Cells | undefined;
}
