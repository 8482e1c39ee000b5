import type { Block, Chart, Format, Meaning, NamedCell, Sheet, SheetCell, Span, Table } from './sheet.ts';
import { address, fixedBlock } from './sheet.ts';
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

/** Leaves one row empty. */
export function addGap(draft: Draft): void {
  draft.rows.push([]);
}

/** Begins a new printed page with the next row. */
export function addPageBreak(draft: Draft): void {
  draft.pageBreaks.push(draft.rows.length);
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

/** The address of one cell, held fast. */
export function fixed(row: number, column: number): string {
  return fixedBlock({ row, column, rows: 1, columns: 1 }).split(':')[0]!;
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
  rest: Pick<Sheet, 'frozenRows' | 'repeatedRows'>,
): Sheet {
  return { name, widths, ...draft, ...rest };
}
