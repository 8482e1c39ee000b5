import { expect } from 'vitest';
import { readAgain, readHere } from '../../../taskpane/actions/readInventory.ts';
import { mountPane } from '../../../taskpane/pane.tsx';
import type { MemorySheet } from '../memoryHost.ts';
import { paneSession } from '../paneSession.ts';
import { benchSheet } from './benchSheets.ts';
import { paneWindow } from './paneWindow.ts';

/** The fields of the readings, by a piece of their labels. */
export const LABELS = {
  restVolts: 'Rest voltage',
  hoursAtRest: 'Hours at rest',
  celsius: 'Battery temperature',
  reading: 'Cranking reading',
  loadVolts: 'or load-test end',
  least: 'Least accepted',
} as const;
export type Reads = Partial<Record<keyof typeof LABELS, string>>;

export const FINE = { case: 'no', posts: 'no', heat: 'no', alone: 'yes' } as const;
export const GOOD: Reads = {
  restVolts: '12.8',
  hoursAtRest: '8',
  celsius: '15',
  reading: '1100',
  least: '980',
};

/** Lets what follows from the last event be drawn. */
export const drawn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** The bench in the test window, with an inventory of six batteries, and what a clerk does there. */
export function benchWindow() {
  const pane = paneWindow();
  const { element, text, until, give } = pane;
  const atBench = async (sheet: MemorySheet = benchSheet) => {
    const made = paneSession([sheet]);
    await readHere(made.session);
    made.session.given.value = { sites: { Kaldmoor: { coldest: -33, average: 1 } } };
    await readAgain(made.session);
    made.session.view.value = 'bench';
    mountPane(element(), made.session);
    await until(() => expect(text()).toContain('Look first'));
    return made;
  };
  const radio = (ask: string, value: 'yes' | 'no'): HTMLInputElement | null =>
    element().querySelector<HTMLInputElement>(`input[name=bench-${ask}][value=${value}]`);
  const say = async (answers: Readonly<Record<string, 'yes' | 'no' | undefined>>): Promise<void> => {
    for (const [ask, value] of Object.entries(answers)) {
      if (value !== undefined) radio(ask, value)?.click();
      await drawn();
    }
  };
  const read = async (reads: Reads): Promise<void> => {
    for (const [name, value] of Object.entries(reads)) give(LABELS[name as keyof Reads], value);
    await drawn();
  };
  const name = async (serial: string): Promise<void> => {
    give('Serial, or the text', serial);
    await until(() => expect(text()).not.toContain('Looking up'));
    await drawn();
  };
  const word = (): string | undefined => element().querySelector('.verdict .word')?.textContent ?? undefined;
  return { ...pane, atBench, radio, say, read, name, word };
}
