import type { Signal } from '@preact/signals';
import { signal } from '@preact/signals';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import type { Day } from '../../src/basics/calendar.ts';
import type { CellDescription } from '../host/workbook/describing.ts';
import type { SaveAs, Saved } from '../host/workbook/builtInHost.ts';
import type { Session } from '../session.ts';
import type { PageWorkbook } from './pageWorkbook.ts';

/** What the page has to say; `more` is a list of sentences that belong to it. */
export type PageMessage = {
  readonly kind: 'done' | 'problem';
  readonly text: string;
  readonly more?: readonly string[];
};

/** What the page asks before it goes on. */
export type PageQuestion =
  | { readonly kind: 'save' }
  | { readonly kind: 'losses'; readonly saved: Saved; readonly as: SaveAs }
  | { readonly kind: 'discard'; readonly goOn: () => void };

/** What the pane does with a file that was opened: the day and the settings that came with it, where any did. */
export type AfterOpening = (asOf?: Day, settings?: GivenSettings) => Promise<void>;

/** What the page knows, beside what the pane does. */
export type PageState = {
  readonly workbook: Signal<PageWorkbook | undefined>;
  readonly fileName: Signal<string | undefined>;
  readonly changed: Signal<boolean>;
  /** Opening or saving that is under way. */
  readonly underway: Session['underway'];
  readonly message: Signal<PageMessage | undefined>;
  readonly question: Signal<PageQuestion | undefined>;
  readonly cell: Signal<CellDescription | undefined>;
  /** What the pane does once another file is open, counted on a day of its own where it has one. */
  readonly afterOpening: Signal<AfterOpening | undefined>;
};

/** A page on which nothing has been opened. */
export function newPageState(): PageState {
  return {
    workbook: signal<PageWorkbook | undefined>(undefined),
    fileName: signal<string | undefined>(undefined),
    changed: signal(false),
    underway: signal(undefined),
    message: signal<PageMessage | undefined>(undefined),
    question: signal<PageQuestion | undefined>(undefined),
    cell: signal<CellDescription | undefined>(undefined),
    afterOpening: signal<AfterOpening | undefined>(undefined),
  };
}
