import { webcrypto } from 'node:crypto';
import { render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { GivenSettings } from '../../../src/inventory/settings.ts';
import { readAgain, readHere } from '../../../taskpane/actions/readInventory.ts';
import { mountPane } from '../../../taskpane/pane.tsx';
import { inventedRows, inventedSheet, paneSession } from '../paneSession.ts';

let pane: HTMLElement;

beforeEach(() => {
  pane = document.createElement('main');
  document.body.append(pane);
  // The test window has no digests; a browser on a secure page does.
  vi.stubGlobal('crypto', webcrypto);
});

afterEach(() => {
  render(null, pane);
  pane.remove();
  vi.unstubAllGlobals();
});

const text = (): string => pane.textContent ?? '';
const until = (holds: () => void): Promise<void> => vi.waitFor(holds, { timeout: 30_000, interval: 20 });

function labelled<E extends HTMLElement>(label: string): E {
  const found = [...pane.querySelectorAll('label')].find((each) => each.textContent?.includes(label));
  const control = found?.htmlFor
    ? document.getElementById(found.htmlFor)
    : found?.querySelector('input, select');
  if (!control) throw new Error(`no control is labelled ${label}`);
  return control as E;
}

const button = (name: string): HTMLButtonElement => {
  const found = [...pane.querySelectorAll('button')].find((each) => each.textContent?.includes(name));
  if (found === undefined) throw new Error(`no button is named ${name}`);
  return found;
};

function give(control: HTMLInputElement | HTMLSelectElement, value: string): void {
  control.value = value;
  control.dispatchEvent(new Event('input', { bubbles: true }));
  control.dispatchEvent(new Event('change', { bubbles: true }));
}

const caption = (name: string): HTMLTableElement | undefined =>
  [...pane.querySelectorAll('table')].find((table) => table.caption?.textContent === name);

const cellsOf = (table: HTMLTableElement): string[][] =>
  [...table.rows].map((row) => [...row.cells].map((cell) => cell.textContent ?? ''));

/** A pane that shows the plan of the invented inventory. */
async function planned(given: GivenSettings = { recordsSince: '2020-01-01' }, rows = 240) {
  const made = paneSession([inventedSheet(rows)]);
  made.session.view.value = 'plan';
  await readHere(made.session);
  made.session.given.value = given;
  await readAgain(made.session);
  mountPane(pane, made.session);
  return made;
}

async function planShown(given?: GivenSettings) {
  const made = await planned(given);
  await until(() => expect(caption('By fiscal year, term by term')).toBeDefined());
  return made;
}

describe('the Plan view', () => {
  it('asks for an inventory first', async () => {
    const { session } = paneSession();
    session.view.value = 'plan';
    mountPane(pane, session);
    await until(() => expect(text()).toContain('Nothing has been read yet'));
    button('Go to the inventory').click();
    expect(session.view.value).toBe('inventory');
  });

  it('plans nothing before the record start is said', async () => {
    const { session } = await planned({}, 30);
    await until(() => expect(text()).toContain('Since when has every removal been written down?'));
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(session.plan.value).toBeUndefined();
    button('Take this answer').click();
    await until(() => expect(text()).toContain('Choose one of the three answers.'));
    labelled<HTMLInputElement>('Never').click();
    await until(() => expect(labelled<HTMLInputElement>('Never').checked).toBe(true));
    button('Take this answer').click();
    await until(() => expect(session.plan.value).toBeDefined());
    expect(session.given.value).toEqual({ recordsSince: 'never' });
    expect(text()).toContain('This sheet shows only what is still here');
  });

  it('refuses a record start later than as-of, at the field', async () => {
    const { session } = await planned({});
    await until(() => expect(text()).toContain('Since when'));
    labelled<HTMLInputElement>('Since a day').click();
    await until(() => labelled('The day'));
    labelled<HTMLInputElement>('The day').value = '2027-01-01';
    button('Take this answer').click();
    await until(() => expect(labelled('The day').getAttribute('aria-invalid')).toBe('true'));
    const wrong = document.getElementById(labelled('The day').getAttribute('aria-describedby')!);
    expect(wrong?.textContent).toContain('later than as-of (2026-06-30)');
    expect(session.given.value).toEqual({});
  });

  it('does not ask where each row says since when it was watched', async () => {
    const rows = inventedSheet().rows.map((row, index) => [...row, index === 0 ? 'Watched since' : row[3]!]);
    const { session } = paneSession([{ name: 'Batteries', rows, dateColumns: [3, 4, 7] }]);
    session.view.value = 'plan';
    mountPane(pane, session);
    await readHere(session);
    await until(() => expect(session.plan.value).toBeDefined());
    expect(text()).toContain('told by its own row');
  });

  it('counts usable stock and follows each change of a setting', async () => {
    const { session } = await planShown();
    const before = session.plan.value!;
    expect(inventedRows(240).filter(([, , , , , , status]) => status === 'in stock')).toHaveLength(5);
    expect(before.usableStock).toBe(5);
    expect(before.years[0]!.budget).toBeUndefined();
    expect(text()).not.toContain('Units stand in the year that needs them');
    give(labelled('Price of one battery'), '450');
    give(labelled('Stock to hold'), '40');
    await until(() => expect(session.plan.value?.years[0]!.budget?.unitPrice).toBe(450));
    await until(() => expect(text()).toContain('Units stand in the year that needs them'));
    expect(session.given.value).toMatchObject({ money: { unitPrice: 450 }, stockTarget: 40 });
    const more = session.plan.value!.years[0]!.order.unitsToOrder - before.years[0]!.order.unitsToOrder;
    expect(more).toBeGreaterThan(30);
    give(labelled('Price of one battery'), '');
    await until(() => expect(session.given.value.money).toEqual({}));
  });

  it('keeps a refused value at its field with the sentence, and the plan as it was', async () => {
    const { session } = await planShown();
    give(labelled('Fiscal years to plan'), '40');
    await until(() => expect(labelled('Fiscal years to plan').getAttribute('aria-invalid')).toBe('true'));
    const field = labelled<HTMLInputElement>('Fiscal years to plan');
    const described = field
      .getAttribute('aria-describedby')!
      .split(' ')
      .map((id) => document.getElementById(id));
    expect(described.map((each) => each?.textContent).join(' ')).toContain(
      'the setting "Fiscal years to plan" is 40',
    );
    expect(field.value).toBe('40');
    expect(session.given.value.years).toBeUndefined();
    give(field, '5');
    await until(() => expect(session.plan.value?.years).toHaveLength(5));
    expect(field.getAttribute('aria-invalid')).toBeNull();
  });

  it('shares are typed in per cent and kept as shares', async () => {
    const { session } = await planShown();
    give(labelled('go back to stock'), '20');
    await until(() => expect(session.given.value.recovered).toBe(0.2));
    expect(labelled<HTMLInputElement>('go back to stock').value).toBe('20');
  });

  it('takes batteries on order, and lets them be taken out again', async () => {
    const { session } = await planShown();
    const order = [...pane.querySelectorAll('fieldset.list')].find((each) =>
      each.textContent?.startsWith('On order'),
    )!;
    const [month, count] = order.querySelectorAll('input');
    const add = order.querySelector<HTMLButtonElement>('button[type=submit]')!;
    month!.value = '2027-13';
    count!.value = '60';
    add.click();
    await until(() =>
      expect(order.textContent).toContain('the setting "Month" is ""; allowed is a month such as 2027-03'),
    );
    month!.value = '2026-09';
    add.click();
    await until(() => expect(session.given.value.onOrder).toEqual([{ month: '2026-09', count: 60 }]));
    await until(() => expect(session.plan.value!.years[0]!.order.onOrder).toBe(60));
    order.querySelector<HTMLButtonElement>('[aria-label="Take out: 2026-09: 60"]')!.click();
    await until(() => expect(session.given.value.onOrder).toBeUndefined());
  });

  it('says from which cost of a failure on a planned age pays', async () => {
    const { session } = await planShown({ recordsSince: '2020-01-01', money: { unitPrice: 400 } });
    give(labelled('Batteries are renewed'), 'age');
    await until(() => expect(session.plan.value?.plannedAge).toBe(48));
    await until(() => expect(text()).toMatch(/Renewal at 48 months pays only if .* more than [\d,]+ beside/));
    give(labelled('Batteries are renewed'), 'leastCost');
    await until(() => expect(text()).toContain('enter both under "Price and money"'));
    expect(text().match(/age that costs least is found/g)).toHaveLength(1);
    expect(text()).not.toContain('leastCost');
    expect(session.plan.value).toBeUndefined();
  });

  it('shows the years with their sum, and the chance of a funded number', async () => {
    const { session } = await planShown({ recordsSince: '2020-01-01', leadMonths: 9 });
    const rows = cellsOf(caption('By fiscal year, term by term')!);
    const plan = session.plan.value!;
    expect(rows.slice(1, -1).map(([label]) => label)).toEqual(plan.years.map(({ label }) => label));
    const column = rows[0]!.indexOf('To order');
    expect(Number(rows.at(-1)![column])).toBe(
      rows.slice(1, -1).reduce((sum, cells) => sum + Number(cells[column]), 0),
    );
    expect(rows[2]!.join(' ')).toContain('late: order now');
    give(labelled('Batteries funded'), '0');
    await until(() => expect(text()).toContain('hardly ever enough'));
    give(labelled('Batteries funded'), '9999');
    await until(() =>
      expect(text()).toContain('Chance that it is enough: over 99 %. Batteries likely missing: 0.0.'),
    );
  });

  it('every picture has its numbers in a table, and parts say that bands do not add up', async () => {
    const { session } = await planShown({ recordsSince: '2020-01-01', money: { unitPrice: 400 } });
    const pictures = [...pane.querySelectorAll('figure')];
    expect(pictures).toHaveLength(2);
    const [months] = pictures.map((figure) => figure.querySelector('table')!.tBodies[0]!.rows.length);
    expect(months).toBe(session.plan.value!.months.length);
    for (const name of ['By site', 'By type']) {
      const note = caption(name)!.closest('.wideTable')!.nextElementSibling;
      expect(note?.textContent).toContain('Low and high do not add up');
    }
  });

  it('shows money to the cent, so that its columns add up by hand', async () => {
    await planShown({ recordsSince: '2020-01-01', money: { unitPrice: 449.99, rise: 0.0333, labour: 7.77 } });
    const cents = (cell: string): number => Math.round(Number(cell.replace(/,/g, '')) * 100);
    for (const name of ['The request', 'By fiscal year, term by term']) {
      const net = cellsOf(caption(name)!).map((cells) => cells.at(-1)!);
      const [total, ...years] = net.slice(1).reverse().map(cents);
      expect(net.at(-1)).toMatch(/\.\d\d$/);
      expect(years.reduce((sum, each) => sum + each, 0)).toBe(total);
    }
  });

  it('says of each folded part of the inputs what holds in it', async () => {
    await planShown({
      recordsSince: '2020-01-01',
      money: { unitPrice: 450, currency: 'crowns', rise: -0.025 },
      policy: { age: 60 },
      wholeSets: true,
      groupBy: 'site',
      leadMonths: 1,
      matesReused: 0.3,
      onOrder: [{ month: '2026-09', count: 60 }],
    });
    const states = [...pane.querySelectorAll('.planInputs .state')].map(({ textContent }) => textContent);
    expect(states).toEqual([
      'the expected number, 3 fiscal years from January',
      '450.00 crowns each, falling 2.5 % a year',
      '5 usable, 0 to hold at year end, 60 on order',
      'delivery takes 1 month, 0 more for safety',
      'at 60 months, whole sets, life apart for each site',
      '30 % of good mates',
      'none',
    ]);
  });

  it('keeps a plan beside the next one, with the difference', async () => {
    const { session } = await planShown({ recordsSince: '2020-01-01', money: { unitPrice: 400 } });
    button('Keep it for comparing').click();
    await until(() => expect(text()).toContain('"Plan A" is kept.'));
    give(labelled('Stock to hold'), '25');
    await until(() => expect(caption('Plan A beside the plan as it is now')).toBeDefined());
    await until(() => expect(session.plan.value?.settings.stockTarget).toBe(25));
    const total = cellsOf(caption('Plan A beside the plan as it is now')!).at(-1)!;
    expect(Number(total[2]) - Number(total[1])).toBe(Number(total[3]!.replace('+', '')));
    expect(total[3]).toMatch(/^\+2\d$/);
    button('Drop the kept plan').click();
    await until(() => expect(session.kept.value).toBeUndefined());
  });

  it('every control has a name', async () => {
    await planShown();
    const nameless = [...pane.querySelectorAll('input, select')].filter(
      (control) => !(control as HTMLInputElement).labels?.length,
    );
    expect(nameless.map((each) => each.outerHTML)).toEqual([]);
  });
});

describe('writing the forecast', () => {
  it('asks where to write, then adds the sheets under free names', async () => {
    const { session, done } = await planShown();
    button('Write forecast sheet').click();
    await until(() => expect(text()).toContain('Where shall Crankbook write?'));
    button('Into this workbook').click();
    await until(() => expect(session.notice.value?.text).toContain('Written: Forecast, Forecast units'));
    button('Write forecast sheet').click();
    await until(() => expect(done.added).toHaveLength(2));
    expect(done.added.map(([first]) => first!.name)).toEqual(['Forecast', 'Forecast (2)']);
    const head = JSON.stringify(done.added[0]![0]!.rows.slice(0, 8));
    expect(head).toMatch(/Rows of the inventory, as they were read, SHA-256 [0-9a-f]{64}/);
    expect(head).toContain('inventory.xlsx, sheet Batteries');
  });

  it('writes a workbook of its own where that is wanted, and nothing where it is declined', async () => {
    const { session, done } = await planShown();
    button('Write forecast sheet').click();
    await until(() => button('Write nothing now'));
    button('Write nothing now').click();
    await until(() => expect(text()).not.toContain('Where shall Crankbook write?'));
    expect([done.added.length, done.workbooks.length]).toEqual([0, 0]);
    button('Write forecast sheet').click();
    await until(() => button('Into a workbook of its own'));
    button('Into a workbook of its own').click();
    await until(() => expect(session.notice.value?.text).toContain('inventory forecast.xlsx'));
    expect(done.workbooks[0]!.sheets[0]!.name).toBe('Forecast');
    expect(done.added).toHaveLength(0);
  });
});
