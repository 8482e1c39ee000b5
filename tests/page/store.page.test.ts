import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from '../house/sourceFiles.ts';
import { auditOf, sticksOut } from './audit.ts';
import type { Bench, OpenedPage } from './builtPage.ts';
import { openDemo, openPage, startBench } from './builtPage.ts';
import { savedWorkbook } from './savedRows.ts';

let bench: Bench;
let opened: OpenedPage;
beforeAll(async () => {
  bench = await startBench();
  opened = await openPage(bench);
  await openDemo(opened.page);
  await openStore(opened.page);
});
afterAll(() => bench.stop());

const PARTS = ['Store list', 'Count a shelf', "Compare with last month's file"];

async function openStore(page: Page): Promise<void> {
  for (const title of PARTS) await page.locator('#pane summary').filter({ hasText: title }).last().click();
}

/** The lines of a list of findings under its heading, which is opened for it. */
async function found(page: Page, heading: string): Promise<string[]> {
  const list = page.locator('#pane details', { has: page.locator(`> summary:text("${heading}: ")`) }).last();
  if (!(await list.evaluate((part) => (part as HTMLDetailsElement).open)))
    await list.locator('summary').click();
  return list.locator('li').allTextContents();
}

describe('the storekeeper’s way', () => {
  it('counts a shelf: missing, elsewhere, unknown, twice, unreadable', async () => {
    const { page } = opened;
    await page.getByLabel('Site', { exact: true }).selectOption('Norrfell Main');
    const scans = ['0078950', '0078304', 'K76154', 'ZZ-9', '0079751', '0079751', '@@@'];
    await page.getByLabel('Scans').fill(scans.join('\n'));
    await page.getByRole('button', { name: 'Count', exact: true }).click();
    await page.getByText(/^3 of \d+ that should be here are here\.$/).waitFor();
    const all = Number(/of (\d+)/.exec((await page.getByText(/that should be here/).textContent())!)![1]);
    const missing = await found(page, 'Missing');
    expect(missing).toHaveLength(all - 3);
    expect(missing).not.toContain('0078950');
    expect(await found(page, 'Not in stock by the inventory')).toEqual([
      expect.stringMatching(/^0079751: .*NM-101/),
    ]);
    expect(await found(page, 'Not in the inventory')).toEqual(['ZZ-9']);
    expect(await found(page, 'Scanned more than once')).toEqual(['0079751, 2 times']);
    expect((await found(page, 'Not read'))[0]).toMatch(/^@@@: .{10,}/);
  });

  it('refuses a shelf that the inventory does not know, and says which it knows', async () => {
    const { page } = opened;
    await page.getByLabel('Shelf', { exact: true }).fill('no such shelf');
    await page.getByRole('button', { name: 'Count', exact: true }).click();
    await page.locator('#pane .notice.problem').filter({ hasText: 'no such shelf' }).waitFor();
    await page.getByLabel('Shelf', { exact: true }).fill('');
  });

  it('compares with the file of one station of the month before, whose days count from 1904', async () => {
    const { page } = opened;
    await page.getByLabel('Earlier file').setInputFiles(`${ROOT}docs/demo/norrfell-isvarg-may.xlsx`);
    await page.getByText(/are as they were/).waitFor();
    expect(await page.getByText(/^Only in this inventory, so not compared: /).textContent()).toMatch(
      /Brattmyr.*Vintermark/,
    );
    const fresh = await found(page, 'New');
    expect(fresh.length).toBeGreaterThan(0);
    for (const line of fresh) expect(line).toContain('Isvarg Pass');
    for (const line of await found(page, 'Moved')) expect(line).toMatch(/^\S+: .+; now .+/);
    expect((await found(page, 'Verdict changed')).length).toBeGreaterThan(0);
    const unchanged = Number(/\d+/.exec((await page.getByText(/are as they were/).textContent())!)![0]);
    expect(unchanged).toBeGreaterThan(150);
  });

  it('refuses a file that is none', async () => {
    const { page } = opened;
    const none = { name: 'may.xlsx', mimeType: 'application/octet-stream', buffer: Buffer.from('nothing') };
    await page.getByLabel('Earlier file').setInputFiles(none);
    await page.locator('#pane .notice.problem').filter({ hasText: 'may.xlsx' }).waitFor();
  });

  it('writes the store list as a sheet, by keyboard', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Write store list' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Where shall Crankbook write?' }).waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByText('Written: Store list.').waitFor();
    const saved = await savedWorkbook(page);
    const texts = saved.sheets.find(({ name }) => name === 'Store list')!.rows.map((row) => String(row[0]));
    for (const heading of ['Charge next', 'Issue next', 'Sets to issue'])
      expect(texts.some((text) => text.startsWith(heading))).toBe(true);
    expect([opened.complaints, opened.elsewhere]).toEqual([[], []]);
  });
});

it.each(['light', 'dark'] as const)('the store has no violation in %s, and fits', async (colorScheme) => {
  const { page, close } = await openPage(bench, { colorScheme, viewport: { width: 320, height: 900 } });
  await openDemo(page);
  await openStore(page);
  await page.getByLabel('Scans').fill('0078950\nZZ-9');
  await page.getByRole('button', { name: 'Count', exact: true }).click();
  await page.getByText(/that should be here/).waitFor();
  // The other parts of the view have a test of their own.
  const parts = 'details.foldedPart:nth-last-of-type(-n+3)';
  expect([await auditOf(page, parts), await sticksOut(page, '#pane')]).toEqual([[], []]);
  await close();
});
