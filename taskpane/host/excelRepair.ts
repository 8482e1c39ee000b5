import type { Outcome } from '../../src/basics/outcome.ts';
import { answer, problem } from '../../src/basics/outcome.ts';
import type { Block } from '../../src/report/sheet.ts';
import { NAMESPACE } from '../../functions/namespace.ts';
import { forAll, rangeOn } from './excelCells.ts';
import { piecesOf } from './excelReading.ts';
import type { Pending } from './excelSession.ts';
import { allOrNone } from './excelSession.ts';
import type { Work } from './sheetHost.ts';

/** How Excel writes our functions while it does not know them, perhaps with the workbook it took them for. */
const UNKNOWN_FORM = new RegExp(String.raw`(?:\[\d+\]!|'[^']*'!)?_xldudf_${NAMESPACE}_`, 'gi');
const OURS = new RegExp(String.raw`\b${NAMESPACE}\.[A-Z]`, 'i');

type Broken = { readonly block: Block; readonly formula: string };
type BrokenSheet = { readonly sheet: Excel.Worksheet; readonly broken: readonly Broken[] };

/** Writes our formulas anew where Excel shows that it does not know them. */
export function repairExcelFormulas(work?: Work): Promise<Outcome<number>> {
  return allOrNone<number>({
    work,
    make: async (context, pending) => {
      const { worksheets } = context.workbook;
      worksheets.load('items/name,items/protection/protected');
      await context.sync();
      const found: BrokenSheet[] = [];
      for (const sheet of worksheets.items) found.push(await brokenOn(context, sheet, work));
      const closed = found.find(({ sheet, broken }) => sheet.protection.protected && broken.length > 0);
      if (closed !== undefined) return problem('badInput', 'sheetProtected', 'sheet', closed.sheet.name);
      for (const each of found) await writeAnew(each, pending);
      await pending.send();
      return answer(found.flatMap(({ broken }) => broken).reduce((sum, { block }) => sum + block.rows, 0));
    },
    // The same formulas in a form that Excel understands: half of them mended is no harm.
    takeBack: async () => undefined,
    what: () => '',
  });
}

async function brokenOn(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  work: Work | undefined,
): Promise<BrokenSheet> {
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load('rowIndex,columnIndex,rowCount,columnCount');
  await context.sync();
  if (used.isNullObject) return { sheet, broken: [] };
  const { rowIndex: row, columnIndex: column, rowCount: rows, columnCount: columns } = used;
  const broken: Broken[] = [];
  for (const piece of piecesOf({ row, column, rows, columns })) {
    work?.signal.throwIfAborted();
    broken.push(...(await brokenIn(context, sheet, piece)));
  }
  return { sheet, broken };
}

async function brokenIn(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  piece: Block,
): Promise<Broken[]> {
  const range = rangeOn(sheet, piece);
  range.load('formulas,values');
  await context.sync();
  const { formulas, values } = range;
  const runs: Broken[] = [];
  for (let column = 0; column < piece.columns; column += 1) {
    for (let row = 0; row < piece.rows; row += 1) {
      const formula = mended(formulas[row]![column], values[row]![column]);
      if (formula !== undefined) addToRun(runs, formula, piece.row + row, piece.column + column);
    }
  }
  return runs;
}

/** The formula to be written, or undefined where nothing is to be mended. */
function mended(formula: unknown, value: unknown): string | undefined {
  if (typeof formula !== 'string' || !formula.startsWith('=')) return undefined;
  const known = formula.replace(UNKNOWN_FORM, `${NAMESPACE}.`);
  const isUnknown = known !== formula || (value === '#NAME?' && OURS.test(formula));
  return isUnknown ? known : undefined;
}

// A column of one formula, as in a table, is written in one go.
function addToRun(runs: Broken[], formula: string, row: number, column: number): void {
  const last = runs.at(-1);
  const goesOn =
    last?.formula === formula && last.block.column === column && last.block.row + last.block.rows === row;
  if (last !== undefined && goesOn)
    runs[runs.length - 1] = { formula, block: { ...last.block, rows: last.block.rows + 1 } };
  else runs.push({ formula, block: { row, column, rows: 1, columns: 1 } });
}

async function writeAnew({ sheet, broken }: BrokenSheet, pending: Pending): Promise<void> {
  for (const { block, formula } of broken) {
    await pending.spend(500 + formula.length);
    rangeOn(sheet, block).formulas = forAll(formula);
  }
}
