import { chanceAt } from '../planning/funding.ts';
import type { Draft } from './draft.ts';
import { addGap, addHeads, addRow, addSentence, cell, formula, nameCell, placeRow } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { Block, SheetCell } from './sheet.ts';
import { fixedBlock } from './sheet.ts';
import { countedWord } from './yearBlock.ts';

const VALUE_COLUMN = 3;

/** "If you fund this many": an input; what it gives is looked up in a table. Answers the first row to write, if any. */
export function addFunding(draft: Draft, { plan }: ReportFacts, columns: number): number | undefined {
  const { funding, years, settings } = plan;
  if (funding.rows.length === 0) return undefined;
  addSentence(
    draft,
    `If you fund so many batteries for ${countedWord(plan)} up to the end of ${funding.until}`,
    'heading',
    columns,
  );
  const input = addRow(draft, [
    cell('Funded batteries', 'label'),
    null,
    null,
    cell(fundedAtFirst(years, settings.ask), 'input', 'whole'),
    cell('input', 'note'),
    cell('due now comes on top', 'label'),
  ]);
  nameCell(draft, 'funded_units', input, VALUE_COLUMN);
  const row = draft.rows.length;
  addGap(draft, 3);
  return row;
}

type Years = ReportFacts['plan']['years'];

const fundedAtFirst = (years: Years, ask: ReportFacts['plan']['settings']['ask']): number =>
  Math.round(years.slice(0, 2).reduce((sum, year) => sum + year.needs[ask], 0));

/** Writes the chance and the shortage that the funded number has, looked up in the table. */
export function fillFunding(draft: Draft, { plan }: ReportFacts, row: number, table: Block): void {
  const { funding, years, settings } = plan;
  const smallest = funding.rows[0]!.count;
  const looked = (column: number, below: string): string =>
    `IF(funded_units<${smallest},"${below}",VLOOKUP(funded_units,${fixedBlock(table)},${column},TRUE))`;
  const found = chanceAt(funding, fundedAtFirst(years, settings.ask));
  const answered = (label: string, answer: SheetCell): (SheetCell | null)[] => [
    cell(label, 'label'),
    null,
    null,
    answer,
  ];
  const [rarely, more] = ['hardly ever enough', 'more than listed'];
  placeRow(
    draft,
    row,
    answered('Chance that it is enough', formula(looked(2, rarely), found?.chance ?? rarely, 'chance')),
  );
  placeRow(
    draft,
    row + 1,
    answered('Batteries likely missing', formula(looked(3, more), found?.missing ?? more, 'oneDecimal')),
  );
}

/** The table in which the funded number is looked up; answers where it stands. */
export function addFundingTable(draft: Draft, { plan }: ReportFacts, columns: number): Block {
  const { rows, until } = plan.funding;
  addSentence(
    draft,
    `Chance that a number of batteries is enough, up to the end of ${until}`,
    'heading',
    columns,
  );
  addHeads(draft, ['Batteries', 'Chance that it is enough', 'Likely missing']);
  const table = { row: draft.rows.length, column: 0, rows: rows.length, columns: 3 };
  for (const { count, chance, missing } of rows) {
    const cells = [cell(count, 'body', 'whole'), cell(chance, 'body', 'chance')];
    addRow(draft, [...cells, cell(missing, 'body', 'oneDecimal')]);
  }
  addGap(draft);
  return table;
}
