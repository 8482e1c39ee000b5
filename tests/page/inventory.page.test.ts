import { readFileSync } from 'node:fs';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isoDay } from '../../src/basics/calendar.ts';
import type { Bench } from './builtPage.ts';
import { openDemo, openPage, startBench } from './builtPage.ts';
import { fileAt, savedFile } from './savedRows.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

const COLUMNS = ['Date made', 'Months in service', 'State of charge', 'Verdict'];

/** Opens a part of the Inventory view that is folded. */
const unfold = (page: Page, title: string) =>
  page.locator('#pane details', { hasText: title }).last().locator('summary').first().click();

/** Chooses four columns beside the inventory and fills them into this workbook. */
async function fillFour(page: Page, as: 'live' | 'values'): Promise<void> {
  await unfold(page, 'Fill columns');
  for (const column of COLUMNS) await page.getByLabel(column, { exact: true }).check();
  await page.getByLabel('beside the block, at its right').check();
  await page.getByLabel(as === 'live' ? /^live/ : /^as values/).check();
  await page.getByRole('button', { name: 'Fill', exact: true }).click();
  await page.getByRole('button', { name: 'Into this workbook' }).click();
  await page.locator('#pane [role=status]', { hasText: 'Filled' }).waitFor();
}

/** A row of the demonstration with nothing wrong: code 0625-287, fitted on 2025-10-29, 12.81 V at 13 C, 1169 A of 935. */
const KNOWN = { serial: '0079858', made: '2025-06-01', months: 8 };

/** The filled cells of the known battery in a saved workbook. */
function knownRow(rows: readonly (readonly unknown[])[]): Record<string, unknown> {
  const heads = rows.find((row) => row.includes('Batt S/N'))!;
  const row = rows.find((cells) => cells[heads.indexOf('Batt S/N')] === KNOWN.serial)!;
  return Object.fromEntries(COLUMNS.map((column) => [column, row[heads.indexOf(column)]]));
}

describe('the analyst’s way', () => {
  it('from the demonstration to four filled columns, saved and opened again', async () => {
    const { page, complaints, elsewhere, close } = await openPage(bench);
    await openDemo(page);
    await page.getByText(/\d+ causes, \d+ of them move the answer/).waitFor();
    await page.getByText('codes of maker 7ZZ91').first().click();
    await fillFour(page, 'live');
    const { path, name: fileName } = await savedFile(page);
    const saved = await fileAt(path, fileName);
    const filled = knownRow(saved.sheets.find(({ name }) => name === 'Inventory')!.rows);
    expect(isoDay(filled['Date made'] as number)).toBe(KNOWN.made);
    expect(Math.floor(filled['Months in service'] as number)).toBe(KNOWN.months);
    expect(filled['State of charge']).toBeGreaterThan(0.9);
    expect(filled['Verdict']).toBe('Serviceable');
    const again = { name: fileName, mimeType: '', buffer: readFileSync(path) };
    await page.locator('#head input[type=file]').setInputFiles(again);
    await page.getByText(`Opened ${fileName}.`).waitFor();
    await page.getByText('sheet Inventory, 1,374 batteries').waitFor();
    expect([complaints, elsewhere]).toEqual([[], []]);
    await close();
  });

  it('a double click on Fill asks where to write, and waits for the answer', async () => {
    const { page, complaints, close } = await openPage(bench);
    await openDemo(page);
    await page.getByText(/\d+ causes, \d+ of them move the answer/).waitFor();
    await unfold(page, 'Fill columns');
    await page.getByLabel('Date made', { exact: true }).check();
    await page.getByLabel('beside the block, at its right').check();
    await page.getByRole('button', { name: 'Fill', exact: true }).dblclick();
    await page.getByRole('button', { name: 'Into this workbook' }).click();
    await page.locator('#pane [role=status]', { hasText: 'Filled: Date made' }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  it('rows to check stand on a sheet of their own, and none is written over', async () => {
    const { page, complaints, close } = await openPage(bench);
    await openDemo(page);
    await page.getByRole('button', { name: 'Write rows to check' }).click();
    await page.getByRole('button', { name: 'Into this workbook' }).click();
    await page.getByText('Written: Rows to check.').waitFor();
    await page.getByRole('button', { name: 'Write rows to check' }).click();
    await page.getByText(/Written: Rows to check.*2/).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  it('a file that is no workbook is refused with a sentence, and what was open stays', async () => {
    const { page, close } = await openPage(bench);
    await openDemo(page);
    const file = { name: 'picture.xlsx', mimeType: 'image/png', buffer: Buffer.from('no workbook') };
    await page.locator('#head input[type=file]').setInputFiles(file);
    await page.locator('#message', { hasText: 'picture.xlsx' }).waitFor();
    await page.getByText('sheet Inventory, 1,374 batteries').waitFor();
    await close();
  });
});

describe.each(['light', 'dark'] as const)('the Inventory view in %s', (colorScheme) => {
  it('has no violation with every part open', async () => {
    const { page, close } = await openPage(bench, { colorScheme, viewport: { width: 320, height: 800 } });
    await openDemo(page);
    await page.locator('#pane').evaluate((pane) => {
      for (const each of pane.querySelectorAll('details')) each.open = true;
    });
    await page.evaluate(axe.source);
    const found = await page.evaluate(async () => {
      const { violations } = await (window as unknown as { axe: typeof axe }).axe.run('#pane');
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`);
    });
    expect(found).toEqual([]);
    await close();
  });
});
