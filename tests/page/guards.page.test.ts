import { writeXlsx } from 'hucre/xlsx';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Bench } from './builtPage.ts';
import { openDemo, openPage, startBench } from './builtPage.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Opens a file with one sheet that has one cell, and types over it. */
async function typeOver(page: Page, isProtected: boolean): Promise<void> {
  const protection = isProtected ? { protection: { sheet: true } } : {};
  const bytes = await writeXlsx({ sheets: [{ name: 'Store', rows: [['as counted']], ...protection }] });
  const name = isProtected ? 'locked.xlsx' : 'open.xlsx';
  const chooser = page.locator('#head input[type=file]');
  await chooser.setInputFiles({ name, mimeType: TYPE, buffer: Buffer.from(bytes) });
  await page.getByText(`Opened ${name}.`).waitFor();
  await page.locator('#grid canvas[role=application]').focus();
  await page.keyboard.type('other');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
}

it('keeps a protected sheet as it is, whatever is typed', async () => {
  const { page, complaints, close } = await openPage(bench);
  await typeOver(page, true);
  await page.waitForTimeout(500);
  const line = page.getByRole('region', { name: 'Active cell' });
  await page.locator('#grid canvas[role=application]').focus();
  await page.keyboard.press('Control+Home');
  await expect.poll(() => line.textContent()).toMatch(/^A1.*shows.*as counted/);
  expect(await page.locator('#head').textContent()).not.toContain('changes not saved');
  expect(complaints).toEqual([]);
  await close();
});

it('lets the user type where nothing is protected', async () => {
  const { page, close } = await openPage(bench);
  await typeOver(page, false);
  await page.keyboard.press('Control+Home');
  const line = page.getByRole('region', { name: 'Active cell' });
  await expect.poll(() => line.textContent()).toMatch(/^A1.*shows.*other/);
  await close();
});

/** Notes every chart that the grid draws from now on. */
async function watchCharts(page: Page): Promise<void> {
  await page.evaluate(() => {
    const drawn = new Set<string>();
    Object.assign(window, { drawnCharts: drawn });
    const { prototype } = CanvasRenderingContext2D;
    const draw = prototype.drawImage as (...given: unknown[]) => void;
    prototype.drawImage = function (this: CanvasRenderingContext2D, ...given: unknown[]) {
      if (given[0] instanceof HTMLImageElement && given[0].src.startsWith('data:image/svg'))
        drawn.add(given[0].src);
      draw.apply(this, given);
    } as typeof prototype.drawImage;
  });
}

/** How many charts have been drawn since this was last asked. */
const chartsSince = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const { drawnCharts } = window as unknown as { drawnCharts: Set<string> };
    const { size } = drawnCharts;
    drawnCharts.clear();
    return size;
  });

it('brings the charts of a forecast back when its writing is undone and done again', async () => {
  const { page, complaints, close } = await openPage(bench, { viewport: { width: 1400, height: 3000 } });
  await openDemo(page);
  await page.locator('#pane').getByRole('link', { name: 'Plan' }).click();
  await page.getByRole('heading', { name: 'The plan', exact: true }).waitFor();
  await watchCharts(page);
  await page.getByRole('button', { name: 'Write forecast sheet' }).click();
  await page.getByRole('button', { name: 'Into this workbook' }).click();
  await page.getByText(/^Written: Forecast/).waitFor();
  await expect.poll(() => chartsSince(page)).toBeGreaterThan(0);
  await page.locator('#grid canvas[role=application]').focus();
  await page.keyboard.press('Control+z');
  await expect
    .poll(() =>
      page
        .locator('#grid')
        .getByRole('tab', { name: /Forecast/ })
        .count(),
    )
    .toBe(0);
  await chartsSince(page);
  await page.locator('#grid canvas[role=application]').focus();
  await page.keyboard.press('Control+y');
  await page.locator('#grid').getByRole('tab', { name: 'Forecast', exact: true }).click();
  await expect.poll(() => chartsSince(page), { timeout: 10_000 }).toBeGreaterThan(0);
  expect(complaints).toEqual([]);
  await close();
});
