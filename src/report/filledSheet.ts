import { fittedWidths } from './columnWidths.ts';
import { addHeads, addRow, addSentence, cell, finishedSheet, newDraft } from './draft.ts';
import type { Format, Sheet, SheetCell } from './sheet.ts';

/** A column of answers, one for each row. */
export type AnswerColumn = {
  readonly head: string;
  readonly format: Format;
  readonly values: readonly SheetCell['value'][];
};

/** What a sheet of answers is written from. */
export type FilledFacts = {
  readonly tab: string;
  readonly asOf: string;
  /** The row of the inventory's sheet and the serial of each battery. */
  readonly batteries: readonly { readonly row: number; readonly serial: string }[];
  readonly columns: readonly AnswerColumn[];
  readonly dateShown: Sheet['dateShown'];
};

const HEADS = ['Sheet row', 'Serial'];
const FIRST_ROW = 3;
const LONG = 40;

/** Answers for each battery of an inventory on a sheet of their own, by serial and row of the inventory. */
export function filledSheet({ tab, asOf, batteries, columns, dateShown }: FilledFacts, name: string): Sheet {
  const draft = newDraft();
  const heads = [...HEADS, ...columns.map(({ head }) => head)];
  addSentence(draft, `Answers for the batteries of ${tab}`, 'title', heads.length);
  addSentence(
    draft,
    `As of ${asOf}. Values: they do not change when the inventory does.`,
    'note',
    heads.length,
  );
  addHeads(draft, heads);
  batteries.forEach(({ row, serial }, index) => {
    const answers = columns.map(({ format, values }) => answerCell(values[index] ?? null, format));
    addRow(draft, [cell(row, 'body', 'plain'), cell(serial), ...answers]);
  });
  if (batteries.length > 0)
    draft.tables.push({ name: 'Answers', row: FIRST_ROW - 1, column: 0, rows: batteries.length, heads });
  const widths = fittedWidths(draft.rows, [
    [7, 9],
    [8, 24],
    ...columns.map(({ format }) => [10, format === 'text' ? LONG : 14] as const),
  ]);
  return finishedSheet(draft, name, widths, {
    frozenRows: FIRST_ROW,
    repeatedRows: [FIRST_ROW - 1, FIRST_ROW - 1],
    dateShown,
  });
}

const answerCell = (value: SheetCell['value'], format: Format): SheetCell | null =>
  value === null ? null : cell(value, typeof value === 'string' ? 'wrapped' : 'body', format);
