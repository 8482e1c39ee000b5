import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { settingsFrom } from '../../src/inventory/settings.ts';
import { planFile } from '../../taskpane/headless.ts';
import { clerkAt, setWallClock, untilFocused } from './benchKeys.ts';
import type { Clerk } from './benchKeys.ts';
import type { ScriptedBattery } from './benchScript.ts';
import { SCRIPT } from './benchScript.ts';
import type { Bench, OpenedPage } from './builtPage.ts';
import { openDemo, openPage, startBench } from './builtPage.ts';
import { lastRecords, savedWorkbook } from './savedRows.ts';

let bench: Bench;
let opened: OpenedPage;
let clerk: Clerk;
/** The work begins at seven. */
const SEVEN = 7 * 60;

/** What a full battery of any construction reads. */
const FULL = ['12.60', '8', '15', '1100', '', '980'];

beforeAll(async () => {
  bench = await startBench();
  opened = await openPage(bench);
  const { page } = opened;
  await openDemo(page);
  await page.locator('#pane').getByText('Store list').first().waitFor();
  clerk = clerkAt(page);
  await page.locator('#pane').getByRole('link', { name: 'Bench' }).focus();
  await page.keyboard.press('Enter');
  await untilFocused(page, /Is the case cracked/);
});
afterAll(() => bench.stop());

describe('thirty batteries on the bench, by keyboard alone', () => {
  it.each(SCRIPT.map((battery, index) => [battery.what, battery, index] as const))(
    '%s',
    async (_, battery, index) => {
      const { page } = opened;
      // Ten minutes for each: a charge after a test is told from one before it by the clock.
      await setWallClock(page, SEVEN + index * 10);
      if (battery.chargedBefore) await clerk.charge();
      if (index > 0) await clerk.next();
      await clerk.work(battery);
      await setWallClock(page, SEVEN + index * 10 + 5);
      const verdict = page.locator('.bench .verdict');
      expect(await verdict.locator('.word').textContent()).toBe(battery.word);
      expect(await verdict.textContent()).toContain(battery.because);
      expect(await verdict.textContent()).toContain('Next step');
      await clerk.record();
      // What was put on record stays in sight as it was judged.
      expect(await verdict.locator('.word').textContent()).toBe(battery.word);
    },
  );

  it('stand in the sheet Tests, row by row, and the charges in the sheet Charges', async () => {
    const { page } = opened;
    await page.getByText(`On record from this bench: ${SCRIPT.length} tests, 3 charges.`).waitFor();
    const saved = await savedWorkbook(page);
    const rows = lastRecords(saved, 'Tests', SCRIPT.length);
    expect(rows.map(told)).toEqual(SCRIPT.map(expected));
    expect(rows.every((row) => row['Tester used'] === 'tester 1' && row['Initials'] === 'AB')).toBe(true);
    const charges = lastRecords(saved, 'Charges', 3);
    expect(charges.map((row) => [row['Serial'], row['Fully charged'] ?? row['Full']])).toEqual([
      ['0080263', 'yes'],
      ['0080266', 'yes'],
      ['0080266', 'yes'],
    ]);
    // The inventory reads its verdicts from these rows.
    const settings = settingsFrom({ tab: 'Inventory', recordsSince: '2021-04-01' });
    const read = settings.ok ? planFile(saved, settings.value, 46203) : settings;
    if (!read.ok) throw new Error(JSON.stringify(read.problem));
    const verdictOf = (serial: string) =>
      read.value.inventory.batteries.find((battery) => battery.serial === serial)?.verdict;
    expect(['0079751', '0079913', '0080263', '0080266', '0080272', '0080078'].map(verdictOf)).toEqual([
      'Serviceable',
      'Condemned',
      'Condemned',
      'Condemned',
      'Awaiting charge',
      undefined,
    ]);
  });

  it('a second Enter leaves the line for the case, and the notice, in sight', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Next battery' }).focus();
    await clerk.next();
    await clerk.work({ ...SCRIPT[0]!, serial: '0076110', read: FULL });
    const line = await page.locator('.bench .caseLine code').textContent();
    await clerk.record();
    await clerk.next();
    const last = page.locator('.bench .caseLine', { hasText: '0076110, which is on record' });
    expect(await last.locator('code').textContent()).toBe(line);
    expect(await page.locator('#pane .notice').first().textContent()).toContain('0076110 is on record');
    for (const answer of 'nnny') await page.keyboard.press(answer);
    await page.keyboard.insertText('0076118');
    expect(await last.count()).toBe(0);
  });

  it('readings that are not on record are asked about, by keyboard, before they are left out', async () => {
    const { page } = opened;
    await page.keyboard.press('Enter');
    await page.keyboard.insertText('12.4');
    await page.getByRole('button', { name: 'Next battery' }).focus();
    await page.keyboard.press('Enter');
    await untilFocused(page, /What was read at 0076118 is not on record/);
    // Whoever presses twice has said nothing yet.
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await untilFocused(page, /Next battery/);
    expect(await page.getByLabel('Rest voltage').inputValue()).toBe('12.4');
    await page.keyboard.press('Enter');
    await untilFocused(page, /What was read at 0076118/);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await untilFocused(page, /Is the case cracked/);
    expect(await page.getByLabel('Rest voltage').inputValue()).toBe('');
  });

  it('a double click records once, and goes past nothing', async () => {
    const { page } = opened;
    await clerk.work({ ...SCRIPT[0]!, serial: '0076118', read: FULL });
    await page.getByRole('button', { name: 'Record this test' }).dblclick();
    await page.getByText(`On record from this bench: ${SCRIPT.length + 2} tests`).waitFor();
    await untilFocused(page, /Next battery/);
    expect(await page.locator('.bench .verdict .word').textContent()).toBe('Serviceable');
    // The second click of two must not go past a question that the first has brought.
    await page.getByLabel('Rest voltage').fill('12.4');
    await page.getByRole('button', { name: 'Next battery' }).dblclick();
    await untilFocused(page, /What was read at 0076118/);
    expect(await page.getByLabel('Rest voltage').inputValue()).toBe('12.4');
  });

  it('complained about nothing', () => {
    expect(opened.complaints).toEqual([]);
    expect(opened.elsewhere).toEqual([]);
  });
});

function told(row: Record<string, unknown>) {
  const { Serial, Damage, Reading, Retest, Verdict, Reason } = row;
  return [Serial, Verdict, String(Reason), Damage, row['Rest volts'], Reading, Retest];
}

const expected = ({ serial, recordedAs, word, because, row }: ScriptedBattery) => [
  recordedAs ?? serial,
  word,
  expect.stringContaining(because),
  ...row,
];
