import type { Outcome } from '../../src/basics/outcome.ts';
import { answer, problem } from '../../src/basics/outcome.ts';
import { rangeOn } from './excelCells.ts';
import { inExcel } from './excelSession.ts';
import type { CellAt, NamedPlace } from './sheetHost.ts';

/** Names a cell for the whole workbook, in place of what the name meant before. */
export function nameExcelCell({ name, at }: NamedPlace): Promise<Outcome<void>> {
  return inExcel(async (context) => {
    const { names, worksheets } = context.workbook;
    const before = names.getItemOrNullObject(name);
    const sheet = worksheets.getItemOrNullObject(at.sheet);
    await context.sync();
    if (sheet.isNullObject) return problem('badInput', 'sheetNotThere', 'sheet', at.sheet);
    if (!before.isNullObject) before.delete();
    names.add(name, rangeOn(sheet, { row: at.row, column: at.column, rows: 1, columns: 1 }));
    await context.sync();
    return answer(undefined);
  });
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
