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
