import type { Block, Chart, Format, Meaning, NamedCell, Sheet, SheetCell, Span, Table } from './sheet.ts';
import { address } from './sheet.ts';
import { shownText } from './shownText.ts';

/** A sheet while it is being written, row after row. */
export type Draft = {
  readonly rows: (SheetCell | null)[][];
  readonly names: NamedCell[];
  readonly tables: Table[];
  readonly charts: Chart[];
  readonly spans: Span[];
  readonly pageBreaks: number[];
};

/** An empty sheet to write on. */
export function newDraft(): Draft {
  return { rows: [], names: [], tables: [], charts: [], spans: [], pageBreaks: [] };
}

/** A cell that holds a value. */
export function cell(
  value: SheetCell['value'],
  meaning: Meaning = 'body',
  format: Format = 'plain',
): SheetCell {
  if (typeof value !== 'string') return { value, meaning, format };
  return { value: shownText(value), meaning, format: 'text' };
}

/** A cell that holds a formula and the value it has for today's assumptions. */
export function formula(
  text: string,
  value: SheetCell['value'],
  format: Format,
  meaning: Meaning = 'body',
): SheetCell {
  return { value, formula: text, meaning, format };
}

/** Writes a row of cells below what is there; answers its row number. */
export function addRow(draft: Draft, cells: readonly (SheetCell | null)[]): number {
  return draft.rows.push([...cells]) - 1;
}

/** Writes the cells of a row that was left empty before. */
export function placeRow(draft: Draft, row: number, cells: readonly (SheetCell | null)[]): void {
  draft.rows[row] = [...cells];
}

/** Leaves one row empty, or some. */
export function addGap(draft: Draft, rows = 1): void {
  for (let row = 0; row < rows; row += 1) draft.rows.push([]);
}

/** Writes the heads of a block's columns. */
export function addHeads(draft: Draft, heads: readonly string[]): number {
  return addRow(
    draft,
    heads.map((head) => cell(head, 'columnHead')),
  );
}

/** Begins a new printed page with the next row. */
export function addPageBreak(draft: Draft): void {
  draft.pageBreaks.push(draft.rows.length);
}

// Rows of usual height on a landscape page of A4 or letter size at the widths of the forecast.
const PAGE_ROWS = 38;

/** Begins a new printed page where the rows to come would be split by the end of this one. */
export function keepTogether(draft: Draft, rows: number): void {
  const begun = draft.pageBreaks[draft.pageBreaks.length - 1] ?? 0;
  const used = (draft.rows.length - begun) % PAGE_ROWS;
  if (used > 0 && used + rows > PAGE_ROWS) addPageBreak(draft);
}

/** Writes a sentence across some columns. */
export function addSentence(draft: Draft, text: string, meaning: Meaning, columns: number): number {
  const row = addRow(draft, [cell(text, meaning)]);
  draft.spans.push({ row, column: 0, columns });
  return row;
}

/** Gives a cell of the sheet a name that formulas can use. */
export function nameCell(draft: Draft, name: string, row: number, column: number): void {
  draft.names.push({ name, row, column });
}

/** A total: the sum of a column of a block, with the value that it has for today's assumptions. */
export function totalCell(
  { row, rows }: Omit<Block, 'column' | 'columns'>,
  column: number,
  value: number,
  format: Format,
): SheetCell {
  const rounded = Number(value.toFixed(6));
  return formula(sumOf({ row, column, rows }), rounded, format, 'total');
}

/** The formula that adds up a column of a block. */
export function sumOf({ row, column, rows }: Omit<Block, 'columns'>): string {
  return `SUM(${address(row, column)}:${address(row + rows - 1, column)})`;
}

/** The finished sheet. */
export function finishedSheet(
  draft: Draft,
  name: string,
  widths: readonly number[],
  rest: Pick<Sheet, 'frozenRows' | 'repeatedRows' | 'printedColumns' | 'dateShown'>,
): Sheet {
  return { name, widths, ...draft, ...rest };
}
