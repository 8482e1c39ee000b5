import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Block } from '../../../src/report/sheet.ts';
import { NAMESPACE } from '../../../functions/namespace.ts';
import { forAll, rangeOn } from './cells.ts';
import { piecesOf } from './reading.ts';
import type { Pending } from './session.ts';
import { allOrNone, pendingWrites } from './session.ts';
import type { Work } from '../sheetHost.ts';

/** How Excel writes our functions while it does not know them, perhaps with the workbook it took them for. */
const UNKNOWN_FORM = new RegExp(String.raw`(?:\[\d+\]!|'[^']*'!)?_xldudf_${NAMESPACE}_`, 'gi');
const OURS = new RegExp(String.raw`\b${NAMESPACE}\.[A-Z]`, 'i');

/** A run of cells with one formula: as it is to be, and as it stands there. */
type Broken = { readonly block: Block; readonly formula: string; readonly before: string };
type BrokenSheet = {
  readonly sheet: Excel.Worksheet;
  readonly name: string;
  readonly broken: readonly Broken[];
};

/** Writes our formulas anew where Excel shows that it does not know them. */
export function repairExcelFormulas(work?: Work): Promise<Outcome<number>> {
  let begun: readonly BrokenSheet[] = [];
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
      begun = found.filter(({ broken }) => broken.length > 0);
      for (const { sheet, broken } of begun) await writeAnew(sheet, broken, 'formula', pending);
      await pending.send();
      return answer(found.flatMap(({ broken }) => broken).reduce((sum, { block }) => sum + block.rows, 0));
    },
    takeBack: async (context) => {
      const pending = pendingWrites(context, undefined);
      for (const { name, broken } of begun)
        await writeAnew(context.workbook.worksheets.getItem(name), broken, 'before', pending);
      await pending.send();
    },
    what: () => begun.map(({ name }) => name).join(', '),
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
  if (used.isNullObject) return { sheet, name: sheet.name, broken: [] };
  const { rowIndex: row, columnIndex: column, rowCount: rows, columnCount: columns } = used;
  const broken: Broken[] = [];
  for (const piece of piecesOf({ row, column, rows, columns })) {
    work?.signal.throwIfAborted();
    broken.push(...(await brokenIn(context, sheet, piece)));
  }
  return { sheet, name: sheet.name, broken };
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
      const at = { row: piece.row + row, column: piece.column + column, rows: 1, columns: 1 };
      if (formula !== undefined)
        addToRun(runs, { formula, before: formulas[row]![column] as string, block: at });
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

// A reference that moves with the cell: written over several cells at once Excel would move it.
const RELATIVE = /(?:^|[^$A-Z0-9_.])(?:\$?[A-Z]{1,3}[1-9]|[A-Z]{1,3}\$[1-9]|[A-Z]{1,3}:|[1-9]\d*:)/i;

// A column of one formula, as in a table, is written in one go.
function addToRun(runs: Broken[], next: Broken): void {
  const last = runs.at(-1);
  const { row, column } = next.block;
  const goesOn =
    last?.formula === next.formula &&
    last.before === next.before &&
    last.block.column === column &&
    last.block.row + last.block.rows === row &&
    !RELATIVE.test(next.formula);
  if (last !== undefined && goesOn)
    runs[runs.length - 1] = { ...next, block: { ...last.block, rows: last.block.rows + 1 } };
  else runs.push(next);
}

async function writeAnew(
  sheet: Excel.Worksheet,
  broken: readonly Broken[],
  form: 'formula' | 'before',
  pending: Pending,
): Promise<void> {
  for (const each of broken) {
    await pending.spend(500 + each[form].length);
    rangeOn(sheet, each.block).formulas = forAll(each[form]);
  }
}
