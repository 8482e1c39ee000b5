import type { PartPlan } from '../planning/planParts.ts';
import type { Plan } from '../planning/plan.ts';
import type { PlanTime } from '../planning/planTime.ts';
import type { Draft } from './draft.ts';
import { addGap, addRow, addSentence, cell, formula, sumOf } from './draft.ts';
import type { Block, SheetCell } from './sheet.ts';

/** Said under every block whose parts have bands of their own. */
const BANDS_DO_NOT_ADD =
  "Low and high do not add up: not every part has its bad year at once. The total's own band is the one to use.";

const FIRST_YEAR = 3;
const PER_YEAR = 4;

/** The plan by site or by type: expected, low, high and the share of the order in each fiscal year. */
export function addParts(
  draft: Draft,
  title: string,
  parts: readonly PartPlan[],
  plan: Plan,
  columns: number,
): void {
  addSentence(draft, title, 'heading', columns);
  const heads = plan.years.flatMap(({ label }) => [
    `${label} expected`,
    `${label} low`,
    `${label} high`,
    `${label} to order`,
  ]);
  addRow(
    draft,
    ['', 'In service', 'Due now', ...heads].map((head) => cell(head, 'columnHead')),
  );
  const block = { row: draft.rows.length, rows: parts.length };
  for (const part of parts) addRow(draft, partCells(part));
  addRow(draft, partTotals(block, parts, plan));
  addSentence(draft, BANDS_DO_NOT_ADD, 'note', columns);
  addGap(draft);
}

function partCells(part: PartPlan): SheetCell[] {
  return [
    cell(part.name === '' ? 'not said' : part.name),
    cell(part.inService, 'body', 'whole'),
    cell(part.dueNow, 'body', 'whole'),
    ...part.years.flatMap(({ expected, low, high, unitsToOrder }) => [
      cell(expected, 'body', 'oneDecimal'),
      cell(low, 'body', 'whole'),
      cell(high, 'body', 'whole'),
      cell(unitsToOrder, 'body', 'whole'),
    ]),
  ];
}

function partTotals(
  block: Omit<Block, 'column' | 'columns'>,
  parts: readonly PartPlan[],
  plan: Plan,
): SheetCell[] {
  const total = (column: number, value: number, decimal = false): SheetCell =>
    formula(sumOf({ ...block, column }), value, decimal ? 'oneDecimal' : 'whole', 'total');
  const sum = (of: (part: PartPlan) => number): number => parts.reduce((all, part) => all + of(part), 0);
  return [
    cell('All', 'total'),
    total(
      1,
      sum((part) => part.inService),
    ),
    total(
      2,
      sum((part) => part.dueNow),
    ),
    ...plan.years.flatMap((year, y) => [
      total(FIRST_YEAR + y * PER_YEAR, year.expected, true),
      cell(null, 'total'),
      cell(null, 'total'),
      total(FIRST_YEAR + y * PER_YEAR + 3, year.order.unitsToOrder),
    ]),
  ];
}

/** The plan by quarter or month; answers where its rows stand. */
export function addTimes(draft: Draft, title: string, times: readonly PlanTime[], columns: number): Block {
  addSentence(draft, title, 'heading', columns);
  addRow(
    draft,
    ['Period', 'From', 'To', 'Expected failures', 'Low (5 %)', 'High (95 %)'].map((head) =>
      cell(head, 'columnHead'),
    ),
  );
  const block = { row: draft.rows.length, column: 0, rows: times.length, columns: 6 };
  for (const { label, from, to, expected, low, high } of times) {
    addRow(draft, [
      cell(label),
      cell(from, 'body', 'date'),
      cell(to, 'body', 'date'),
      cell(expected, 'body', 'oneDecimal'),
      cell(low, 'body', 'whole'),
      cell(high, 'body', 'whole'),
    ]);
  }
  const total = Number(times.reduce((all, { expected }) => all + expected, 0).toFixed(1));
  addRow(draft, [
    cell('All', 'total'),
    cell(null, 'total'),
    cell(null, 'total'),
    formula(sumOf({ ...block, column: 3 }), total, 'oneDecimal', 'total'),
    cell(null, 'total'),
    cell(null, 'total'),
  ]);
  addSentence(draft, BANDS_DO_NOT_ADD, 'note', columns);
  addGap(draft);
  return block;
}
