import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { startChromium } from '../../tests/page/chromium.ts';
import { ICON_SIZES } from '../facts.ts';

const HERE = fileURLToPath(new URL('.', import.meta.url));

/** Draws icon.svg and outline.svg in the sizes that the manifests name; run by hand after a drawing has changed. */
async function drawIcons(browser: Browser): Promise<void> {
  for (const size of [...ICON_SIZES, 192]) await draw(browser, 'icon.svg', `icon${size}.png`, size);
  await draw(browser, 'outline.svg', 'outline32.png', 32);
}

async function draw(browser: Browser, drawing: string, picture: string, size: number): Promise<void> {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const svg = readFileSync(HERE + drawing, 'utf8').replace('<svg', `<svg width="${size}" height="${size}"`);
  await page.setContent(`<style>body{margin:0}svg{display:block}</style>${svg}`);
  writeFileSync(HERE + picture, await page.screenshot({ omitBackground: true }));
  await page.close();
}

const browser = await startChromium();
await drawIcons(browser);
await browser.close();
