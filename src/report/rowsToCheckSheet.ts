import { addRow, addSentence, cell, finishedSheet, newDraft } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { Sheet } from './sheet.ts';

const HEADS = ['Kind', 'Sheet', 'Row', 'Column', 'What stands there', 'What was done'];
const FIRST_ROW = 3;

/** Everything doubtful in the inventory, row by row: what stands there and what was done with it. */
export function rowsToCheckSheet({ toCheck, tab }: ReportFacts, name: string): Sheet {
  const draft = newDraft();
  addSentence(draft, 'Rows to check', 'title', HEADS.length);
  addSentence(
    draft,
    'Nothing in the inventory was changed. Correct the rows there and plan again.',
    'note',
    HEADS.length,
  );
  addRow(
    draft,
    HEADS.map((head) => cell(head, 'columnHead')),
  );
  for (const { kind, row, column, given, done, sheet } of toCheck) {
    addRow(draft, [
      cell(kind),
      cell(sheet ?? tab),
      cell(row, 'body', 'plain'),
      cell(column),
      cell(given),
      cell(done),
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
  return finishedSheet(draft, name, [34, 16, 8, 24, 36, 80], {
    frozenRows: FIRST_ROW,
    repeatedRows: [FIRST_ROW - 1, FIRST_ROW - 1],
  });
}
