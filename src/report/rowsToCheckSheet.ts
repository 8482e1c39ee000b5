import type { Finding } from '../inventory/inventory.ts';
import type { CheckGroup } from '../inventory/rowsToCheck.ts';
import { rowsToCheck } from '../inventory/rowsToCheck.ts';
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
import type { Sheet } from './sheet.ts';
import { firstUnits } from './shownText.ts';

const CAUSE_HEADS = ['Kind', 'Sheet', 'Rows', 'Column', 'Cause, first rows, example', 'If nothing is done'];
const HEADS = ['Kind', 'Sheet', 'Row', 'Column', 'What stands there', 'What was done'];
// The longest kind of finding stands on one line.
const WIDTHS = [35, 11, 7, 15, 50, 58];

/** Everything doubtful in the inventory: by cause, then row by row, what stands there and what was done with it. */
export function rowsToCheckSheet(
  { toCheck, tab, settings }: Pick<ReportFacts, 'toCheck' | 'tab' | 'settings'>,
  name: string,
): Sheet {
  const draft = newDraft();
  addSentence(draft, 'Rows to check', 'title', HEADS.length);
  const note = 'Nothing in the inventory was changed. Correct the rows there and plan again.';
  addSentence(draft, note, 'note', HEADS.length);
  if (toCheck.length === 0) addSentence(draft, 'Nothing to check.', 'label', HEADS.length);
  else addCauses(draft, toCheck, tab);
  const heads = toCheck.length === 0 ? undefined : addList(draft, toCheck, tab);
  return finishedSheet(draft, name, WIDTHS, {
    frozenRows: 0,
    dateShown: settings.dateShown,
    ...(heads === undefined ? {} : { repeatedRows: [heads, heads] }),
  });
}

// What one decision can settle, so that nobody has to read every row first.
function addCauses(draft: Draft, toCheck: readonly Finding[], tab: string): void {
  addSentence(draft, 'By cause, what moves the answer most first', 'heading', HEADS.length);
  addHeads(draft, CAUSE_HEADS);
  for (const group of rowsToCheck(toCheck)) {
    const { sheet, column } = group.examples[0]!;
    addRow(draft, [
      cell(group.kind, 'wrapped'),
      cell(sheet ?? tab),
      cell(group.count, 'body', 'whole'),
      cell(column, 'wrapped'),
      cell(causeText(group), 'wrapped'),
      cell(ifNothingText(group), 'wrapped'),
    ]);
  }
  addGap(draft);
  addPageBreak(draft);
}

// The reader may have the pane, with its buttons, or a settings file.
const ifNothingText = ({ ifNothing, setting }: CheckGroup): string =>
  setting === undefined
    ? ifNothing
    : `${ifNothing}; decide it in the pane, under “Rows to check”, or in a settings file, by “${setting}”`;

// One finding can stand for many rows; only the first of each is known by its number.
function causeText({ cause, kind, count, examples }: CheckGroup): string {
  const rows = examples.map(({ row }) => row);
  const more = count > rows.length ? ` and ${count - rows.length} more` : '';
  const where = `${count === 1 ? 'row' : 'rows'} ${rows.join(', ')}${more}`;
  const what = cause === kind ? '' : cause.replace(`: ${kind}`, '');
  const example = what !== '' && examples[0]!.given.includes(what) ? '' : exampleText(examples[0]!);
  return [what, where, example].filter((text) => text !== '').join('; ');
}

const LONGEST_EXAMPLE = 60;

function exampleText({ given }: Finding): string {
  const shown = firstUnits(given, LONGEST_EXAMPLE);
  return given === '' ? '' : `such as ${shown}${shown.length < given.length ? ' …' : ''}`;
}

/** Writes the list of all rows; answers where its heads stand. */
function addList(draft: Draft, toCheck: readonly Finding[], tab: string): number {
  addSentence(draft, 'Row by row', 'heading', HEADS.length);
  const heads = addHeads(draft, HEADS);
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
  draft.tables.push({ name: 'RowsToCheck', row: heads, column: 0, rows: toCheck.length, heads: HEADS });
  return heads;
}
