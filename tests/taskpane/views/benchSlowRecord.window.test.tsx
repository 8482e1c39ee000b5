import { describe, expect, it } from 'vitest';
import { readAgain, readHere } from '../../../taskpane/actions/readInventory.ts';
import { mountPane } from '../../../taskpane/pane.tsx';
import { paneSession } from '../paneSession.ts';
import { benchSheet } from './benchSheets.ts';
import { paneWindow } from './paneWindow.ts';

const { element, text, until, button, give } = paneWindow();

const LABELS = {
  restVolts: 'Rest voltage',
  hoursAtRest: 'Hours at rest',
  celsius: 'Battery temperature',
  reading: 'Cranking reading',
  loadVolts: 'or load-test end',
  least: 'Least accepted',
} as const;
type Reads = Partial<Record<keyof typeof LABELS, string>>;

async function atBench() {
  const made = paneSession([benchSheet]);
  await readHere(made.session);
  made.session.given.value = { sites: { Kaldmoor: { coldest: -33, average: 1 } } };
  await readAgain(made.session);
  made.session.view.value = 'bench';
  mountPane(element(), made.session);
  await until(() => expect(text()).toContain('Look first'));
  return made;
}

const radio = (ask: string, value: 'yes' | 'no'): HTMLInputElement | null =>
  element().querySelector<HTMLInputElement>(`input[name=bench-${ask}][value=${value}]`);

/** Lets what follows from the last event be drawn. */
const drawn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

async function say(answers: Readonly<Record<string, 'yes' | 'no' | undefined>>): Promise<void> {
  for (const [ask, value] of Object.entries(answers)) {
    if (value !== undefined) radio(ask, value)?.click();
    await drawn();
  }
}

async function read(reads: Reads): Promise<void> {
  for (const [name, value] of Object.entries(reads)) give(LABELS[name as keyof Reads], value);
  await drawn();
}

const word = (): string | undefined => element().querySelector('.verdict .word')?.textContent ?? undefined;
const FINE = { case: 'no', posts: 'no', heat: 'no', alone: 'yes' } as const;
const GOOD: Reads = { restVolts: '12.8', hoursAtRest: '8', celsius: '15', reading: '1100', least: '980' };

async function name(serial: string): Promise<void> {
  give('Serial, or the text', serial);
  await until(() => expect(text()).not.toContain('Looking up'));
  await drawn();
}

describe('a record that takes its time', () => {
  /** A workbook that is slow to write: the row stands once it is let. */
  async function slowBench() {
    const made = await atBench();
    made.session.home.value = 'here';
    const { appendRow } = made.session.host;
    let write = (): void => undefined;
    const allowed = new Promise<void>((resolve) => (write = resolve));
    Object.assign(made.session.host, {
      appendRow: async (...asked: Parameters<typeof appendRow>) => {
        await allowed;
        return appendRow(...asked);
      },
    });
    await say(FINE);
    await name('NF2001');
    await read(GOOD);
    return { ...made, write };
  }

  it('is written once, however often its button is pressed', async () => {
    const { session, done, write } = await slowBench();
    for (let press = 0; press < 3; press += 1) {
      button('Record this test').click();
      await drawn();
    }
    write();
    await until(() => expect(session.bench.recorded.value.tests).toBe(1));
    await drawn();
    expect(done.appended).toHaveLength(1);
    expect(button('On record').getAttribute('aria-disabled')).toBe('true');
  });

  it('says nothing of the battery that came after it', async () => {
    const { session, done, write } = await slowBench();
    button('Record this test').click();
    await drawn();
    button('Next battery').click();
    await drawn();
    await say(FINE);
    await name('NF2002');
    await read({ ...GOOD, reading: '300' });
    write();
    await until(() => expect(session.bench.recorded.value.tests).toBe(1));
    await drawn();
    expect(word()).not.toBe('Serviceable');
    expect(button('Record this test').getAttribute('aria-disabled')).toBe('false');
    expect(done.appended.map(({ cells }) => cells[1])).toEqual(['NF2001']);
  });

  it('does not stand for readings that were changed meanwhile', async () => {
    const { session, write } = await slowBench();
    button('Record this test').click();
    await drawn();
    await read({ reading: '300' });
    write();
    await until(() => expect(session.bench.recorded.value.tests).toBe(1));
    await drawn();
    expect(word()).not.toBe('Serviceable');
    expect(button('Record this test').getAttribute('aria-disabled')).toBe('false');
  });
});

describe('a text that names no battery', () => {
  it.each(['NF2001\u001d', ']C1NF2001', '=1+1'])('%j is not put on record', async (scanned) => {
    const { session, done } = await atBench();
    session.home.value = 'here';
    await say(FINE);
    await name(scanned);
    await read(GOOD);
    button('Record this test').click();
    await drawn();
    expect(done.appended).toEqual([]);
    expect(document.activeElement?.closest('.identity')).not.toBeNull();
  });
});
