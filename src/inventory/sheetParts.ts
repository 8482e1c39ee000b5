import { isoDay, LAST_DAY } from '../basics/calendar.ts';
import type { Block } from './block.ts';
import { cellText, isBlank, shownCell } from './cells.ts';
import type { Field } from './fields.ts';
import { FIELDS } from './fields.ts';
import type { Header } from './findHeader.ts';
import type { ColumnMatch, NamedColumns } from './matchColumns.ts';
import type { RowKinds } from './rowKinds.ts';

/** How a column came to its field: the user named it, its head says so, or only its cells look like it. */
export type ColumnSource = 'named' | 'head' | 'cells';

/** One column of a sheet: its head, the field that it was taken for, and what stands in it. */
export type SheetColumn = {
  /** Its place in the block that was read, from 0. */
  readonly column: number;
  readonly head: string;
  readonly field?: Field;
  readonly source?: ColumnSource;
  /** Two values that differ, where there are two. */
  readonly samples: readonly string[];
};

/** How a sheet was taken apart; row numbers are the sheet's own. */
export type SheetParts = {
  readonly titleRows: number;
  readonly headerRows: readonly [first: number, last: number];
  /** First and last row under the header. */
  readonly dataRows: readonly [first: number, last: number];
  readonly siteHeadings: readonly string[];
  readonly columns: readonly SheetColumn[];
};

const SAMPLES = 2;

/** What was recognised of a sheet: titles, header, data rows, site headings, and each column with two of its values. */
export function sheetParts(
  block: Block,
  header: Header,
  match: ColumnMatch,
  kinds: RowKinds,
  named: NamedColumns,
): SheetParts {
  return {
    titleRows: header.first,
    headerRows: [block.rowNumber(header.first), block.rowNumber(header.last)],
    dataRows: [block.rowNumber(header.dataFrom), block.rowNumber(block.rows.length - 1)],
    siteHeadings: [...new Set(kinds.headings.filter((heading) => heading !== ''))],
    columns: columnsOf(block, header, match, kinds, named),
  };
}

function columnsOf(
  block: Block,
  header: Header,
  { at, guessed }: ColumnMatch,
  { batteries }: RowKinds,
  named: NamedColumns,
): readonly SheetColumn[] {
  const fieldAt = new Map([...at].map(([field, column]) => [column, field]));
  const byCells = new Set(guessed.map(({ field }) => field));
  const sourceOf = (field: Field): ColumnSource =>
    (named[field] ?? '') !== '' ? 'named' : byCells.has(field) ? 'cells' : 'head';
  return header.texts.flatMap((head, column) => {
    const field = fieldAt.get(column);
    const samples = samplesOf(block, batteries, column);
    if (head === '' && field === undefined) return [];
    return [{ column, head, samples, ...(field === undefined ? {} : { field, source: sourceOf(field) }) }];
  });
}

function samplesOf(block: Block, rows: readonly number[], column: number): readonly string[] {
  const found = new Set<string>();
  for (const row of rows) {
    const cell = block.rows[row]![column];
    if (isBlank(cell)) continue;
    found.add(sampleText(cell, block.isDateCell(row, column)));
    if (found.size === SAMPLES) break;
  }
  return [...found];
}

function sampleText(cell: Block['rows'][number][number], isDate: boolean): string {
  if (typeof cell === 'number' && isDate && cell > 0 && cell <= LAST_DAY) return isoDay(Math.floor(cell));
  return typeof cell === 'string' ? cellText(cell) : shownCell(cell);
}

/** The heads that the user can name for a field: those that no other column has too. */
export function namableHeads({ columns }: SheetParts): readonly string[] {
  const heads = columns.map(({ head }) => head).filter((head) => head !== '');
  return heads.filter((head, index) => heads.indexOf(head) === index);
}

/** The fields in the order in which the pane shows them: those that have a column first. */
export function fieldsShown({ columns }: SheetParts): readonly Field[] {
  const taken = new Set(columns.map(({ field }) => field));
  return [...FIELDS.filter((field) => taken.has(field)), ...FIELDS.filter((field) => !taken.has(field))];
}
