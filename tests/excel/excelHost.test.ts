import { afterEach, expect } from 'vitest';
import { excelHost } from '../../taskpane/host/excel/excelHost.ts';
import type { HostUnderTest, StartSheet } from '../taskpane/host/sheetHostContract.ts';
import { sheetHostContract, START } from '../taskpane/host/sheetHostContract.ts';
import type { ExcelRig } from './excelRig.ts';
import { startExcel, useGlobals } from './excelRig.ts';
import { addTable } from './modelTables.ts';
import type { ModelWorkbook } from './workbookModel.ts';
import { numberFormatAt, sheetNamed } from './workbookModel.ts';

/** Fills a sheet of the model as a user would have left it. */
function open(workbook: ModelWorkbook, start: StartSheet): void {
  const sheet = sheetNamed(workbook, start.name)!;
  const { rows, dateColumns, hiddenRows, isProtected, table } = start;
  rows.forEach((row, r) => {
    const cells = (sheet.cells[r] = []) as (string | number | boolean)[];
    row.forEach((value, c) => value !== null && (cells[c] = value));
  });
  for (const column of dateColumns) {
    const block = { row: 1, column, rows: rows.length - 1, columns: 1 };
    sheet.looks.push({ block, property: 'numberFormat', value: 'yyyy-mm-dd' });
  }
  const block = { row: 0, column: 0, rows: rows.length, columns: rows[0]!.length };
  if (table !== undefined) addTable(workbook, sheet, block).name = table;
  hiddenRows.forEach((row) => sheet.hiddenRows.add(row));
  sheet.isProtected = isProtected;
}

let rig: ExcelRig;

async function make(): Promise<HostUnderTest> {
  rig = await startExcel(START.map(({ name }) => name));
  useGlobals(rig);
  for (const start of START) open(rig.workbook, start);
  return {
    host: excelHost(),
    formulaAt: async ({ sheet, row, column }) =>
      sheetNamed(rig.workbook, sheet)!.formulas.get(`${row},${column}`)?.slice(1),
    numberCodeAt: async ({ sheet, row, column }) =>
      numberFormatAt(sheetNamed(rig.workbook, sheet)!, row, column),
  };
}

// A refusal of the model for want of a member would look like one of Excel's.
afterEach(() => expect(rig.traffic.notModelled).toEqual([]));

sheetHostContract('Excel', make);
