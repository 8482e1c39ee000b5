import bwip from 'bwip-js/node';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench, OpenedPage } from './builtPage.ts';
import { openDemo, openPage, startBench } from './builtPage.ts';

let bench: Bench;
let opened: OpenedPage;
beforeAll(async () => {
  bench = await startBench();
  opened = await openPage(bench);
  await openDemo(opened.page);
  await opened.page.locator('#pane').getByText('Store list').first().waitFor();
  await opened.page.locator('#pane').getByRole('link', { name: 'Bench' }).click();
});
afterAll(() => bench.stop());

/** A label as the drawing program spells it. */
const label = (serial: string): string => `[)>^03006^02917V9ZZ98^0291PBX6T-100^029S${serial}^030^004`;

type Look = { readonly rotate?: 'R'; readonly backgroundcolor?: string };

async function drawing(kind: 'datamatrix' | 'qrcode', serial: string, look: Look): Promise<Buffer> {
  return bwip.toBuffer({ bcid: kind, text: label(serial), parse: true, scale: 4, padding: 10, ...look });
}

const WHITE = { backgroundcolor: 'FFFFFF' } as const;

type Given = { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };
const picture = (buffer: Buffer, name = 'label.png'): Given => ({ name, mimeType: 'image/png', buffer });

const serialField = (page: Page) => page.getByLabel('Serial, or the text of its symbol');

/** Gives a picture by the button, by dropping it, or by pasting it. */
async function give(page: Page, how: 'button' | 'drop' | 'paste', file: Given): Promise<void> {
  if (how === 'button') return page.getByLabel('Picture of the symbol').setInputFiles(file);
  const bytes = [...file.buffer];
  await serialField(page).evaluate(
    (field, { event, name, type, contents }) => {
      const data = new DataTransfer();
      data.items.add(new File([new Uint8Array(contents)], name, { type }));
      const given = { bubbles: true, cancelable: true, dataTransfer: data, clipboardData: data };
      field.dispatchEvent(
        event === 'drop' ? new DragEvent('drop', given) : new ClipboardEvent('paste', given),
      );
    },
    { event: how, name: file.name, type: file.mimeType, contents: bytes },
  );
}

const notice = (page: Page) => page.locator('#pane .notice.problem');

describe('a picture of a label at the bench', () => {
  it.each([
    ['button', 'datamatrix', '0079751', WHITE],
    ['drop', 'qrcode', 'K75056', WHITE],
    ['paste', 'datamatrix', '0079913', { ...WHITE, rotate: 'R' }],
    ['button', 'qrcode', 'K76481', {}],
  ] as const)('given by %s as %s names battery %s', async (how, kind, serial, look) => {
    const { page } = opened;
    await give(page, how, picture(await drawing(kind, serial, look)));
    await page.locator('.bench .known .facts').waitFor();
    await expect.poll(() => serialField(page).inputValue()).toContain(serial);
    expect(await page.locator('.bench .known').textContent()).toContain('NM-10');
    // The work goes on at the readings, and the workbook stays open.
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.id))
      .toBe(await page.getByLabel('Rest voltage, V').getAttribute('id'));
    expect(await page.locator('#head .name').textContent()).toBe('norrfell-inventory.xlsx');
    await serialField(page).fill('');
  });

  it.each([
    ['cut short', async () => (await drawing('qrcode', '1', WHITE)).subarray(0, 300), 'cut short'],
    ['far too large by its head', async () => hugePng(await drawing('qrcode', '1', WHITE)), 'million'],
    ['a text', async () => Buffer.from('this is no picture at all, whatever its name'), 'is not a picture'],
    [
      'of nothing',
      async () => bwip.toBuffer({ bcid: 'code39', text: 'X', ...WHITE }),
      'no Data Matrix or QR',
    ],
  ] as const)('that is %s is refused in words', async (_, made, words) => {
    const { page } = opened;
    await give(page, 'button', picture(await made()));
    await notice(page).filter({ hasText: words }).waitFor();
    expect(await serialField(page).inputValue()).toBe('');
  });

  it('that is over 20 MB is refused before it is read', async () => {
    const { page } = opened;
    await serialField(page).evaluate((field) => {
      const data = new DataTransfer();
      data.items.add(new File([new Uint8Array(21_000_000)], 'label.png', { type: 'image/png' }));
      field.dispatchEvent(new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: data }));
    });
    await notice(page).filter({ hasText: '21.0 MB' }).waitFor();
  });

  it('is fetched from nowhere else, and nothing complained', () => {
    expect(opened.elsewhere).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });

  it('is refused in words where compiled code is forbidden', async () => {
    const { page, close } = await openPage(bench);
    await page.context().route(/worker.*\.js$/, async (route) => {
      const response = await route.fetch();
      const policy = response.headers()['content-security-policy']!.replace("'wasm-unsafe-eval'", '');
      await route.fulfill({
        response,
        headers: { ...response.headers(), 'content-security-policy': policy },
      });
    });
    await page.locator('#pane').getByRole('link', { name: 'Bench' }).click();
    await give(page, 'button', picture(await drawing('qrcode', '1', WHITE)));
    await notice(page).filter({ hasText: 'the reader of pictures could not be started here' }).waitFor();
    await serialField(page).fill('0079751');
    await page.keyboard.press('Enter');
    await page.getByText('No inventory has been read').waitFor();
    await close();
  });
});

/** The same picture with a head that says 60,000 by 60,000. */
function hugePng(png: Buffer): Buffer {
  const huge = Buffer.from(png);
  huge.writeUInt32BE(60_000, 16);
  huge.writeUInt32BE(60_000, 20);
  return huge;
}
