import type { ModelSheet, ModelWorkbook } from './workbookModel.ts';
import { numberFormatAt } from './workbookModel.ts';

type SheetState = { readonly name: string } & Readonly<Record<string, unknown>>;

/** A workbook as plain data. */
export type WorkbookState = {
  readonly sheets: readonly SheetState[];
  readonly names: readonly unknown[];
  readonly active: string;
  readonly events: boolean;
  readonly calculation: string;
};

/** Everything that a user could tell apart, as plain data: to compare a workbook before and after. */
export function stateOf(workbook: ModelWorkbook): WorkbookState {
  return {
    sheets: workbook.sheets.map(sheetState),
    names: workbook.names.map(({ name, sheet, block }) => ({ name, sheet: sheet.name, block })),
    active: workbook.active.name,
    events: workbook.enableEvents,
    calculation: workbook.calculationMode,
  };
}

function sheetState(sheet: ModelSheet): SheetState {
  const cells = sheet.cells.flatMap((row, r) =>
    row.flatMap((value, c) => [[r, c, value, sheet.formulas.get(`${r},${c}`), numberFormatAt(sheet, r, c)]]),
  );
  const tables = sheet.tables.map(({ name, block, heads, style, calculated }) => ({
    ...{ name, block, heads: [...heads], style, calculated: [...calculated] },
  }));
  const { name, visibility, isProtected } = sheet;
  const looks = sheet.looks.filter(({ property }) => property !== 'numberFormat');
  const names = sheet.names.map((each) => each.name);
  return { name, visibility, isProtected, cells, tables, looks, names, charts: sheet.charts.length };
}

/** Fills a sheet with rows from its first cell on, as if a user had typed them before. */
export function typeRows(sheet: ModelSheet, rows: readonly (readonly (string | number | boolean)[])[]): void {
  rows.forEach((row, index) => (sheet.cells[index] = [...row]));
}
