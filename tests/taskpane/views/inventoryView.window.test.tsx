import { render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { SETTINGS_SHEET } from '../../../src/inventory/settingsRows.ts';
import { settingsSheet } from '../../../src/report/settingsSheet.ts';
import { settingsFrom } from '../../../src/inventory/settings.ts';
import { readHere } from '../../../taskpane/actions/readInventory.ts';
import type { HostCell } from '../../../taskpane/host/sheetHost.ts';
import { mountPane } from '../../../taskpane/pane.tsx';
import { AS_OF, paneSession } from '../paneSession.ts';

let pane: HTMLElement;

beforeEach(() => {
  pane = document.createElement('main');
  document.body.append(pane);
});

afterEach(() => {
  render(null, pane);
  pane.remove();
});

const until = (holds: () => void): Promise<void> => vi.waitFor(holds, { timeout: 20_000, interval: 10 });
const text = (): string => pane.textContent ?? '';

const part = (title: string): HTMLDetailsElement => {
  const found = [...pane.querySelectorAll<HTMLDetailsElement>('details.foldedPart')].find(
    (each) => each.querySelector('h3')?.textContent === title,
  );
  if (found === undefined) throw new Error(`no part is titled ${title}`);
  return found;
};

const button = (name: string): HTMLButtonElement => {
  const found = [...pane.querySelectorAll('button')].find((each) => each.textContent?.trim() === name);
  if (found === undefined) throw new Error(`no button is named ${name}`);
  return found;
};

function labelled<E extends HTMLElement>(label: string, within: Element = pane): E {
  const found = [...within.querySelectorAll('label')].find((each) => each.textContent?.includes(label));
  const control = found?.querySelector('input, select');
  if (!control) throw new Error(`no control is labelled ${label}`);
  return control as E;
}

function give(control: HTMLInputElement | HTMLSelectElement, value: string): void {
  control.value = value;
  control.dispatchEvent(new Event('change', { bubbles: true }));
}

const HEADS = ['Serial', 'Type', 'Maker', 'Date code', 'Depot', 'Fitted on', 'OCV'];
const ROWS: HostCell[][] = Array.from({ length: 12 }, (_, index) => [
  `N${100 + index}`,
  index % 3 === 0 ? '6T old' : '6T AGM',
  '9ZZ98',
  `24${String(1 + (index % 12)).padStart(2, '0')}-${index + 1}`,
  index % 2 === 0 ? 'Kaldmoor' : 'Isvarg Pass',
  AS_OF - 30 * (1 + index),
  12.4 + index / 40,
]);
const fleet = { name: 'Fleet', rows: [['Batteries'], HEADS, ...ROWS], dateColumns: [5] };

async function shown(sheets: Parameters<typeof paneSession>[0] = [fleet]) {
  const made = paneSession(sheets);
  await readHere(made.session);
  mountPane(pane, made.session);
  await until(() => expect(pane.querySelector('h2')).not.toBeNull());
  return made;
}

describe('where the inventory is', () => {
  it('says what was recognised, and lets another row be named for the heads', async () => {
    const { session } = await shown();
    const where = part('Where the inventory is');
    expect(where.textContent).toContain('sheet Fleet, 12 batteries');
    expect(where.textContent).toContain('1 row of titles above the heads');
    expect(where.textContent).toContain('column heads in row 2, rows 3 to 14 below them');
    give(labelled('Row of the column heads'), '99');
    await until(() => expect(text()).toContain('could not be read as an inventory'));
    expect(session.reading.value).toBeUndefined();
    give(labelled('Row of the column heads'), '');
    await until(() => expect(session.reading.value?.batteryCount).toBe(12));
  });

  it('reads another sheet that is chosen', async () => {
    const other = { ...fleet, name: 'Store', rows: fleet.rows.slice(0, 6) };
    const { session } = await shown([fleet, other]);
    give(labelled('Sheet or table'), 'sheet Store');
    await until(() => expect(session.reading.value?.batteryCount).toBe(4));
    expect(session.where.value?.sheet).toBe('Store');
    expect(session.given.value.tab).toBe('Store');
  });
});

describe('what was guessed', () => {
  it('is shown with two values, and a column can be corrected', async () => {
    const { session } = await shown();
    const columns = part('Columns');
    expect(columns.textContent).toContain('guess by its head; such as N100 · N101');
    const volts = labelled<HTMLSelectElement>('rest voltage', columns);
    expect(volts.value).toBe('OCV');
    give(volts, '');
    await until(() => expect(session.reading.value?.columns.restVolts).toBeUndefined());
    expect(session.given.value.columns).toEqual({ restVolts: '' });
  });

  it('counts what is taken as AGM, and takes a construction once for all its rows', async () => {
    const { session } = await shown();
    const construction = part('Construction');
    expect(construction.textContent).toContain('4 batteries taken as AGM');
    give(labelled('6T old', construction), 'flooded');
    await until(() => expect(part('Construction').textContent).toContain('all known'));
    expect(session.given.value.constructions).toEqual({ '6T old': 'flooded' });
  });

  it('says of each site what stays unanswered', async () => {
    const { session } = await shown();
    const sites = part('Sites');
    expect(sites.textContent).toContain('temperatures given for 0 of 2');
    expect(sites.textContent).toContain('nothing is said about frost');
    const site = [...sites.querySelectorAll('fieldset')].find((each) =>
      each.textContent?.includes('Isvarg Pass'),
    )!;
    give(labelled('Coldest', site), '-31');
    await until(() => expect(session.given.value.sites).toEqual({ 'Isvarg Pass': { coldest: -31 } }));
  });
});

describe('rows to check', () => {
  it('lead to their cells, and one decision settles a cause', async () => {
    const { session, done } = await shown();
    const cause = (): HTMLDetailsElement | undefined =>
      [...pane.querySelectorAll<HTMLDetailsElement>('details.cause')].find((each) =>
        each.textContent?.includes('codes in another layout'),
      );
    expect(cause()!.textContent).toContain(', 12 rows');
    cause()!.querySelector<HTMLButtonElement>('.examples button')!.click();
    await until(() => expect(done.selected).toHaveLength(1));
    expect(done.selected[0]).toEqual({ sheet: 'Fleet', block: { row: 2, column: 3, rows: 1, columns: 1 } });
    expect(cause()!.textContent).not.toContain('setting');
    button('Read codes of maker 9ZZ98 as yyMM-lot: 2401-1 is January 2024').click();
    await until(() => expect(cause()).toBeUndefined());
    expect(session.given.value.layouts).toEqual({ '9ZZ98': 'yyMM-lot' });
  });

  it('are written to a sheet of their own, once it is said where', async () => {
    const { done } = await shown();
    button('Write rows to check').click();
    await until(() => expect(text()).toContain('Where shall Crankbook write?'));
    expect(done.added).toHaveLength(0);
    button('Into this workbook').click();
    await until(() => expect(done.added).toHaveLength(1));
    expect(done.added[0]![0]).toMatchObject({ name: 'Rows to check' });
  });
});

describe('settings', () => {
  it('stand on a sheet of this workbook once that is chosen, and follow every change', async () => {
    const { session, done } = await shown();
    labelled<HTMLInputElement>('Here: a sheet', part('Before anything is added')).click();
    await until(() => expect(done.replaced).toHaveLength(1));
    expect(await session.host.namedCell('CrankAsOf')).toMatchObject({
      value: { sheet: SETTINGS_SHEET, row: 1, column: 1 },
    });
    labelled<HTMLInputElement>('Count visible rows only').click();
    await until(() => expect(done.replaced.length).toBeGreaterThan(1));
    const rows = done.replaced.at(-1)!.rows.map((row) => row.map((cell) => cell?.value));
    expect(rows).toContainEqual(['visibleOnly', true]);
  });

  it("of the workbook's own sheet are taken; what no longer matches is listed", async () => {
    const settings = settingsFrom({
      columns: { serial: 'Serial', least: 'Min CCA' },
      sites: { Elsewhere: { coldest: -3 } },
    });
    if (!settings.ok) throw new Error('refused');
    const day = AS_OF - 30;
    const rows = settingsSheet(settings.value, day).rows.map((row) => row.map((cell) => cell?.value ?? null));
    const { session } = await shown([fleet, { name: SETTINGS_SHEET, rows }]);
    expect(session.asOf.value).toBe(day);
    expect(session.home.value).toBe('here');
    const list = part('Before anything is added').textContent;
    expect(list).toContain('column for least accepted Min CCA');
    expect(list).toContain('site Elsewhere');
    expect(session.given.value.columns).toEqual({ serial: 'Serial' });
  });

  it('are given as a file, and taken from it again', async () => {
    const { session, files } = await shown();
    give(labelled('6T old', part('Construction')), 'gel');
    await until(() => expect(session.given.value.constructions).toBeDefined());
    button('Save settings as a file').click();
    expect(files[0]!.name).toBe('inventory settings.json');
    const saved = String(files[0]!.bytes);
    session.given.value = {};
    const input = labelled<HTMLInputElement>('Take settings from a file');
    const file = { name: 'may.json', arrayBuffer: async () => new TextEncoder().encode(saved).buffer };
    Object.defineProperty(input, 'files', { value: [file], configurable: true });
    input.dispatchEvent(new Event('change', { bubbles: true }));
    await until(() => expect(session.given.value.constructions).toEqual({ '6T old': 'gel' }));
    await until(() => expect(text()).toContain('Settings taken from may.json. All of them match'));
  });
});

describe('filling', () => {
  it('asks for a column first, then fills a new sheet where there is no table', async () => {
    const { done, session } = await shown();
    session.home.value = 'here';
    button('Fill').click();
    await until(() => expect(text()).toContain('Choose at least one column.'));
    const fill = part('Fill columns');
    expect(labelled<HTMLInputElement>('Charge again by', fill).disabled).toBe(true);
    labelled<HTMLInputElement>('State of charge', fill).click();
    button('Fill').click();
    await until(() => expect(done.added).toHaveLength(1));
    expect(done.added[0]![0]!.name).toBe('Battery answers');
  });
});
