import type { PlanYear } from '../planning/planYears.ts';
import type { Draft } from './draft.ts';
import { addGap, addHeads, addRow, addSentence, cell, formula, totalCell } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { SheetCell } from './sheet.ts';
import { address } from './sheet.ts';
import type { YearBlock } from './yearBlock.ts';
import { COUNTS, emptyTotals, ORDERS, overYears } from './yearBlock.ts';

const HEADS = [
  'Fiscal year',
  'Needed',
  'Opening stock',
  'On order',
  'Recovered',
  'Units to order',
  'Closing stock',
  'Order by',
  'Order goes out',
  'Order state',
];

const NOTE =
  'Needed = due now + what is asked for + fleet changes. Opening stock + on order + recovered + units to order - needed = closing stock. Units to order is what is missing for the stock to hold at year end, rounded up; what that buys too much is in the next opening stock.';

/** What to order by fiscal year, term by term, and by when. */
export function addOrders(
  draft: Draft,
  { plan }: ReportFacts,
  counts: YearBlock,
  columns: number,
): YearBlock {
  const { years } = plan;
  addSentence(draft, 'By fiscal year: what to order', 'heading', columns);
  addHeads(draft, HEADS);
  const row = draft.rows.length;
  years.forEach((year, index) => addRow(draft, orderCells(year, index, counts, row)));
  const block = { row, rows: years.length };
  addRow(draft, totals(block, years));
  addSentence(draft, NOTE, 'note', columns);
  addGap(draft);
  return block;
}

// Some spreadsheets run over the end of a short month; the same day or the month's last, whichever is first.
const monthsBefore = (from: string): string => {
  const months = '-(lead_months+safety_months)';
  return `MIN(EDATE(${from},${months}),EOMONTH(${from},${months}))`;
};

function orderCells(
  { label, order }: PlanYear,
  index: number,
  counts: YearBlock,
  first: number,
): SheetCell[] {
  const row = first + index;
  const at = (column: keyof typeof ORDERS): string => address(row, ORDERS[column]);
  const counted = (column: keyof typeof COUNTS): string => address(counts.row + index, COUNTS[column]);
  const asked = `CHOOSE(ask_for,${counted('expected')},${counted('4in5')},${counted('19in20')})`;
  const missing = `ROUND(${at('need')}+stock_to_hold-${at('opening')}-${at('onOrder')}-${at('recovered')},6)`;
  const opening = index === 0 ? 'stock_on_hand' : address(row - 1, ORDERS.closing);
  const closing = `${at('opening')}+${at('onOrder')}+${at('recovered')}+${at('toOrder')}-${at('need')}`;
  const asOrdered = (text: string): string => `IF(${at('toOrder')}>0,${text},"")`;
  const dated = (day: number): number | '' => (order.unitsToOrder > 0 ? day : '');
  const late = `IF(AND(${at('orderBy')}<as_of,${at('toOrder')}>0),"late: order now","")`;
  return [
    cell(label),
    formula(`${counted('dueNow')}+${asked}+${counted('fleetChange')}`, order.need, 'oneDecimal'),
    formula(opening, order.opening, 'oneDecimal'),
    cell(order.onOrder, 'body', 'oneDecimal'),
    formula(
      `ROUND(recovered_share*${at('need')}+mates_reused*${counted('mates')},1)`,
      order.recovered,
      'oneDecimal',
    ),
    formula(`ROUNDUP(MAX(0,${missing}),0)`, order.unitsToOrder, 'whole'),
    formula(closing, order.closing, 'oneDecimal'),
    formula(asOrdered(monthsBefore(counted('from'))), dated(order.orderBy), 'date'),
    formula(asOrdered(`MAX(${at('orderBy')},as_of)`), dated(order.goesOut), 'date'),
    formula(late, order.late ? 'late: order now' : '', 'text'),
  ];
}

function totals(block: YearBlock, years: readonly PlanYear[]): SheetCell[] {
  const total = (
    column: 'need' | 'onOrder' | 'recovered' | 'toOrder',
    of: (order: PlanYear['order']) => number,
    format: 'whole' | 'oneDecimal',
  ): SheetCell =>
    totalCell(
      block,
      ORDERS[column],
      overYears(years, ({ order }) => of(order)),
      format,
    );
  return [
    cell('All years', 'total'),
    total('need', ({ need }) => need, 'oneDecimal'),
    ...emptyTotals(1),
    total('onOrder', ({ onOrder }) => onOrder, 'oneDecimal'),
    total('recovered', ({ recovered }) => recovered, 'oneDecimal'),
    total('toOrder', ({ unitsToOrder }) => unitsToOrder, 'whole'),
    ...emptyTotals(4),
  ];
}
