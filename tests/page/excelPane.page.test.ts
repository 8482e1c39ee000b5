import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from '../house/sourceFiles.ts';
import { startChromium } from './chromium.ts';
import { demoTyper } from './excelDemo.ts';
import type { ExcelWindow } from './excelWindow.ts';
import { BUILT_PANE, openInExcel, servePane } from './excelWindow.ts';

let browser: Browser;
let served: Awaited<ReturnType<typeof servePane>>;
let shown: ExcelWindow;
let page: Page;
const elsewhere = ({ requests }: ExcelWindow): string[] =>
  requests.filter((url) => !url.startsWith(served.address));

beforeAll(async () => {
  [served, browser] = await Promise.all([servePane(), startChromium()]);
  const prepare = await demoTyper();
  shown = await openInExcel(browser, served.address, { prepare });
  ({ page } = shown);
  await page.getByRole('heading', { name: 'Inventory', exact: true }).waitFor();
});
afterAll(async () => {
  await browser?.close();
  served?.stop();
});

const open = async (view: string): Promise<void> => {
  await page.getByRole('navigation', { name: 'Views' }).getByRole('link', { name: view }).click();
  await page.getByRole('heading', { level: 2, name: view, exact: true }).waitFor();
};

/** Sizes as they go over the line, in bytes, of what the page itself has loaded so far. */
async function loadedSizes(): Promise<Readonly<Record<string, number>>> {
  const names = await page.evaluate(() =>
    (performance.getEntriesByType('resource') as PerformanceResourceTiming[])
      .filter(({ initiatorType }) => initiatorType === 'script' || initiatorType === 'link')
      .map(({ name }) => name),
  );
  const ours = names
    .map((name) => name.slice(served.address.length))
    .filter((name) => !name.startsWith('office/'));
  return Object.fromEntries(
    ours.map((name) => [name, gzipSync(readFileSync(`${BUILT_PANE}/${name}`)).length]),
  );
}

describe('the pane in Excel', () => {
  it('draws its first view from less than 250 kB, the cell functions included', async () => {
    const sizes = await loadedSizes();
    expect(Object.keys(sizes)).toContain('functions.js');
    const sum = Object.values(sizes).reduce((all, size) => all + size, 0);
    expect(sum, JSON.stringify(sizes)).toBeLessThan(250_000);
    expect(sizes['functions.js']).toBeLessThan(120_000);
  });

  it('reads the sheet that is open', async () => {
    await page.getByText(/sheet Fleet, \d+ batteries/).waitFor();
  });

  it('opens all four views', async () => {
    for (const view of ['Bench', 'Life', 'Plan', 'Inventory']) await open(view);
    expect(shown.complaints).toEqual([]);
  });

  it('fills columns with formulas beside the rows', async () => {
    await page.getByText('Fill columns', { exact: true }).click();
    await page.getByLabel('State of charge').check();
    await page.getByLabel('beside the block, at its right').check();
    await page.getByRole('button', { name: 'Fill', exact: true }).click();
    await page.getByRole('button', { name: 'Into this workbook' }).click();
    await page.getByText(/^Filled: State of charge/).waitFor();
    const formulas = [...shown.program.workbook.sheets[0]!.formulas.values()];
    expect(formulas.join()).toContain('CRANK.STATEOFCHARGE(');
  });

  it('writes the forecast sheet once it knows since when removals are on record', async () => {
    await open('Plan');
    await page.getByLabel('Since a day').check();
    await page.getByLabel('The day').fill('2021-04-01');
    await page.getByRole('button', { name: 'Take this answer' }).click();
    await page.getByRole('button', { name: 'Write forecast sheet' }).click();
    await page.getByText(/^Written: .*/).waitFor();
    const names = shown.program.workbook.sheets.map(({ name }) => name);
    expect(names).toContain('Forecast');
    const forecast = shown.program.workbook.sheets.find(({ name }) => name === 'Forecast')!;
    expect(forecast.cells.flat().filter((cell) => typeof cell === 'number').length).toBeGreaterThan(20);
  });

  it('offers a file of the settings, and says what to do where Excel lets it save none', async () => {
    await open('Inventory');
    await page.getByText('Before anything is added', { exact: true }).click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save settings as a file' }).click();
    expect((await download).suggestedFilename()).toBe('Fleet settings.json');
    await page.getByText(/^Fleet settings\.json was offered as a download\..*“Crankbook settings”/).waitFor();
  });

  it('asked nothing of anyone else, complained about nothing, and used no member unknown to the model', () => {
    expect(elsewhere(shown)).toEqual([]);
    expect(shown.complaints).toEqual([]);
    expect(shown.program.traffic.notModelled).toEqual([]);
  });
});

describe('what is served', () => {
  const textOf = (name: string): string => readFileSync(`${BUILT_PANE}/${name}`, 'utf8');
  const isWorkbookEngine = (script: string): boolean =>
    /@univerjs|openxmlformats-officedocument\.spreadsheetml/i.test(script);

  it('loads nothing of a workbook engine with the first view; files are read by a script that comes when asked', async () => {
    const first = Object.keys(await loadedSizes()).filter((name) => name.endsWith('.js'));
    const all = readdirSync(`${BUILT_PANE}/taskpane`).map((name) => `taskpane/${name}`);
    const engines = all.filter((name) => name.endsWith('.js') && isWorkbookEngine(textOf(name)));
    expect(engines).not.toEqual([]);
    expect(first.filter((name) => engines.includes(name))).toEqual([]);
  });

  it('has Microsoft’s files to the byte, in a folder of their own with their licence', () => {
    const folder = `${BUILT_PANE}/office`;
    const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((each) =>
      each.isFile(),
    );
    const names = files.map(({ parentPath, name }) => `${parentPath}/${name}`.slice(folder.length + 1));
    expect(names).toEqual(expect.arrayContaining(['office.js', 'excel-win32-16.01.js', 'LICENSE.md']));
    for (const name of names) {
      const original = `${ROOT}node_modules/@microsoft/office-js/${name === 'LICENSE.md' ? '' : 'dist/'}${name}`;
      expect(readFileSync(`${folder}/${name}`).equals(readFileSync(original)), name).toBe(true);
    }
    for (const name of ['functions.js', 'taskpane.js', 'taskpane/pane.js'])
      expect(textOf(name).includes('OSFAppTelemetry') || textOf(name).includes('OSF.'), name).toBe(false);
  });

  it('has the icons of the manifests and the pages to read', () => {
    for (const name of ['icon16', 'icon32', 'icon64', 'icon80', 'icon128', 'icon192', 'outline32'])
      expect(existsSync(`${BUILT_PANE}/icons/${name}.png`), name).toBe(true);
    expect(textOf('docs/functions.html')).toContain('id="crankstateofcharge"');
  });

  it('names the licence of everything in it, and none is of the GPL family', () => {
    const packages = [...textOf('pane.licences.txt').matchAll(/^(\S+) \d[\w.]*: (.+)$/gm)];
    expect(packages.map(([, name]) => name)).toEqual(expect.arrayContaining(['preact', 'luxon', 'zod']));
    expect(textOf('pane.licences.txt')).toMatch(/^zxing-cpp .*: Apache-2\.0\n+.*Apache License/ms);
    const allowed = /^(MIT|ISC|0BSD|BSD-[23]-Clause|Apache-2\.0( AND BSL-1\.0)?)$/;
    expect(packages.filter(([, , licence]) => !allowed.test(licence!)).map(([line]) => line)).toEqual([]);
  });

  it('would be heard where it broke the policy or asked elsewhere', async () => {
    const other = await openInExcel(browser, served.address);
    await other.page.evaluate(() => {
      document.head.append(
        Object.assign(document.createElement('style'), { textContent: 'p { color: red }' }),
      );
      return fetch('http://127.0.0.1:9/').catch(() => undefined);
    });
    expect(other.complaints.join()).toMatch(/style-src 'self'.*connect-src 'self'/s);
    await other.close();
  });
});

describe('the page without its pane', () => {
  it('answers cell functions with the functions’ script alone, and draws the pane once it is opened', async () => {
    const hidden = await openInExcel(browser, served.address, { isPaneOpen: false });
    await expect
      .poll(() => hidden.page.evaluate(() => Object.keys(globalThis).includes('CustomFunctions')))
      .toBe(true);
    hidden.program.invoke([[1, 'STATEOFCHARGE', [[[12.85]], null, null, null]]]);
    await expect.poll(() => hidden.program.results.get(1), { timeout: 20_000 }).toEqual([true, [[1]]]);
    const loaded = hidden.requests.filter((url) => url.startsWith(`${served.address}taskpane/`));
    expect(loaded).toEqual([]);
    hidden.program.userOpensPane();
    await hidden.page.getByRole('heading', { name: 'Inventory', exact: true }).waitFor();
    expect(hidden.complaints).toEqual([]);
    await hidden.close();
  });
});
