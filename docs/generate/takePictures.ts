import type { Page } from 'playwright-core';
import { buildPage } from '../../taskpane/commandLine/buildPage.ts';
import { BUILT, openDemo, openPage, startBench } from '../../tests/page/builtPage.ts';
import { ROOT } from '../../tests/house/sourceFiles.ts';

/** What is seen on a picture: the whole page, or one view of the pane alone. */
type Shot = { readonly width: number; readonly height: number; readonly view?: string };

const SHOTS: readonly Shot[] = [
  { width: 1400, height: 900 },
  { width: 1400, height: 900, view: 'Plan' },
  { width: 400, height: 900, view: 'Inventory' },
  { width: 400, height: 900, view: 'Bench' },
  { width: 400, height: 900, view: 'Life' },
  { width: 400, height: 900, view: 'Plan' },
  { width: 320, height: 700 },
  { width: 320, height: 700, view: 'Plan' },
];
const THEMES = ['light', 'dark'] as const;

/** Takes the pictures of the page with the demonstration inventory, as they stand in docs/pictures. */
async function takePictures(): Promise<void> {
  const failure = await buildPage(BUILT);
  if (failure !== undefined) throw new Error(failure);
  const bench = await startBench();
  for (const colorScheme of THEMES) {
    for (const shot of SHOTS) {
      const { width, height } = shot;
      const { page, close } = await openPage(bench, { colorScheme, viewport: { width, height } });
      await openDemo(page);
      await arrange(page, shot);
      await page.screenshot({ path: `${ROOT}docs/pictures/${nameOf(shot)}-${colorScheme}.png` });
      await close();
    }
  }
  await bench.stop();
}

const nameOf = ({ width, view }: Shot): string =>
  ['page', view?.toLowerCase(), width].filter(Boolean).join('-');

async function arrange(page: Page, { width, view }: Shot): Promise<void> {
  await page.locator('.pageMessage').getByRole('button', { name: 'Close' }).click();
  if (view !== undefined) {
    if (width < 720)
      await page.getByRole('navigation', { name: 'Go to' }).getByRole('link', { name: 'Pane' }).click();
    await page.locator('#pane nav').getByRole('link', { name: view }).click();
  }
  // Whatever is under way draws itself first.
  await page.waitForTimeout(1000);
  await page.locator('.progressLine').waitFor({ state: 'detached', timeout: 120_000 });
  await page.waitForTimeout(500);
}

void takePictures();
