import type { PartPlan } from '../planning/planParts.ts';
import type { Plan } from '../planning/plan.ts';
import type { PlanTime } from '../planning/planTime.ts';
import type { Draft } from './draft.ts';
import { addGap, addHeads, addRow, addSentence, cell, formula, keepTogether, totalCell } from './draft.ts';
import type { Block, SheetCell } from './sheet.ts';
import { address } from './sheet.ts';
import type { YearBlock } from './yearBlock.ts';
import { countedWord, emptyTotals, ORDERS } from './yearBlock.ts';

/** Said under every block whose parts have bands of their own. */
const BANDS_DO_NOT_ADD =
  "Low and high do not add up: not every part has its bad year at once. The total's own band is the one to use.";

const FIRST_YEAR = 3;
const PER_YEAR = 4;

// More years than these go into a block of their own below, so that a page stays readable.
const YEARS_A_BLOCK = 2;

/** The plan by site or by type: expected, low, high and the share of the order in each fiscal year. */
export function addParts(
  draft: Draft,
  title: string,
  parts: readonly PartPlan[],
  { plan, orders, columns }: PartPlace,
): void {
  for (let from = 0; from < plan.years.length; from += YEARS_A_BLOCK) {
    const years = plan.years.map((_, year) => year).slice(from, from + YEARS_A_BLOCK);
    addPartYears(draft, title, { parts, plan, years, orders }, columns);
  }
}

/** What the parts are parts of, and where its orders stand. */
export type PartPlace = { readonly plan: Plan; readonly orders: YearBlock; readonly columns: number };

type PartYears = {
  readonly parts: readonly PartPlan[];
  readonly plan: Plan;
  readonly orders: YearBlock;
  /** Places of the years that the block shows. */
  readonly years: readonly number[];
};

const HEAD_ROWS = 3;

function addPartYears(draft: Draft, title: string, block: PartYears, columns: number): void {
  const { parts, plan, years } = block;
  keepTogether(draft, parts.length + HEAD_ROWS + 2);
  const [first, last] = [plan.years[years[0]!]!.label, plan.years[years[years.length - 1]!]!.label];
  const named = first === last ? first : `${first} to ${last}`;
  const span = years.length === plan.years.length ? '' : `, ${named}`;
  addSentence(draft, `By ${title}${span}`, 'heading', columns);
  const heads = years.flatMap((year) =>
    ['expected', 'low', 'high', 'to order'].map((head) => `${plan.years[year]!.label} ${head}`),
  );
  addHeads(draft, [title === 'site' ? 'Site' : 'Type', 'In service', 'Due now', ...heads]);
  const row = draft.rows.length;
  for (const part of parts) addRow(draft, partCells(part, years));
  const totals = addRow(draft, partTotals({ row, rows: parts.length }, block));
  addSentence(draft, BANDS_DO_NOT_ADD, 'note', columns);
  const overtaken = addRow(draft, [formula(overtakenBy(block, totals), '', 'text', 'caution')]);
  draft.spans.push({ row: overtaken, column: 0, columns });
  addGap(draft);
}

// Shares of an order are whole units by largest remainders, which no short formula makes: a change is told instead.
function overtakenBy({ years, orders }: PartYears, totals: number): string {
  const same = years.map((year, index) => {
    const shared = address(totals, FIRST_YEAR + index * PER_YEAR + 3);
    return `${shared}=${address(orders.row + year, ORDERS.toOrder)}`;
  });
  return `IF(AND(${same.join(',')}),"","The shares to order were made before an assumption was changed: plan again for new ones.")`;
}

function partCells(part: PartPlan, years: readonly number[]): SheetCell[] {
  return [
    cell(part.name === '' ? 'not said' : part.name, 'wrapped'),
    cell(part.inService, 'body', 'whole'),
    cell(part.dueNow, 'body', 'whole'),
    ...years.flatMap((year) => {
      const { expected, low, high, unitsToOrder } = part.years[year]!;
      return [
        cell(expected, 'body', 'oneDecimal'),
        cell(low, 'body', 'whole'),
        cell(high, 'body', 'whole'),
        cell(unitsToOrder, 'body', 'whole'),
      ];
    }),
  ];
}

function partTotals(
  place: Omit<Block, 'column' | 'columns'>,
  { parts, plan, years }: PartYears,
): SheetCell[] {
  const sum = (of: (part: PartPlan) => number): number => parts.reduce((all, part) => all + of(part), 0);
  return [
    cell('All', 'total'),
    totalCell(
      place,
      1,
      sum(({ inService }) => inService),
      'whole',
    ),
    totalCell(
      place,
      2,
      sum(({ dueNow }) => dueNow),
      'whole',
    ),
    ...years.flatMap((year, index) => {
      const column = FIRST_YEAR + index * PER_YEAR;
      const { expected, order } = plan.years[year]!;
      return [
        totalCell(place, column, expected, 'oneDecimal'),
        ...emptyTotals(2),
        totalCell(place, column + 3, order.unitsToOrder, 'whole'),
      ];
    }),
  ];
}

/** The plan by quarter or month; answers where its rows stand. */
export function addTimes(
  draft: Draft,
  title: string,
  times: readonly PlanTime[],
  { plan, columns }: { readonly plan: Plan; readonly columns: number },
): Block {
  keepTogether(draft, times.length + HEAD_ROWS + 2);
  addSentence(draft, title, 'heading', columns);
  addHeads(draft, ['Period', 'From', 'To', `Expected ${countedWord(plan)}`, 'Low (5 %)', 'High (95 %)']);
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
  const total = times.reduce((all, { expected }) => all + expected, 0);
  addRow(draft, [
    cell('All', 'total'),
    ...emptyTotals(2),
    totalCell(block, 3, total, 'oneDecimal'),
    ...emptyTotals(2),
  ]);
  addSentence(draft, BANDS_DO_NOT_ADD, 'note', columns);
  addGap(draft);
  return block;
}
