import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { textOf } from '../house/sourceFiles.ts';
import type { Bench } from './builtPage.ts';
import { openDemo, openPage, startBench } from './builtPage.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

type Found = { readonly rule: string; readonly count: number; readonly first: string };

/** What the audit finds in a part of the page, or in all but the grid. */
async function audit(page: Page, only?: string): Promise<Found[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async (part) => {
    type Context = Parameters<typeof axe.run>[0];
    const context = (part === undefined ? { exclude: ['#grid'] } : { include: [part] }) as unknown as Context;
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(context);
    return violations.map(({ id, nodes }) => ({ rule: id, count: nodes.length, first: nodes[0]!.html }));
  }, only);
}

/** Rules and counts that docs/limits.md admits for the grid. */
const admitted = new Map(
  [...textOf('docs/limits.md').matchAll(/^\| `([a-z-]+)` +\| +(\d+) +\|/gm)].map((row) => [
    row[1]!,
    Number(row[2]),
  ]),
);

/** The parts of the page that would have to be scrolled sideways, once it has answered to its width. */
const tooWide = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    for (let frame = 0; frame < 3; frame += 1) await new Promise(requestAnimationFrame);
    return ['body', '#head', '#parts', '#pane']
      .map((part) => document.querySelector(part)!)
      .filter((part) => part.scrollWidth > part.clientWidth)
      .map((part) => part.id || part.tagName);
  });

const themes = ['light', 'dark'] as const;

describe.each(themes)('the page in %s', (colorScheme) => {
  it('has no violation in header, messages, pane and dialogs', async () => {
    const { page, close } = await openPage(bench, { colorScheme });
    expect(await audit(page)).toEqual([]);
    await openDemo(page);
    expect(await audit(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save as .xlsx' }).click();
    await page.getByRole('dialog').waitFor();
    expect(await audit(page)).toEqual([]);
    await close();
  });

  it('has no more violations in the grid than docs/limits.md admits', async () => {
    const { page, close } = await openPage(bench, { colorScheme });
    const found = await audit(page, '#grid');
    const more = found.filter(({ rule, count }) => count > (admitted.get(rule) ?? 0));
    expect(more).toEqual([]);
    expect(admitted.size).toBeGreaterThan(0);
    await close();
  });

  it('fits into each width, as opened and as made wider or narrower', async () => {
    const { page, close } = await openPage(bench, { colorScheme, viewport: { width: 320, height: 800 } });
    for (const width of [320, 400, 720, 1400, 320]) {
      await page.setViewportSize({ width, height: 800 });
      await expect.poll(() => page.evaluate(() => window.innerWidth)).toBe(width);
      await expect.poll(async () => [width, await tooWide(page)]).toEqual([width, []]);
    }
    await close();
  });
});

describe('a narrow page', () => {
  it('has the pane under the workbook, and links to both', async () => {
    const { page, close } = await openPage(bench, { viewport: { width: 400, height: 800 } });
    const links = page.getByRole('navigation', { name: 'Go to' });
    await links.getByRole('link', { name: 'Pane' }).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('pane');
    const top = await page.locator('#pane').evaluate((pane) => pane.getBoundingClientRect().top);
    expect(top).toBeLessThan(400);
    await close();
  });
});

describe('what is chosen', () => {
  it('stands in one line at 320 pixels: words beside the radio, none under it', async () => {
    const { page, close } = await openPage(bench, { viewport: { width: 320, height: 800 } });
    await page.getByRole('button', { name: 'Save as .xlsx' }).click();
    const under = await page.getByRole('dialog').evaluate((dialog) =>
      [...dialog.querySelectorAll('label')].map((label) => {
        const words = document.createRange();
        words.selectNodeContents(label.lastChild!);
        const radio = label.querySelector('input')!.getBoundingClientRect();
        return [...words.getClientRects()].some(({ left }) => left < radio.right);
      }),
    );
    expect(under).toEqual([false, false]);
    await close();
  });

  it('is a view whose link is underlined, not only of another colour', async () => {
    const { page, close } = await openPage(bench);
    const lines = await page
      .locator('#pane nav a')
      .evaluateAll((links) => links.map((link) => getComputedStyle(link).borderBottomStyle));
    expect(lines).toEqual(['solid', 'none', 'none', 'none']);
    await close();
  });
});

describe('forced colours', () => {
  it('leave splitter, messages and the cell line with their outlines', async () => {
    const { page, close } = await openPage(bench, { forcedColors: 'active' });
    const border = await page.locator('.cellLine').evaluate((line) => getComputedStyle(line).borderTopStyle);
    expect(border).toBe('solid');
    const [line, ground] = await page
      .locator('.splitter')
      .evaluate((each) => [
        getComputedStyle(each).backgroundColor,
        getComputedStyle(document.body).backgroundColor,
      ]);
    expect(line).not.toBe(ground);
    await close();
  });
});
