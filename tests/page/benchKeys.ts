import type { Page } from 'playwright-core';
import type { ScriptedBattery } from './benchScript.ts';

/** The bench as a clerk works it: keys only, from whatever has the focus. */
export type Clerk = {
  /** Answers and reads one battery; the focus stands on the button that records then. */
  readonly work: (battery: ScriptedBattery) => Promise<void>;
  readonly record: () => Promise<void>;
  readonly next: () => Promise<void>;
  /** Puts the battery that lies there on record as charged fully, and comes back to the button for the next. */
  readonly charge: () => Promise<void>;
};

/** What has the focus, in words: what is written on a button, or the label of a field. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLInputElement | null;
    if (at === null) return '';
    const legend = at.closest('fieldset')?.querySelector('legend')?.textContent;
    return legend ?? at.labels?.[0]?.textContent ?? at.textContent ?? '';
  });

/** Waits until something has the focus. */
export async function untilFocused(page: Page, words: RegExp): Promise<void> {
  await page.waitForFunction(
    (source) => {
      const at = document.activeElement as HTMLInputElement | null;
      const legend = at?.closest('fieldset')?.querySelector('legend')?.textContent;
      return new RegExp(source).test(legend ?? at?.labels?.[0]?.textContent ?? at?.textContent ?? '');
    },
    words.source,
    { timeout: 10_000 },
  );
}

/** What the clock on the wall shows, in minutes of the day; the grid's own timers go on as they are. */
export async function setWallClock(page: Page, minutes: number): Promise<void> {
  await page.evaluate((shown) => {
    Date.prototype.getHours = () => Math.floor(shown / 60);
    Date.prototype.getMinutes = () => shown % 60;
  }, minutes);
}

/** A clerk at the bench of a page. */
export function clerkAt(page: Page): Clerk {
  const keys = page.keyboard;
  let isFirst = true;

  const read = async ({ read: readings, retest = 0, construction }: ScriptedBattery): Promise<void> => {
    for (const text of readings!) {
      if (text === '-') await keys.press('Delete');
      else if (text !== '') await keys.insertText(text);
      await keys.press('Enter');
    }
    await keys.press('Home');
    for (let step = 0; step < retest; step += 1) await keys.press('ArrowDown');
    if (construction !== undefined) {
      await keys.press('Tab');
      await keys.press(construction);
    }
    await keys.press('Enter');
  };

  const work = async (battery: ScriptedBattery): Promise<void> => {
    for (const answer of battery.look) await keys.press(answer);
    await keys.insertText(battery.serial);
    await keys.press('Enter');
    if (battery.read !== undefined) await read(battery);
    if (isFirst) {
      await keys.press('Enter');
      for (const said of ['tester 1', 'AB']) {
        await keys.insertText(said);
        await keys.press('Enter');
      }
    }
    isFirst = false;
    if (battery.frost !== undefined) await keys.press(battery.frost);
    await untilFocused(page, /Record this test/);
    await page.locator('button[aria-disabled=false]', { hasText: 'Record this test' }).waitFor();
  };

  const record = async (): Promise<void> => {
    await keys.press('Enter');
    await untilFocused(page, /Next battery|Where shall Crankbook write/);
    if (!/Where shall/.test(await focused(page))) return;
    await keys.press('Tab');
    await keys.press('Enter');
    await untilFocused(page, /Next battery/);
  };

  const next = async (): Promise<void> => {
    await keys.press('Enter');
    await untilFocused(page, /Is the case cracked/);
  };

  const charge = async (): Promise<void> => {
    await keys.press('Tab');
    if (!(await page.locator('.bench details.charge').evaluate((part) => (part as HTMLDetailsElement).open)))
      await keys.press('Enter');
    await keys.press('Tab');
    await keys.press('Space');
    await keys.press('Tab');
    await keys.press('Enter');
    await untilFocused(page, /Record this charge/);
    await keys.press('Enter');
    await untilFocused(page, /Next battery/);
  };

  return { work, record, next, charge };
}
