import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { VIEWS } from '../../taskpane/session.ts';
import { VIEW_NAMES } from '../../taskpane/text/paneText.ts';
import { auditOf, sticksOut } from './audit.ts';
import { startChromium } from './chromium.ts';
import { demoTyper } from './excelDemo.ts';
import type { ExcelWindow } from './excelWindow.ts';
import { openInExcel, servePane } from './excelWindow.ts';

let browser: Browser;
let served: Awaited<ReturnType<typeof servePane>>;
beforeAll(async () => {
  [served, browser] = await Promise.all([servePane(), startChromium()]);
});
afterAll(async () => {
  await browser?.close();
  served?.stop();
});

const SCHEMES = ['light', 'dark'] as const;
const THEMES = { light: { bodyBackgroundColor: 0xffffff }, dark: { bodyBackgroundColor: 0x262626 } };

async function opened(given: Parameters<typeof openInExcel>[2]): Promise<ExcelWindow> {
  const shown = await openInExcel(browser, served.address, given);
  await shown.page.getByRole('heading', { name: 'Inventory', exact: true }).waitFor();
  return shown;
}

async function groundOf(page: Page): Promise<'light' | 'dark'> {
  const ground = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  return Number(/\d+/.exec(ground)![0]) > 128 ? 'light' : 'dark';
}

describe('the colours of the pane', () => {
  it.each(SCHEMES)('are %s where the system is and Excel says nothing', async (colorScheme) => {
    const { page, close } = await opened({ colorScheme });
    expect(await groundOf(page)).toBe(colorScheme);
    await close();
  });

  it.each(SCHEMES)('are %s where Excel is, whatever the system', async (excel) => {
    const colorScheme = excel === 'dark' ? 'light' : 'dark';
    const { page, close } = await opened({ colorScheme, theme: THEMES[excel] });
    expect(await groundOf(page)).toBe(excel);
    await close();
  });
});

describe.each([
  ['light', 320],
  ['dark', 350],
] as const)('the views in %s at %i pixels', (colorScheme, width) => {
  let shown: ExcelWindow;
  beforeAll(async () => {
    shown = await opened({ colorScheme, width, prepare: await demoTyper() });
    await shown.page.getByText(/sheet Fleet, \d+ batteries/).waitFor();
  });
  afterAll(() => shown.close());

  it.each(VIEWS)('have nothing that the audit finds and nothing that sticks out: %s', async (view) => {
    const { page } = shown;
    const name = VIEW_NAMES[view];
    await page.getByRole('navigation', { name: 'Views' }).getByRole('link', { name }).click();
    await page.getByRole('heading', { level: 2, name, exact: true }).waitFor();
    await page.locator('.progressLine').waitFor({ state: 'detached' });
    expect(await auditOf(page, '#pane')).toEqual([]);
    expect(await sticksOut(page, '#pane')).toEqual([]);
  });
});
