import { afterAll, beforeAll } from 'vitest';
import type { FormulaAnswer, HeadlessWorkbook } from '../../taskpane/host/workbook/headlessWorkbook.ts';
import { startHeadless, stopHeadless } from '../../taskpane/host/workbook/headlessWorkbook.ts';
import { evaluateFormulas } from '../../taskpane/host/workbook/formulas.ts';
import type { FileCell, FileName, FileSheet, FileTable } from '../../taskpane/host/xlsx/workbookFile.ts';

/** A sheet for the formula engine. */
export function sheetOf(
  name: string,
  rows: readonly (readonly FileCell[])[],
  tables: readonly FileTable[] = [],
): FileSheet {
  return {
    name,
    rows,
    tables,
    hidden: false,
    dateCells: new Map(),
    hiddenRows: new Set(),
    hiddenColumns: new Set(),
    filtered: false,
    merges: [],
    formulasWithoutValue: 0,
  };
}

/**
 * Formulas of a test file that are evaluated together, for each calculation waits a tenth of a second.
 * Ask while the tests are being collected; the answers are there when they run.
 */
export function askedSheet(sheets: readonly FileSheet[], names: readonly FileName[] = []) {
  const asked = new Map<string, FormulaAnswer | undefined>();
  let workbook: HeadlessWorkbook;
  beforeAll(async () => {
    workbook = startHeadless();
    const formulas = [...asked.keys()];
    const answers = await evaluateFormulas(workbook, sheets, sheets[0]?.name, formulas, names);
    formulas.forEach((formula, index) => asked.set(formula, answers[index]));
  });
  afterAll(() => stopHeadless(workbook));
  return {
    /** Asks a formula; call the result in the test for its answer. */
    ask: (formula: string): (() => FormulaAnswer) => {
      asked.set(formula, undefined);
      return () => asked.get(formula)!;
    },
  };
}
