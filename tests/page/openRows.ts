import type { Page } from 'playwright-core';
import { isoDay } from '../../src/basics/calendar.ts';
import type { Row } from '../inventory/sheets.ts';
import { sheetOf } from '../inventory/sheets.ts';

/** Columns whose numbers are days. */
const DAYS = ['Installed', 'Removed'];

/** Opens rows as a text file, days year first. */
export async function openRows(page: Page, name: string, rows: readonly Row[]): Promise<void> {
  const [heads, ...cells] = sheetOf(rows).rows;
  const line = (row: readonly unknown[]): string =>
    row
      .map((value, column) =>
        typeof value === 'number' && DAYS.includes(String(heads![column])) ? isoDay(value) : (value ?? ''),
      )
      .join(',');
  const text = [heads!.join(','), ...cells.map(line)].join('\n');
  const file = { name, mimeType: 'text/csv', buffer: Buffer.from(text) };
  await page.locator('#head input[type=file]').setInputFiles(file);
  await page.getByText(`Opened ${name}.`).waitFor();
}
