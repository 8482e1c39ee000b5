import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench, OpenedPage } from './builtPage.ts';
import { openDemo, openPage, startBench } from './builtPage.ts';

let bench: Bench;
let opened: OpenedPage;
beforeAll(async () => {
  bench = await startBench();
  opened = await openPage(bench);
});
afterAll(() => bench.stop());

/** A file as a browser hands it over. */
const csv = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

describe('the page', () => {
  it('shows workbook and pane', async () => {
    const { page } = opened;
    expect(await page.title()).toBe('Crankbook');
    expect(await page.locator('#grid canvas').count()).toBeGreaterThan(0);
    expect(await page.locator('#pane nav a').allTextContents()).toEqual([
      'Inventory',
      'Bench',
      'Life',
      'Plan',
    ]);
  });

  it('has nothing to save before anything was changed', async () => {
    expect(await opened.page.locator('#head').textContent()).not.toContain('changes not saved');
  });

  it('opens the demonstration inventory with one click', async () => {
    await openDemo(opened.page);
    expect(await opened.page.locator('#head .name').textContent()).toBe('norrfell-inventory.xlsx');
    expect(await opened.page.locator('#head').textContent()).not.toContain('changes not saved');
  });

  it('shows in words what the active cell of the opened file holds', async () => {
    const line = opened.page.getByRole('region', { name: 'Active cell' });
    await expect.poll(() => line.textContent()).toMatch(/^A1.*shows.*Battery register/);
  });

  it('has menus and dialogs of the grid that keep to the policy', async () => {
    const { page } = opened;
    await page.locator('#grid [aria-haspopup="menu"]').first().click();
    await page.keyboard.press('Escape');
    await page.locator('#grid').getByRole('tab', { name: 'Notes' }).click({ button: 'right' });
    await page.getByText('Delete', { exact: true }).click();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(opened.complaints).toEqual([]);
  });

  it('opens a file that was chosen, and says why another can’t be opened', async () => {
    const { page } = opened;
    const chooser = page.locator('#head input[type=file]');
    await chooser.setInputFiles(csv('fleet.csv', 'serial,made\nNR-1,0324\n'));
    await page.getByText('Opened fleet.csv.').waitFor();
    await chooser.setInputFiles(csv('fleet.ods', 'PK'));
    await page.locator('.pageMessage.problem').waitFor();
    expect(await page.locator('#head .name').textContent()).toBe('fleet.csv');
  });

  it('opens a file that is dropped anywhere', async () => {
    const { page } = opened;
    const files = await page.evaluateHandle(() => {
      const given = new DataTransfer();
      given.items.add(new File(['serial,made\nNR-2,0424\n'], 'dropped.csv'));
      return given;
    });
    for (const type of ['dragover', 'drop']) {
      await page.dispatchEvent('#pane', type, { dataTransfer: files });
    }
    await page.getByText('Opened dropped.csv.').waitFor();
  });

  it('asks before changes are lost, and keeps them when told to', async () => {
    const { page } = opened;
    await typeIntoGrid(opened, 'typed');
    await page.getByText('(changes not saved)').waitFor();
    await page.getByRole('button', { name: 'Open the demonstration inventory' }).click();
    await page.getByRole('button', { name: 'Keep working' }).click();
    expect(await page.locator('#head .name').textContent()).toBe('dropped.csv');
    await page.getByRole('button', { name: 'Open the demonstration inventory' }).click();
    await page.getByRole('button', { name: 'Open without saving' }).click();
    await page.getByText('Opened norrfell-inventory.xlsx.').waitFor();
  });

  it.each([
    ['formulas', "with formulas kept as the add-in's", 'norrfell-inventory.xlsx'],
    ['values', 'as values, for people without the add-in', 'norrfell-inventory as values.xlsx'],
  ])('saves with %s', async (_, choice, name) => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Save as .xlsx' }).click();
    await page.getByLabel(choice).check();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    expect((await download).suggestedFilename()).toBe(name);
    await page.getByText(`Saved ${name}.`).waitFor();
  });

  it('complained about nothing and asked nothing of anyone else', () => {
    expect(opened.complaints).toEqual([]);
    expect(opened.elsewhere).toEqual([]);
  });
});

/** Types into the cell that is active. */
async function typeIntoGrid({ page }: OpenedPage, text: string): Promise<void> {
  await page.locator('#grid canvas[role=application]').focus();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}
