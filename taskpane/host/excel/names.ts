import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import { rangeOn } from './cells.ts';
import { allOrNone, inExcel } from './session.ts';
import type { CellAt, NamedPlace } from '../sheetHost.ts';

/** What a name meant before it was given anew: a formula, null for no such name, undefined while nothing was done. */
type Before = { meaning: string | null | undefined };

/** Names a cell for the whole workbook, in place of what the name meant before. */
export function nameExcelCell(place: NamedPlace): Promise<Outcome<void>> {
  const before: Before = { meaning: undefined };
  return allOrNone<void>({
    work: undefined,
    make: (context) => name(context, place, before),
    takeBack: (context) => takeBack(context, place.name, before),
    what: () => (before.meaning === undefined ? '' : place.name),
  });
}

async function name(
  context: Excel.RequestContext,
  { name: wanted, at }: NamedPlace,
  before: Before,
): Promise<Outcome<void>> {
  const { names, worksheets } = context.workbook;
  const found = names.getItemOrNullObject(wanted);
  const sheet = worksheets.getItemOrNullObject(at.sheet);
  found.load('formula');
  await context.sync();
  if (sheet.isNullObject) return problem('badInput', 'sheetNotThere', 'sheet', at.sheet);
  before.meaning = found.isNullObject ? null : (found.formula as string);
  if (!found.isNullObject) found.delete();
  names.add(wanted, rangeOn(sheet, { row: at.row, column: at.column, rows: 1, columns: 1 }));
  await context.sync();
  return answer(undefined);
}

async function takeBack(context: Excel.RequestContext, wanted: string, { meaning }: Before): Promise<void> {
  if (meaning === undefined) return;
  const { names } = context.workbook;
  const found = names.getItemOrNullObject(wanted);
  await context.sync();
  if (!found.isNullObject) found.delete();
  if (meaning !== null) names.add(wanted, meaning);
  await context.sync();
}

/** Where a workbook-wide name stands, or undefined where it names no single cell. */
export function namedExcelCell(name: string): Promise<Outcome<CellAt | undefined>> {
  return inExcel(async (context) => {
    const range = context.workbook.names.getItemOrNullObject(name).getRangeOrNullObject();
    range.load('rowIndex,columnIndex,rowCount,columnCount,worksheet/name');
    await context.sync();
    if (range.isNullObject || range.rowCount !== 1 || range.columnCount !== 1) return answer(undefined);
    return answer({ sheet: range.worksheet.name, row: range.rowIndex, column: range.columnIndex });
  });
}
