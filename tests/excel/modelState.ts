import type { ModelSheet, ModelWorkbook } from './workbookModel.ts';
import { numberFormatAt } from './workbookModel.ts';

/** Everything that a user could tell apart, as plain data: to compare a workbook before and after. */
export function stateOf(workbook: ModelWorkbook): object {
  return {
    sheets: workbook.sheets.map(sheetState),
    names: workbook.names.map(({ name, sheet, block }) => ({ name, sheet: sheet.name, block })),
    active: workbook.active.name,
    events: workbook.enableEvents,
    calculation: workbook.calculationMode,
  };
}

function sheetState(sheet: ModelSheet): object {
  const cells = sheet.cells.flatMap((row, r) =>
    row.flatMap((value, c) => [[r, c, value, sheet.formulas.get(`${r},${c}`), numberFormatAt(sheet, r, c)]]),
  );
  const tables = sheet.tables.map(({ name, block, heads, style, calculated }) => ({
    ...{ name, block, heads: [...heads], style, calculated: [...calculated] },
  }));
  const { name, visibility, isProtected } = sheet;
  return { name, visibility, isProtected, cells, tables, charts: sheet.charts.length };
}

/** Fills a sheet with rows from its first cell on, as if a user had typed them before. */
export function typeRows(sheet: ModelSheet, rows: readonly (readonly (string | number | boolean)[])[]): void {
  rows.forEach((row, index) => (sheet.cells[index] = [...row]));
}
