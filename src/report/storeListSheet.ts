import type { NamedPlaces } from '../inventory/frost.ts';
import type { StoreLimits, StoreList } from '../inventory/storeList.ts';
import { storeList } from '../inventory/storeList.ts';
import { fittedWidths } from './columnWidths.ts';
import type { Draft } from './draft.ts';
import {
  addGap,
  addHeads,
  addPageBreak,
  addRow,
  addSentence,
  cell,
  finishedSheet,
  newDraft,
} from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { DateShown, Sheet } from './sheet.ts';
import { shownDay } from './shownDay.ts';
import { STORE_BLOCKS } from './storeBlocks.ts';
import { STORE_HEADS } from './storeRow.ts';

/** What a store list is written from; a plan is not needed. */
export type StoreFacts = Pick<ReportFacts, 'batteries' | 'asOf' | 'madeBy' | 'fileName' | 'tab'> & {
  readonly settings: {
    readonly sites: NamedPlaces;
    readonly store: StoreLimits;
    readonly dateShown: DateShown;
  };
};

const COLUMNS = STORE_HEADS.length;

/** Least and most characters of each column: serial, site, place, type, three dates, volts, reading, what to do, done. */
const WIDTHS: readonly (readonly [number, number])[] = [
  ...([
    [9, 16],
    [8, 15],
    [7, 12],
    [8, 20],
  ] as const),
  ...Array.from({ length: 3 }, () => [11, 12] as const),
  ...([
    [7, 8],
    [8, 9],
    [66, 66],
    [6, 6],
  ] as const),
];

/**
 * The storekeeper's sheet: what to charge, issue, match to sets, judge, carry in and look at next.
 * @param facts  the batteries and how they are to be sorted
 * @param name   name of the sheet
 */
export function storeListSheet(facts: StoreFacts, name: string): Sheet {
  const { batteries, asOf, settings } = facts;
  const draft = newDraft();
  const list = storeList(batteries, asOf, settings.store, settings.sites);
  const heads = addHead(draft, facts, list);
  for (const block of STORE_BLOCKS) addBlock(draft, block(list, settings.store));
  return finishedSheet(draft, name, fittedWidths(draft.rows, WIDTHS), {
    frozenRows: heads + 1,
    repeatedRows: [heads, heads],
    dateShown: settings.dateShown,
  });
}

function addHead(
  draft: Draft,
  { asOf, fileName, tab, madeBy, settings }: StoreFacts,
  { inStock }: StoreList,
): number {
  const count = inStock === 1 ? '1 battery' : `${inStock} batteries`;
  addSentence(draft, 'Store list', 'title', COLUMNS);
  addSentence(
    draft,
    `As of ${shownDay(asOf, settings.dateShown)}, from ${fileName}, sheet ${tab}; ${count} in stock`,
    'subtitle',
    COLUMNS,
  );
  addSentence(
    draft,
    `Made by ${madeBy}. A battery that was removed counts as gone: give one that is still here the status "in stock".`,
    'note',
    COLUMNS,
  );
  return addHeads(draft, STORE_HEADS);
}

function addBlock(draft: Draft, block: ReturnType<(typeof STORE_BLOCKS)[number]>): void {
  if (block.rows.length > 0) keepOnPage(draft, block.rows.length + ROWS_ABOVE);
  addGap(draft);
  addSentence(draft, block.title, 'heading', COLUMNS);
  for (const text of block.notes) addSentence(draft, text, 'note', COLUMNS);
  if (block.rows.length === 0) addRow(draft, [cell(block.none, 'label')]);
  else for (const caution of block.cautions) addSentence(draft, caution, 'caution', COLUMNS);
  for (const row of block.rows) addRow(draft, row);
}

/** Gap, title, note and cautions above the rows of a list. */
const ROWS_ABOVE = 5;

// Rows of usual height on a landscape page of A4 or letter size below the repeated heads.
const PAGE_ROWS = 38;

// A list that does not fit below what its page holds begins a page of its own: it can be handed out alone.
function keepOnPage(draft: Draft, rows: number): void {
  const used = draft.rows.length - (draft.pageBreaks.at(-1) ?? 0);
  if (used + rows > PAGE_ROWS && draft.rows.length > FIRST_ROWS) addPageBreak(draft);
}

/** Rows above the first list. */
const FIRST_ROWS = 4;
