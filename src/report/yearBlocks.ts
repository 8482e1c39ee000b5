import type { PlanYear } from '../planning/planYears.ts';
import type { Draft } from './draft.ts';
import { addGap, addRow, addSentence, cell, formula, sumOf } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { Format, SheetCell } from './sheet.ts';
import { address } from './sheet.ts';

/** Where the years' figures stand, for the blocks that refer to them. */
export type YearBlock = { readonly row: number; readonly rows: number };

/** What a cell says where money can't be computed. */
export const NO_PRICE = 'enter a price';

const UNIT_HEADS = [
  'Fiscal year',
  'From',
  'To',
  'Due now',
  'Expected failures',
  'Low (5 %)',
  'High (95 %)',
  'Enough 4 years in 5',
  'Enough 19 years in 20',
  'Needed',
  'Opening stock',
  'On order',
  'Recovered',
  'Units to order',
  'Closing stock',
  'Order by',
  'Order goes out',
  'Order state',
  'Good mates renewed',
  'Fleet changes',
];

const MONEY_HEADS = [
  'Fiscal year',
  'Unit price',
  'Cost',
  'Refund',
  'Freight',
  'Labour',
  'Net, year of need',
  'Net, year of order',
];

/** Counts and orders by fiscal year. */
export function addYearUnits(draft: Draft, { plan }: ReportFacts, columns: number): YearBlock {
  addSentence(draft, 'By fiscal year: batteries', 'heading', columns);
  addRow(
    draft,
    UNIT_HEADS.map((head) => cell(head, 'columnHead')),
  );
  const row = draft.rows.length;
  plan.years.forEach((year, index) => addRow(draft, unitCells(year, row + index, index === 0)));
  const rows = plan.years.length;
  const total = (column: number, value: number, format: Format): SheetCell =>
    formula(sumOf({ row, column, rows }), value, format, 'total');
  const sum = (of: (year: PlanYear) => number): number => plan.years.reduce((all, year) => all + of(year), 0);
  addRow(draft, [
    cell('All years', 'total'),
    cell(null, 'total'),
    cell(null, 'total'),
    total(
      3,
      sum((y) => y.dueNow),
      'whole',
    ),
    total(4, Number(sum((y) => y.expected).toFixed(1)), 'oneDecimal'),
    cell(null, 'total'),
    cell(null, 'total'),
    cell(null, 'total'),
    cell(null, 'total'),
    total(
      9,
      sum((y) => y.order.need),
      'oneDecimal',
    ),
    cell(null, 'total'),
    total(
      11,
      sum((y) => y.order.onOrder),
      'oneDecimal',
    ),
    total(
      12,
      sum((y) => y.order.recovered),
      'oneDecimal',
    ),
    total(
      13,
      sum((y) => y.order.unitsToOrder),
      'whole',
    ),
    cell(null, 'total'),
    cell(null, 'total'),
    cell(null, 'total'),
    cell(null, 'total'),
    total(18, Number(sum((y) => y.mates).toFixed(1)), 'oneDecimal'),
    total(19, Number(sum((y) => y.fleetChange).toFixed(1)), 'oneDecimal'),
  ]);
  addSentence(draft, bandSentence(plan.years), 'note', columns);
  addGap(draft);
  return { row, rows };
}

function bandSentence(years: readonly PlanYear[]): string {
  return `${years[0]!.label} counts only what is left of it from the as-of date. In 9 years of 10 a year's count lies from its low to its high; low and high of single years do not add up. Needed = due now + what is asked for + fleet changes; opening stock + on order + recovered + units to order - needed = closing stock.`;
}

function unitCells(year: PlanYear, row: number, first: boolean): SheetCell[] {
  const { order, needs } = year;
  const at = (column: number): string => address(row, column);
  const order6 = `ROUND(${at(9)}+stock_to_hold-${at(10)}-${at(11)}-${at(12)},6)`;
  return [
    cell(year.label),
    cell(year.from, 'body', 'date'),
    cell(year.to, 'body', 'date'),
    cell(year.dueNow, 'body', 'whole'),
    cell(year.expected, 'body', 'oneDecimal'),
    cell(year.low, 'body', 'whole'),
    cell(year.high, 'body', 'whole'),
    cell(needs['4in5'], 'body', 'whole'),
    cell(needs['19in20'], 'body', 'whole'),
    formula(`${at(3)}+CHOOSE(ask_for,${at(4)},${at(7)},${at(8)})+${at(19)}`, order.need, 'oneDecimal'),
    formula(first ? 'stock_on_hand' : address(row - 1, 14), order.opening, 'oneDecimal'),
    cell(order.onOrder, 'body', 'oneDecimal'),
    formula(`recovered_share*${at(9)}+mates_reused*${at(18)}`, order.recovered, 'oneDecimal'),
    formula(`ROUNDUP(MAX(0,${order6}),0)`, order.unitsToOrder, 'whole'),
    formula(`${at(10)}+${at(11)}+${at(12)}+${at(13)}-${at(9)}`, order.closing, 'oneDecimal'),
    formula(`EDATE(${at(1)},-(lead_months+safety_months))`, order.orderBy, 'date'),
    formula(`MAX(${at(15)},as_of)`, order.goesOut, 'date'),
    formula(
      `IF(AND(${at(15)}<as_of,${at(13)}>0),"late: order now","")`,
      order.late ? 'late: order now' : '',
      'text',
    ),
    cell(year.mates, 'body', 'oneDecimal'),
    cell(year.fleetChange, 'body', 'oneDecimal'),
  ];
}

/** Money by fiscal year, charged to the year of need and to the year of order. */
export function addYearMoney(
  draft: Draft,
  { plan }: ReportFacts,
  units: YearBlock,
  columns: number,
): YearBlock {
  const { currency } = plan.settings.money;
  addSentence(draft, `By fiscal year: money${currency === '' ? '' : ` (${currency})`}`, 'heading', columns);
  addRow(
    draft,
    MONEY_HEADS.map((head) => cell(head, 'columnHead')),
  );
  const row = draft.rows.length;
  const block = { row, rows: units.rows };
  plan.years.forEach((year, index) => addRow(draft, moneyCells(year, index, units, block)));
  const totals = (['cost', 'refund', 'freight', 'labour', 'net'] as const).map((part, i) => {
    const value = plan.years.reduce((sum, { budget }) => sum + (budget?.[part] ?? 0), 0);
    return pricedTotal(sumOf({ ...block, column: i + 2 }), plan.years[0]?.budget && value);
  });
  const charged = plan.years.reduce((sum, year) => sum + (year.chargedToOrder ?? 0), 0);
  addRow(draft, [
    cell('All years', 'total'),
    cell(null, 'total'),
    ...totals,
    pricedTotal(sumOf({ ...block, column: 7 }), plan.years[0]?.budget && charged),
  ]);
  const request = plan.settings.chargeTo === 'order' ? 'year of order' : 'year of need';
  addSentence(
    draft,
    `The request is the column "Net, ${request}". Net = cost - refund + freight + labour.`,
    'note',
    columns,
  );
  addGap(draft);
  return block;
}

function moneyCells(year: PlanYear, index: number, units: YearBlock, money: YearBlock): SheetCell[] {
  const [unitRow, row] = [units.row + index, money.row + index];
  const unit = (column: number): string => address(unitRow, column);
  const own = (column: number): string => address(row, column);
  const whole = (column: number, block: YearBlock): string =>
    `${address(block.row, column)}:${address(block.row + block.rows - 1, column)}`;
  const priced = (text: string, value: number | undefined, otherwise = ''): SheetCell =>
    formula(`IF(ISNUMBER(unit_price),${text},"${otherwise}")`, value ?? otherwise, 'money');
  const goesOut = whole(16, units);
  const sent = `SUMPRODUCT((${goesOut}>=${unit(1)})*(${goesOut}<=${unit(2)})*(${whole(2, money)}+${whole(4, money)}))`;
  return [
    cell(year.label),
    priced(`unit_price*(1+price_rise)^${index}`, year.budget?.unitPrice, NO_PRICE),
    priced(`${unit(13)}*${own(1)}`, year.budget?.cost),
    priced(`(${unit(9)}-${unit(12)})*core_refund`, year.budget?.refund),
    priced(`${unit(13)}*freight_each`, year.budget?.freight),
    priced(`${unit(9)}*labour_each`, year.budget?.labour),
    priced(`${own(2)}-${own(3)}+${own(4)}+${own(5)}`, year.budget?.net),
    priced(`${sent}-${own(3)}+${own(5)}`, year.chargedToOrder),
  ];
}

function pricedTotal(text: string, value: number | undefined): SheetCell {
  return formula(`IF(ISNUMBER(unit_price),${text},"")`, value ?? '', 'money', 'total');
}
