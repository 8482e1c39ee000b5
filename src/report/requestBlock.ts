import type { PlanYear } from '../planning/planYears.ts';
import type { Draft } from './draft.ts';
import { addGap, addHeads, addSentence, cell, formula, placeRow } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { SheetCell } from './sheet.ts';
import { address } from './sheet.ts';
import { inCurrency, payingYear } from './moneyBlock.ts';
import type { YearBlocks } from './yearBlock.ts';
import { MONEY, ORDERS } from './yearBlock.ts';

/** Said under a request that is charged to the year of order: money beside a year that buys nothing looks like a mistake. */
export const CHARGED_EARLIER =
  'Units stand in the year that needs them, money in the year whose order goes out: what the next year needs may have to be ordered, and paid for, in this one. A year without units still pays its labour.';

/** The request at a glance; its cells are written once it is known where the figures stand. Answers its first row. */
export function addRequest(draft: Draft, { plan }: ReportFacts, columns: number): number {
  const { money, chargeTo } = plan.settings;
  addSentence(draft, `The request${inCurrency(money.currency)}`, 'heading', columns);
  addHeads(draft, [
    'Fiscal year',
    'Batteries needed',
    'Units to order',
    'Order by',
    `Net, ${payingYear(chargeTo)}`,
    'Order state',
  ]);
  const row = draft.rows.length;
  addGap(draft, plan.years.length + 1);
  if (chargeTo === 'order') addSentence(draft, CHARGED_EARLIER, 'note', columns);
  addSentence(
    draft,
    'Worked out below, term by term. Boxed cells under "Assumptions" are inputs: change one, and orders, money and totals follow.',
    'note',
    columns,
  );
  addGap(draft);
  return row;
}

/** Writes the request's cells, each a look at the block where the figure is worked out. */
export function fillRequest(draft: Draft, { plan }: ReportFacts, row: number, blocks: YearBlocks): void {
  const { chargeTo } = plan.settings;
  plan.years.forEach((year, index) => placeRow(draft, row + index, yearCells(year, index, blocks, chargeTo)));
  placeRow(draft, row + plan.years.length, totalCells(plan.years, blocks, chargeTo));
}

type ChargeTo = 'order' | 'need';

const netColumn = (chargeTo: ChargeTo): number => (chargeTo === 'order' ? MONEY.orderYear : MONEY.needYear);
const netOf = ({ budget, chargedToOrder }: PlanYear, chargeTo: ChargeTo): number | undefined =>
  chargeTo === 'order' ? chargedToOrder : budget?.net;

function yearCells(year: PlanYear, index: number, blocks: YearBlocks, chargeTo: ChargeTo): SheetCell[] {
  const { order, label } = year;
  const ordered = (column: keyof typeof ORDERS): string => address(blocks.orders.row + index, ORDERS[column]);
  return [
    cell(label),
    formula(ordered('need'), order.need, 'oneDecimal'),
    formula(ordered('toOrder'), order.unitsToOrder, 'whole'),
    formula(ordered('orderBy'), order.unitsToOrder > 0 ? order.orderBy : '', 'date'),
    formula(address(blocks.money.row + index, netColumn(chargeTo)), netOf(year, chargeTo) ?? '', 'money'),
    formula(ordered('state'), order.late ? 'late: order now' : '', 'text'),
  ];
}

function totalCells(
  years: readonly PlanYear[],
  { orders, money }: YearBlocks,
  chargeTo: ChargeTo,
): SheetCell[] {
  const last = (block: { row: number; rows: number }, column: number): string =>
    address(block.row + block.rows, column);
  const sum = (of: (year: PlanYear) => number): number =>
    Number(years.reduce((all, year) => all + of(year), 0).toFixed(6));
  const net = years[0]?.budget === undefined ? '' : sum((year) => netOf(year, chargeTo) ?? 0);
  return [
    cell('All years', 'total'),
    formula(
      last(orders, ORDERS.need),
      sum(({ order }) => order.need),
      'oneDecimal',
      'total',
    ),
    formula(
      last(orders, ORDERS.toOrder),
      sum(({ order }) => order.unitsToOrder),
      'whole',
      'total',
    ),
    cell(null, 'total'),
    formula(last(money, netColumn(chargeTo)), net, 'money', 'total'),
    cell(null, 'total'),
  ];
}
