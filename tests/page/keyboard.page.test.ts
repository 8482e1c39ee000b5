import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from './builtPage.ts';
import { openDemo, openPage, startBench } from './builtPage.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await startBench();
  ({ page } = await openPage(bench));
  await openDemo(page);
});
afterAll(() => bench.stop());

/** What a screen reader is told about the active cell, once it starts with this address. */
const spoken = async (address: string): Promise<string> => {
  const region = page.locator('.spokenCell', { hasText: new RegExp(`^${address}: `) });
  await region.waitFor({ state: 'attached', timeout: 10_000 });
  return (await region.textContent())!;
};

const regionOf = (): Promise<string> =>
  page.evaluate(() => document.activeElement?.closest('#head, #workbook, #pane, #split')?.id ?? '');

async function enterGrid(): Promise<void> {
  await page.locator('#grid canvas[role=application]').focus();
  await page.keyboard.press('Control+Home');
  await spoken('A1');
}

describe('the keyboard in the grid', () => {
  it('is reached by Tab in the order of the page, under a name that says how to leave', async () => {
    const canvas = page.locator('#grid canvas[role=application]');
    expect(await canvas.getAttribute('tabindex')).toBe('0');
    expect(await canvas.getAttribute('aria-label')).toMatch(/^Workbook\. F6 moves on/);
    expect(await page.locator('#grid canvas[tabindex="1"]').count()).toBe(0);
    await canvas.focus();
    const holder = page.locator('*:focus');
    expect(await holder.getAttribute('role')).toBe('application');
    expect(await holder.getAttribute('aria-label')).toMatch(/^Workbook/);
  });

  it('moves with the arrow keys, Tab and Shift+Tab, and each cell is spoken', async () => {
    await enterGrid();
    await page.keyboard.press('ArrowDown');
    await spoken('A2');
    await page.keyboard.press('Tab');
    await spoken('B2');
    await page.keyboard.press('Shift+Tab');
    await spoken('A2');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('ArrowDown');
    await spoken('A3');
  });

  it('knows Home, End, Page Up, Page Down, Ctrl+Home and Ctrl+End', async () => {
    await enterGrid();
    await page.keyboard.press('Control+End');
    const region = page.locator('.spokenCell');
    await page.waitForFunction(() =>
      /^(?!A1:)[A-Z]+\d+: /.test(document.querySelector('.spokenCell')!.textContent!),
    );
    const last = /^[A-Z]+(\d+)/.exec((await region.textContent())!)![1]!;
    await page.keyboard.press('Home');
    await spoken(`A${last}`);
    await page.keyboard.press('Control+Home');
    await spoken('A1');
    await page.keyboard.press('PageDown');
    await page.waitForFunction(() => /^A[1-9]\d: /.test(document.querySelector('.spokenCell')!.textContent!));
    await page.keyboard.press('PageUp');
    await spoken('A1');
  });

  it('speaks the formula and why it shows an error; the line under the grid shows both', async () => {
    await enterGrid();
    await page.keyboard.press('Control+End');
    await page.waitForFunction(() => !document.querySelector('.spokenCell')!.textContent!.startsWith('A1:'));
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Home');
    await page.keyboard.type('=CRANK.MANUFACTUREDATE("nonsense","2026-06-30")');
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowUp');
    const line = page.locator('.cellLine', { hasText: 'CRANK.MANUFACTUREDATE' });
    await expect.poll(() => line.textContent()).toMatch(/#VALUE!.*because: .{10,}/);
    await expect
      .poll(() => page.locator('.spokenCell').textContent())
      .toMatch(/#VALUE!; .{10,}; formula =CRANK\.MANUFACTUREDATE\(/);
  });

  it('leaves keys alone while a cell is edited', async () => {
    await enterGrid();
    await page.keyboard.press('ArrowDown');
    await spoken('A2');
    await page.keyboard.press('F2');
    await page.keyboard.press('Home');
    await page.keyboard.press('Escape');
    await page.keyboard.press('ArrowDown');
    await spoken('A3');
  });
});

describe('the keyboard on the page', () => {
  it('goes with F6 from part to part, and back with Shift+F6', async () => {
    await enterGrid();
    for (const [key, part] of [
      ['F6', 'pane'],
      ['F6', 'head'],
      ['F6', 'workbook'],
      ['Shift+F6', 'head'],
    ] as const) {
      await page.keyboard.press(key);
      await expect.poll(regionOf).toBe(part);
    }
  });

  it('moves the line between workbook and pane', async () => {
    const splitter = page.getByRole('separator', { name: 'Width of the pane' });
    const paneWidth = () => page.locator('#pane').evaluate((pane) => pane.getBoundingClientRect().width);
    await splitter.focus();
    const before = await paneWidth();
    await page.keyboard.press('ArrowLeft');
    await expect.poll(paneWidth).toBe(before + 20);
    await expect.poll(() => splitter.getAttribute('aria-valuenow')).toBe(String(before + 20));
    await page.keyboard.press('Home');
    await expect.poll(paneWidth).toBe(320);
  });

  it('comes back to its button when a dialog is closed', async () => {
    const button = page.getByRole('button', { name: 'Save as .xlsx' });
    await button.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('F6');
    expect(await page.locator('dialog *:focus').count()).toBe(1);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => button.evaluate((each) => each === document.activeElement)).toBe(true);
  });
});
