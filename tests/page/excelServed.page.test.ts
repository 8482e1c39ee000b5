import bwip from 'bwip-js/node';
import { readdirSync, readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { REPAIR } from '../../taskpane/text/inventoryText.ts';
import { calculate } from '../excel/cellEntry.ts';
import { ROOT } from '../house/sourceFiles.ts';
import { BUILT } from './builtPage.ts';
import { startChromium } from './chromium.ts';
import { demoTyper } from './excelDemo.ts';
import type { ExcelWindow } from './excelWindow.ts';
import { BUILT_PANE, openInExcel, POLICY, servePane } from './excelWindow.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await startChromium();
});
afterAll(() => browser?.close());

const LABEL = '[)>^03006^02917V9ZZ98^0291PBX6T-100^029S0079751^030^004';

/** The pane under a policy, with the demonstration inventory read; `use` looks at it. */
async function withPane(
  policy: string,
  use: (shown: ExcelWindow, address: string) => Promise<void>,
): Promise<void> {
  const served = await servePane(policy);
  const prepare = await demoTyper();
  const shown = await openInExcel(browser, served.address, { prepare });
  await shown.page.getByText(/sheet Fleet, \d+ batteries/).waitFor();
  await use(shown, served.address);
  await shown.close();
  served.stop();
}

async function givePicture({ page }: ExcelWindow): Promise<void> {
  await page.getByRole('navigation', { name: 'Views' }).getByRole('link', { name: 'Bench' }).click();
  const drawn = { bcid: 'qrcode', text: LABEL, parse: true, scale: 4, padding: 10 };
  const buffer = await bwip.toBuffer({ ...drawn, backgroundcolor: 'FFFFFF' });
  const picture = page.getByLabel('Picture of the symbol');
  await picture.setInputFiles({ name: 'label.png', mimeType: 'image/png', buffer });
}

describe('pictures of labels in Excel', () => {
  it('are read where the policy of the server admits compiled code', async () => {
    await withPane(POLICY.replace("'self'", "'self' 'wasm-unsafe-eval'"), async (shown, address) => {
      await givePicture(shown);
      const serial = shown.page.getByLabel('Serial, or the text of its symbol');
      await expect.poll(() => serial.inputValue(), { timeout: 20_000 }).toContain('0079751');
      expect(shown.complaints).toEqual([]);
      expect(shown.requests.filter((url) => !url.startsWith(address))).toEqual([]);
      expect(shown.requests.filter((url) => url.endsWith('.wasm'))).toEqual([`${address}zxing_reader.wasm`]);
    });
  });

  it('are refused with what to do instead where it does not', async () => {
    await withPane(POLICY, async (shown) => {
      await givePicture(shown);
      await shown.page.getByText(/could not be started here.*type the serial/).waitFor();
    });
  });
});

describe('the pages to read beside the pane', () => {
  it('show under the policy, with their pictures, and every link among them leads somewhere', async () => {
    const { address, stop } = await servePane();
    const page = await browser.newPage();
    const said: string[] = [];
    page.on('console', (each) => said.push(each.text()));
    page.on('requestfailed', (request) => said.push(request.url()));
    for (const name of readdirSync(`${BUILT_PANE}/docs`).filter((each) => each.endsWith('.html'))) {
      await page.goto(`${address}docs/${name}`);
      const found = await page.evaluate(() => ({
        empty: [...document.images].filter((each) => each.naturalWidth === 0).map((each) => each.src),
        links: [...document.links].map((each) => each.href.split('#')[0]!),
      }));
      expect([name, found.empty]).toEqual([name, []]);
      for (const link of new Set(found.links.filter((each) => each.startsWith(address))))
        expect([name, link, (await page.request.get(link)).ok()]).toEqual([name, link, true]);
    }
    expect(said).toEqual([]);
    await page.close();
    stop();
  });
});

describe('docs/install.md', () => {
  const install = readFileSync(`${ROOT}docs/install.md`, 'utf8');

  it('gives the policy under which the pane is tried here', () => {
    expect(install).toContain(`Content-Security-Policy: ${POLICY}\n`);
    expect(install).toContain("`'wasm-unsafe-eval'` to `script-src`");
  });

  it('names what the pane calls by the same words', () => {
    expect(install).toContain(`_${REPAIR.button}_ at the end of Inventory`);
  });
});

describe('what only Excel needs', () => {
  it('is a button that writes formulas anew which Excel does not know', async () => {
    await withPane(POLICY, async ({ page, program, complaints }) => {
      const [sheet] = program.workbook.sheets;
      program.workbook.knowsOurFunctions = false;
      sheet!.formulas.set('400,0', '=_xldudf_CRANK_STATEOFCHARGE(12.6)');
      sheet!.cells[400] = [0];
      calculate(program.workbook);
      program.workbook.knowsOurFunctions = true;
      await page.getByText('Formulas that show #NAME?', { exact: true }).click();
      await page.getByRole('button', { name: 'Repair formulas' }).click();
      await page.getByText(/^1 formula written anew/).waitFor();
      expect(sheet!.formulas.get('400,0')).toBe('=CRANK.STATEOFCHARGE(12.6)');
      await page.getByRole('button', { name: 'Repair formulas' }).click();
      await page.getByText('No formula of ours shows #NAME? in this workbook.').waitFor();
      expect(complaints).toEqual([]);
    });
  });

  it('is no copy, which it can’t make: the pane says how to make one by hand', async () => {
    await withPane(POLICY, async ({ page }) => {
      await page.getByText('Before anything is added', { exact: true }).click();
      await page.getByText(/choose File, Save a Copy in Excel first/).waitFor();
      expect(await page.getByText('In a copy of this workbook').count()).toBe(0);
    });
  });
});

describe('what is in the build', () => {
  const textOf = (path: string): string => readFileSync(path, 'utf8');
  const packagesIn = (path: string): string[][] =>
    [...textOf(path).matchAll(/^(\S+) \d[\w.]*: (.+)$/gm)].map(([, name, licence]) => [name!, licence!]);

  it('is nothing of a view in the script of the cell functions', () => {
    const names = packagesIn(`${BUILT_PANE}/functions.licences.txt`).map(([name]) => name!);
    expect(names.length).toBeGreaterThan(50);
    expect(names.filter((name) => !/^(@stdlib\/.*|luxon|debug|ms)$/.test(name))).toEqual([]);
    expect(textOf(`${BUILT_PANE}/functions.js`)).not.toMatch(/createElement|querySelector|innerHTML/);
  });

  it.each([
    ['the pane', `${BUILT_PANE}/pane.licences.txt`],
    ['the cell functions', `${BUILT_PANE}/functions.licences.txt`],
    ['the page', `${BUILT}/page.licences.txt`],
  ])('is nothing of the GPL family in %s', (_, path) => {
    const allowed = /^(MIT|ISC|0BSD|BSD-[23]-Clause|Apache-2\.0( AND BSL-1\.0)?|by the text below)$/;
    expect(packagesIn(path).filter(([, licence]) => !allowed.test(licence!))).toEqual([]);
    expect(textOf(path)).not.toMatch(/GNU (Lesser |Affero )?General Public/i);
  });
});
