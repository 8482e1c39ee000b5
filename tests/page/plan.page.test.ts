import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench, OpenedPage } from './builtPage.ts';
import { openDemo, openPage, startBench } from './builtPage.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

async function openPlan(page: Page): Promise<void> {
  await openDemo(page);
  await page.locator('#pane').getByRole('link', { name: 'Plan' }).click();
  await page.getByRole('heading', { name: 'The plan', exact: true }).waitFor();
}

async function give(page: Page, label: string, value: string): Promise<void> {
  await page.getByLabel(label).fill(value);
  await page.getByLabel(label).press('Tab');
}

/** Opens everything in the pane that is folded. */
async function unfold(page: Page): Promise<void> {
  await page.locator('#pane').evaluate((pane) => {
    for (const each of pane.querySelectorAll('details')) each.open = true;
  });
}

/** What the accessibility audit finds in the pane. */
async function audit(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run('#pane');
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`);
  });
}

describe('the planner’s way', () => {
  it('from the demonstration to a written forecast, with a plan kept for comparing', async () => {
    const { page, complaints, elsewhere, close } = await openPage(bench);
    await openPlan(page);
    await page.getByText('Price and money').click();
    await give(page, 'Price of one battery', '460');
    await page.getByText('460.00 crowns each').waitFor();
    await page.getByText('Net money by fiscal year').first().waitFor();
    await page.getByRole('button', { name: 'Keep it for comparing' }).click();
    await page.getByText('Stock and orders under way').click();
    await give(page, 'Stock to hold at year end', '300');
    const compared = page.getByRole('region', { name: 'Plan A beside the plan as it is now' });
    await compared
      .getByRole('cell', { name: /^\+\d+$/ })
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Write forecast sheet' }).click();
    await page.getByRole('button', { name: 'Into this workbook' }).click();
    await page.getByText('Written: Forecast, Forecast units, Rows to check, Store list.').waitFor();
    await page.locator('#grid').getByText('Forecast units').first().waitFor();
    expect([complaints, elsewhere]).toEqual([[], []]);
    await close();
  });

  it('sees the request without scrolling, and each part of its inputs by a few words', async () => {
    const { page, close } = await openPage(bench);
    await openPlan(page);
    const request = page.getByRole('region', { name: 'The request' });
    const bottom = await request.evaluate((region) => region.getBoundingClientRect().bottom);
    expect(bottom).toBeLessThan(900);
    const inputs = page.locator('.planInputs > details');
    expect(await inputs.evaluateAll((parts) => parts.some((part) => (part as HTMLDetailsElement).open))).toBe(
      false,
    );
    expect(await inputs.locator('summary .state').allTextContents()).toHaveLength(await inputs.count());
    await close();
  });

  it('by keyboard alone: the link, and a table that scrolls', async () => {
    const { page, close } = await openPage(bench, { viewport: { width: 320, height: 800 } });
    await openDemo(page);
    await page.locator('#pane').getByRole('link', { name: 'Plan' }).focus();
    await page.keyboard.press('Enter');
    const years = page.getByRole('region', { name: 'By fiscal year, term by term' });
    await years.focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => years.evaluate((region) => region.scrollLeft)).toBeGreaterThan(0);
    await close();
  });
});

describe.each(['light', 'dark'] as const)('the Plan view in %s', (colorScheme) => {
  let opened: OpenedPage;
  beforeAll(async () => {
    opened = await openPage(bench, { colorScheme, viewport: { width: 320, height: 800 } });
    const { page } = opened;
    await openPlan(page);
    await unfold(page);
    await give(page, 'Price of one battery', '460');
    await page.getByText('Net money by fiscal year').first().waitFor();
  });
  afterAll(() => opened.close());

  it.each([320, 1400])('has no violation and no sideways scrolling at a width of %i', async (width) => {
    const { page } = opened;
    await page.setViewportSize({ width, height: 800 });
    await expect.poll(() => page.evaluate(() => window.innerWidth)).toBe(width);
    const pane = page.locator('#pane');
    const over = (): Promise<number> => pane.evaluate((each) => each.scrollWidth - each.clientWidth);
    await expect.poll(over).toBeLessThanOrEqual(0);
    expect(await audit(page)).toEqual([]);
    expect(await over()).toBeLessThanOrEqual(0);
  });
});
