import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import type { WorkbookFile } from '../../taskpane/host/xlsx/workbookFile.ts';
import { readWorkbookFile } from '../../taskpane/host/xlsx/workbookFile.ts';

/** Saves the workbook of the page with its formulas: where the file is, and its name. */
export async function savedFile(page: Page): Promise<{ path: string; name: string }> {
  await page.getByRole('button', { name: 'Save as .xlsx' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  const saved = await download;
  return { path: await saved.path(), name: saved.suggestedFilename() };
}

/** The workbook of the page as it is saved, with its formulas. */
export async function savedWorkbook(page: Page): Promise<WorkbookFile> {
  const { path, name } = await savedFile(page);
  return fileAt(path, name);
}

/** A workbook file that the page gave to the user. */
export async function fileAt(path: string, name: string): Promise<WorkbookFile> {
  const read = await readWorkbookFile(new Uint8Array(readFileSync(path)), name);
  if (!read.ok) throw new Error(`${name} can not be read: ${JSON.stringify(read.problem)}`);
  return read.value;
}

/** The last rows of a sheet, each with the heads of its columns. */
export function lastRecords(file: WorkbookFile, name: string, count: number): Record<string, unknown>[] {
  const { rows } = file.sheets.find((sheet) => sheet.name === name)!;
  const heads = rows[0]!.map(String);
  const filled = rows.slice(1).filter((row) => row.some((value) => value !== null && value !== ''));
  return filled
    .slice(filled.length - count)
    .map((row) => Object.fromEntries(heads.map((head, column) => [head, row[column] ?? null])));
}
