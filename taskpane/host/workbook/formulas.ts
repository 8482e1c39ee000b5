import { answersOf } from './answers.ts';
import type { FileName } from '../xlsx/workbookFile.ts';
import type { FormulaAnswer, HeadlessWorkbook } from './headlessWorkbook.ts';
import { openHeadless } from './headlessWorkbook.ts';
import type { FileSheet } from '../xlsx/fileSheet.ts';
import { MOST_COLUMNS, MOST_ROWS } from './snapshot.ts';

/** Columns kept free beside each formula, for what it spills. */
const STRIDE = 40;
/** Rows and columns kept free between the data and the formulas. */
const GAP = 10;
/** Rows kept free under the formulas. Whole-column references cost time for every row that there is. */
const ROOM = 25_000;

const EMPTY_SHEET: Pick<FileSheet, 'name' | 'rows' | 'tables'> = { name: 'Sheet1', rows: [], tables: [] };

type Book = {
  readonly sheets: readonly FileSheet[];
  readonly names: readonly FileName[];
  readonly sheet: FileSheet;
};

/**
 * Evaluates formulas beside the data of some sheets, many in one calculation.
 * @param workbook  a started engine
 * @param sheets    the sheets, in order
 * @param active    name of the sheet that references without a sheet name mean
 * @param formulas  each with its "="
 * @param names     names that the formulas may use
 * @returns the answers in order
 */
export async function evaluateFormulas(
  workbook: HeadlessWorkbook,
  sheets: readonly FileSheet[],
  active: string | undefined,
  formulas: readonly string[],
  names: readonly FileName[] = [],
): Promise<FormulaAnswer[]> {
  const all = sheets.length > 0 ? sheets : [EMPTY_SHEET as FileSheet];
  const book = { sheets: all, names, sheet: all.find(({ name }) => name === active) ?? all[0]! };
  const answers = await evaluateInBatches(workbook, book, formulas);
  for (const [index, answer] of answers.entries()) {
    // It may have met its neighbour's answer or the end of the rows: once more, alone on the largest sheet.
    if (!lacksRoom(answer)) continue;
    const [alone] = await evaluateTogether(workbook, book, [formulas[index]!], MOST_ROWS);
    answers[index] = alone!;
  }
  return answers;
}

async function evaluateInBatches(
  workbook: HeadlessWorkbook,
  book: Book,
  formulas: readonly string[],
): Promise<FormulaAnswer[]> {
  const longest = Math.max(...book.sheets.map(({ rows }) => rows.length));
  const rowCount = Math.min(longest + GAP + Math.max(ROOM, longest), MOST_ROWS);
  const most = Math.max(1, Math.floor((MOST_COLUMNS - columnBeside(book.sheet)) / STRIDE));
  const answers: FormulaAnswer[] = [];
  for (let done = 0; done < formulas.length; done += most) {
    const batch = formulas.slice(done, done + most);
    answers.push(...(await evaluateTogether(workbook, book, batch, rowCount)));
  }
  return answers;
}

const lacksRoom = (answer: FormulaAnswer): boolean =>
  typeof answer === 'object' && 'error' in answer && ['#SPILL!', '#REF!'].includes(answer.error);

async function evaluateTogether(
  workbook: HeadlessWorkbook,
  { sheets, names, sheet }: Book,
  formulas: readonly string[],
  rowCount: number,
): Promise<FormulaAnswer[]> {
  const row = Math.min(sheet.rows.length + GAP, MOST_ROWS - 1);
  const placed = formulas.map((formula, index) => ({
    formula,
    row,
    column: columnBeside(sheet) + index * STRIDE,
  }));
  await openHeadless(workbook, { sheets, names, active: sheet.name, formulas: placed, rowCount });
  return answersOf(workbook, sheet.name, placed);
}

const columnBeside = ({ rows }: FileSheet): number =>
  rows.reduce((most, row) => Math.max(most, row.length), 0) + GAP;
