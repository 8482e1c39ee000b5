import { webcrypto } from 'node:crypto';
import { render } from 'preact';
import { afterEach, beforeEach, vi } from 'vitest';

/** A pane in the test window, and what a user sees of it. */
export type PaneWindow = {
  readonly element: () => HTMLElement;
  readonly text: () => string;
  readonly until: (holds: () => void) => Promise<void>;
  /** The control that a label names, by a piece of the label's text. */
  readonly labelled: <E extends HTMLElement>(label: string) => E;
  readonly button: (name: string) => HTMLButtonElement;
  readonly give: (label: string, value: string) => void;
};

/** Sets up an element for the pane before each test of a file, and takes it away after. */
export function paneWindow(): PaneWindow {
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
  const labelled = <E extends HTMLElement>(label: string): E => {
    const found = [...pane.querySelectorAll('label')].find((each) => each.textContent?.includes(label));
    const control = found?.htmlFor
      ? document.getElementById(found.htmlFor)
      : found?.querySelector('input, select');
    if (!control) throw new Error(`no control is labelled ${label}`);
    return control as E;
  };
  return {
    element: () => pane,
    text: () => pane.textContent ?? '',
    until: (holds) => vi.waitFor(holds, { timeout: 30_000, interval: 10 }),
    labelled,
    button: (name) => {
      const found = [...pane.querySelectorAll('button')].find((each) => each.textContent?.includes(name));
      if (found === undefined) throw new Error(`no button is named ${name}`);
      return found;
    },
    give: (label, value) => {
      const control = labelled<HTMLInputElement | HTMLSelectElement>(label);
      control.value = value;
      control.dispatchEvent(new Event('input', { bubbles: true }));
      control.dispatchEvent(new Event('change', { bubbles: true }));
    },
  };
}
