import { addHeads, addRow, addSentence, cell, finishedSheet, newDraft } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { Sheet } from './sheet.ts';

const HEADS = ['Kind', 'Sheet', 'Row', 'Column', 'What stands there', 'What was done'];
const FIRST_ROW = 3;

/** Everything doubtful in the inventory, row by row: what stands there and what was done with it. */
export function rowsToCheckSheet({ toCheck, tab, settings }: ReportFacts, name: string): Sheet {
  const draft = newDraft();
  addSentence(draft, 'Rows to check', 'title', HEADS.length);
  addSentence(
    draft,
    'Nothing in the inventory was changed. Correct the rows there and plan again.',
    'note',
    HEADS.length,
  );
  addHeads(draft, HEADS);
  for (const { kind, row, column, given, done, sheet } of toCheck) {
    addRow(draft, [
      cell(kind, 'wrapped'),
      cell(sheet ?? tab),
      cell(row, 'body', 'plain'),
      cell(column, 'wrapped'),
      cell(given, 'wrapped'),
      cell(done, 'wrapped'),
    ]);
  }
  if (toCheck.length > 0) {
    draft.tables.push({
      name: 'RowsToCheck',
      row: FIRST_ROW - 1,
      column: 0,
      rows: toCheck.length,
      heads: HEADS,
    });
  }
  return finishedSheet(draft, name, [26, 11, 7, 15, 50, 58], {
    frozenRows: FIRST_ROW,
    repeatedRows: [FIRST_ROW - 1, FIRST_ROW - 1],
    dateShown: settings.dateShown,
  });
}
