import { describe, expect, it } from 'vitest';
import type { GivenSettings } from '../../../src/inventory/settings.ts';
import { readAgain, readHere } from '../../../taskpane/actions/readInventory.ts';
import type { MemorySheet } from '../memoryHost.ts';
import { mountPane } from '../../../taskpane/pane.tsx';
import { inventedSheet, paneSession } from '../paneSession.ts';
import { paneWindow } from './paneWindow.ts';

const { element, text, until, labelled, button, give } = paneWindow();

async function life(given: GivenSettings = {}, sheet: MemorySheet = inventedSheet()) {
  const made = paneSession([sheet]);
  made.session.view.value = 'life';
  await readHere(made.session);
  made.session.given.value = given;
  await readAgain(made.session);
  mountPane(element(), made.session);
  return made;
}

const SINCE = { recordsSince: '2020-01-01' } as const;

async function lifeShown(given: GivenSettings = SINCE, sheet?: MemorySheet) {
  const made = await life(given, sheet);
  await until(() => expect(text()).toContain('How long they last here'));
  return made;
}

/** The invented inventory with other texts as causes, by how often each comes. */
function withCauses(...causes: readonly string[]): MemorySheet {
  const sheet = inventedSheet();
  let removed = 0;
  const rows = sheet.rows.map((row) =>
    row[5] === 'failed' ? [...row.slice(0, 5), causes[removed++ % causes.length]!, row[6]!] : row,
  );
  return { ...sheet, rows };
}

/** The invented inventory with its first removals only. */
function withRemovals(count: number): MemorySheet {
  const sheet = inventedSheet();
  let removed = 0;
  const rows = sheet.rows.filter((row) => row[6] !== 'removed' || ++removed <= count);
  return { ...sheet, rows };
}

const causesShown = (): string[] =>
  [...element().querySelectorAll('.causes li')].map((each) => each.querySelector('span')!.textContent!);
const failures = (): number => Number(/(\d+) failures among/.exec(text())![1]);

describe('the first question of Life', () => {
  it('comes after an inventory', async () => {
    const { session } = paneSession();
    session.view.value = 'life';
    mountPane(element(), session);
    await until(() => expect(text()).toContain('Nothing has been read yet'));
    button('Go to the inventory').click();
    expect(session.view.value).toBe('inventory');
  });

  it('stands alone until it is answered: nothing is fitted before', async () => {
    const { session } = await life();
    await until(() => expect(text()).toContain('Since when has every removal been written down?'));
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(session.life.value).toBeUndefined();
    expect(text()).not.toContain('Why removed');
    labelled<HTMLInputElement>('Since a day').click();
    await until(() => labelled('The day'));
    labelled<HTMLInputElement>('The day').value = '2020-01-01';
    button('Take this answer').click();
    await until(() => expect(text()).toContain('How long they last here'));
    expect(text()).toContain('as you said');
    expect(session.given.value.recordsSince).toBe('2020-01-01');
  });

  it.each([
    ['never', inventedSheet()],
    ['2020-01-01', withRemovals(0)],
  ])(
    'answered with %s and nothing removed to go by: the rule of thumb, and the steady question',
    async (recordsSince, sheet) => {
      const { session } = await lifeShown({ recordsSince }, sheet);
      expect(text()).toContain('This sheet shows only what is still here');
      expect(text()).toContain('the rule of thumb carries the answer alone');
      expect(failures()).toBe(0);
      expect(text()).not.toContain('From ages alone');
      labelled<HTMLInputElement>('Yes, about the same').click();
      await until(() =>
        expect(text()).toMatch(/From ages alone: half have left by \d+ months \(\d+ to \d+\)/),
      );
      expect(text()).toContain('An estimate from ages alone. It is not used in the plan.');
      const a = Math.round(session.life.value!.steady!.purchasesAYear);
      expect(text()).toContain(`buying about ${a} a year`);
      give('Batteries bought in a year', String(a));
      await until(() => expect(text()).toContain('What was bought agrees with that'));
      give('Batteries bought in a year', String(3 * a));
      await until(() => expect(text()).toContain('Do not use this estimate'));
    },
  );
});

describe('why removed', () => {
  it('shows each text once with its count, and takes another meaning', async () => {
    const { session } = await lifeShown(SINCE, withCauses('failed', 'vehicle sold', 'failed', 'odd noise'));
    expect(causesShown()).toEqual([
      'failed, 14 rows (a guess)',
      expect.stringMatching(/^vehicle sold, [67] rows/),
      expect.stringMatching(/^odd noise, [67] rows/),
    ]);
    const before = failures();
    give('odd noise', 'failed');
    await until(() => expect(failures()).toBe(before + 6));
    expect(session.given.value.causes).toEqual({ 'odd noise': 'failed' });
    expect(causesShown()[2]).not.toContain('a guess');
    give('odd noise', 'good');
    await until(() => expect(failures()).toBe(before));
  });

  it('tells both answers where unsaid causes move them by more than a tenth', async () => {
    await lifeShown(SINCE, withCauses('failed', 'see log', 'see log'));
    expect(text()).toMatch(
      /Removals without a stated reason count as taken out good: half gone by \d+ months\. Had they all failed, it would be \d+/,
    );
    give('see log', 'failed');
    await until(() => expect(text()).not.toContain('Had they all failed'));
  });
});

describe('how much there is to go by', () => {
  it('is said where failures are few, and the rule of thumb may be replaced', async () => {
    const { session } = await lifeShown(SINCE, withRemovals(3));
    expect(failures()).toBe(3);
    expect(text()).toContain('There are few failures on record, so a rule of thumb speaks with them.');
    const before = session.life.value!.life.halfGone.best;
    expect(labelled<HTMLInputElement>('Half gone by, months').value).toBe('54');
    expect(labelled<HTMLInputElement>('One in ten gone by, months').value).toBe('25');
    labelled<HTMLInputElement>('Half gone by, months').value = '90';
    labelled<HTMLInputElement>('One in ten gone by, months').value = '60';
    labelled<HTMLInputElement>('I am sure of this').checked = true;
    button('Take this rule').click();
    // Three failures among many young batteries speak for long lives; who is sure of 90 months is nearer to them.
    await until(() => expect(Math.abs(session.life.value!.life.halfGone.best - 90)).toBeLessThan(5));
    expect(Math.abs(before - 90)).toBeGreaterThan(5);
    expect(session.given.value.prior).toMatchObject({ medianMonths: expect.closeTo(90, 1) });
    button('Back to the usual rule').click();
    await until(() => expect(session.life.value!.life.halfGone.best).toBeCloseTo(before, 6));
  });

  it('is refused in words where a rule can’t be one', async () => {
    const { session } = await lifeShown();
    labelled<HTMLInputElement>('Half gone by, months').value = '20';
    labelled<HTMLInputElement>('One in ten gone by, months').value = '30';
    button('Take this rule').click();
    await until(() => expect(labelled('Half gone by, months').getAttribute('aria-invalid')).toBe('true'));
    expect(session.given.value.prior).toBeUndefined();
  });
});

describe('groups, and what comes of Life', () => {
  it('says whether types and sites differ, with their numbers', async () => {
    await lifeShown();
    expect(text()).toMatch(/By type: .*(They differ|Nothing shows that they differ|Too few failures)/);
    const captions = [...element().querySelectorAll('caption')].map((each) => each.textContent);
    expect(captions).toEqual(expect.arrayContaining(['By type', 'By site']));
    expect(text()).toContain('No lot, maker, site or vehicle stands out.');
  });

  it('is used for planning', async () => {
    const { session } = await lifeShown();
    button('each site apart').click();
    expect(session.given.value.groupBy).toBe('site');
    expect(session.view.value).toBe('plan');
  });

  it('lists no claim where none falls within the warranty, and refuses terms that are none', async () => {
    const { session } = await lifeShown();
    give('Warranty, months', '1');
    give('Days within which', '60');
    button('List the claims').click();
    await until(() => expect(text()).toContain('No failure on record falls within this warranty.'));
    expect(text()).toContain('0 to claim');
    give('Warranty, months', '60');
    button('List the claims').click();
    await until(() => expect(text()).toMatch(/\d+ to claim, [1-9]\d* too late/));
    give('Warranty, months', '9999');
    element()
      .querySelectorAll('form')
      .forEach((form) => form.setAttribute('novalidate', ''));
    button('List the claims').click();
    await until(() => expect(session.notice.value?.text).toContain('240'));
  });
});
