import type { Page } from 'playwright-core';

/** Long work on a loaded machine. */
const PATIENCE = 90_000;

/** Does something that begins with `act` and has ended when `done` is there. @returns the seconds between */
async function timed(act: () => Promise<unknown>, done: () => Promise<unknown>): Promise<number> {
  const ended = done();
  const begun = performance.now();
  await act();
  await ended;
  return (performance.now() - begun) / 1000;
}

/** Opens a file. @returns seconds until it stands in the grid, and until the pane has read it */
export async function openAndRead(page: Page, name: string, bytes: Uint8Array): Promise<[number, number]> {
  const chooser = page.locator('#head input[type=file]');
  const file = { name, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) };
  const read = page.getByText('Fill columns').first();
  const begun = performance.now();
  await chooser.setInputFiles(file);
  await page.getByText(`Opened ${name}.`).waitFor({ timeout: PATIENCE });
  const opened = performance.now();
  await read.waitFor({ timeout: PATIENCE });
  return [(opened - begun) / 1000, (performance.now() - opened) / 1000];
}

/** The four columns that are filled. */
const COLUMNS = ['Date made', 'Months in service', 'State of charge', 'Verdict'];

/** Fills four columns beside the inventory. @returns the seconds that it took */
export async function fillFour(page: Page, as: 'live formulas' | 'values'): Promise<number> {
  await page.getByText('Fill columns').first().click();
  for (const column of COLUMNS) await page.getByRole('checkbox', { name: column }).check();
  await page.getByRole('radio', { name: /at its right/ }).check();
  await page.getByRole('radio', { name: new RegExp(`^${as}`) }).check();
  await page.getByRole('radio', { name: 'show the error itself' }).check();
  const filled = page.getByText(`Filled: ${COLUMNS[0]!}`);
  const seconds = timed(
    () => page.getByRole('button', { name: 'Fill', exact: true }).click(),
    () => filled.waitFor({ timeout: PATIENCE }),
  );
  await chooseHere(page);
  return seconds;
}

/** The first writing asks where its sheets go. */
async function chooseHere(page: Page): Promise<void> {
  const here = page.getByRole('button', { name: 'Into this workbook' });
  await here.click({ timeout: 3000 }).catch(() => undefined);
}

/** Plans. @returns seconds until the plan is shown, and until the forecast sheets are written */
export async function planAndWrite(page: Page): Promise<[number, number]> {
  await page.locator('#pane').getByRole('link', { name: 'Plan' }).click();
  await page.getByRole('radio', { name: /^I don't know/ }).check({ timeout: PATIENCE });
  const planned = await timed(
    () => page.getByRole('button', { name: 'Take this answer' }).click(),
    () => page.getByRole('button', { name: 'Write forecast sheet' }).waitFor({ timeout: PATIENCE }),
  );
  const written = timed(
    () => page.getByRole('button', { name: 'Write forecast sheet' }).click(),
    () => page.getByText(/^Written: Forecast/).waitFor({ timeout: PATIENCE }),
  );
  await chooseHere(page);
  return [planned, await written];
}

/** Saves with formulas. @returns the seconds until the file is with the user */
export async function save(page: Page): Promise<number> {
  await page.getByRole('button', { name: 'Save as .xlsx' }).click();
  const download = page.waitForEvent('download', { timeout: PATIENCE });
  return timed(
    () => page.getByRole('button', { name: 'Save', exact: true }).click(),
    () => download,
  );
}

/** Megabytes on the page's own heap, what nobody uses thrown away. */
export async function heapOf(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return usedSize / 2 ** 20;
}
