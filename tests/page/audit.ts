import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** A rule of the accessibility audit that something breaks. */
export type Broken = { readonly rule: string; readonly count: number; readonly first: string };

/** What the audit finds in a part of the page, named by its selector. */
export async function auditOf(page: Page, part: string): Promise<Broken[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async (include) => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run({ include: [include] });
    return violations.map(({ id, nodes }) => ({ rule: id, count: nodes.length, first: nodes[0]!.html }));
  }, part);
}

/** What in a part of the page sticks out of it, but for tables that scroll by themselves. */
export const sticksOut = (page: Page, part: string): Promise<string[]> =>
  page.evaluate((selector) => {
    const root = document.querySelector(selector)!;
    const right = root.getBoundingClientRect().right + 0.5;
    return [...root.querySelectorAll('*')]
      .filter(
        (element) => element.closest('.wideTable') === null && element.getBoundingClientRect().right > right,
      )
      .map((element) => element.outerHTML.slice(0, 120));
  }, part);
