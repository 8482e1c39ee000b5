import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import type { Served } from '../../taskpane/commandLine/serve.ts';
import { serve } from '../../taskpane/commandLine/serve.ts';
import { ROOT } from '../house/sourceFiles.ts';
import { startChromium } from './chromium.ts';

/** Where the page is built for the tests. */
export const BUILT = `${ROOT}node_modules/.cache/page`;

/** A browser and the served page for one file of tests. */
export type Bench = {
  readonly browser: Browser;
  readonly served: Served;
  readonly stop: () => Promise<void>;
};

/** Starts the browser and serves the page. */
export async function startBench(folder = BUILT): Promise<Bench> {
  const served = await serve(folder, 0);
  const browser = await startChromium();
  const stop = async (): Promise<void> => {
    await browser.close();
    await served.stop();
  };
  return { browser, served, stop };
}

/** The page as a user opens it, with everything that it complains about or asks of others. */
export type OpenedPage = {
  readonly page: Page;
  /** Errors and warnings on the console, faults, and requests that failed. */
  readonly complaints: string[];
  /** Requests to anywhere but the page's own address. */
  readonly elsewhere: string[];
  readonly close: () => Promise<void>;
};

/** Opens the page and waits until workbook and pane stand. */
export async function openPage(bench: Bench, options: BrowserContextOptions = {}): Promise<OpenedPage> {
  const context = await bench.browser.newContext({ viewport: { width: 1400, height: 900 }, ...options });
  context.setDefaultTimeout(20_000);
  const page = await context.newPage();
  const complaints: string[] = [];
  const elsewhere: string[] = [];
  page.on('console', (said) => {
    if (['error', 'warning'].includes(said.type())) complaints.push(`${said.type()}: ${said.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`fault: ${error.message}`));
  page.on('requestfailed', (request) => {
    // What a worker was loading when it was given up is not missed.
    const why = request.failure()?.errorText ?? '';
    if (why !== 'net::ERR_ABORTED') complaints.push(`not answered: ${request.url()} ${why}`);
  });
  page.on('request', (request) => {
    const url = request.url();
    if (!/^(data|blob):/.test(url) && !url.startsWith(bench.served.address)) elsewhere.push(url);
  });
  await page.goto(bench.served.address);
  await page.locator('#pane nav').waitFor();
  return { page, complaints, elsewhere, close: () => context.close() };
}

/** Opens the demonstration inventory with a click, and waits until it has been read. */
export async function openDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demonstration inventory' }).click();
  await page.getByText('Opened norrfell-inventory.xlsx.').waitFor();
}
