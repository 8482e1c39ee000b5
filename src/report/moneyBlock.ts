import type { PlanYear } from '../planning/planYears.ts';
import type { Draft } from './draft.ts';
import { addGap, addHeads, addRow, addSentence, cell, formula, sumOf } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { SheetCell } from './sheet.ts';
import { address } from './sheet.ts';
import type { YearBlock } from './yearBlock.ts';
import { columnOf, COUNTS, emptyTotals, MONEY, NO_PRICE, ORDERS, overYears } from './yearBlock.ts';

const HEADS = [
  'Fiscal year',
  'Unit price',
  'Cost',
  'Refund',
  'Freight',
  'Labour',
  'Net, year of need',
  'Net, year of order',
];

/** Money by fiscal year, charged to the year of need and to the year of order. */
export function addMoney(
  draft: Draft,
  { plan }: ReportFacts,
  { counts, orders }: { readonly counts: YearBlock; readonly orders: YearBlock },
  columns: number,
): YearBlock {
  addSentence(draft, `By fiscal year: money${inCurrency(plan.settings.money.currency)}`, 'heading', columns);
  addHeads(draft, HEADS);
  const block = { row: draft.rows.length, rows: counts.rows };
  plan.years.forEach((year, index) =>
    addRow(draft, moneyCells(year, index, { counts, orders, money: block })),
  );
  addRow(draft, totals(block, plan.years));
  addSentence(draft, requestSentence(plan.settings.chargeTo), 'note', columns);
  addGap(draft);
  return block;
}

/** The currency in brackets, or nothing where none is set. */
export function inCurrency(currency: string): string {
  return currency === '' ? '' : ` (${currency})`;
}

/** The words for the year that pays. */
export function payingYear(chargeTo: 'order' | 'need'): string {
  return chargeTo === 'order' ? 'year of order' : 'year of need';
}

function requestSentence(chargeTo: 'order' | 'need'): string {
  return `The request is the column "Net, ${payingYear(chargeTo)}". Net = cost - refund + freight + labour. In the year of order stand the purchases whose order goes out in that year, and its own refund and labour.`;
}

type Blocks = { readonly counts: YearBlock; readonly orders: YearBlock; readonly money: YearBlock };

function moneyCells(year: PlanYear, index: number, { counts, orders, money }: Blocks): SheetCell[] {
  const counted = (column: keyof typeof COUNTS): string => address(counts.row + index, COUNTS[column]);
  const ordered = (column: keyof typeof ORDERS): string => address(orders.row + index, ORDERS[column]);
  const own = (column: keyof typeof MONEY): string => address(money.row + index, MONEY[column]);
  const goesOut = columnOf(orders, ORDERS.goesOut);
  const bought = `${columnOf(money, MONEY.cost)}+${columnOf(money, MONEY.freight)}`;
  const inYear = `(${goesOut}>=${counted('from')})*(${goesOut}<=${counted('to')})`;
  const { budget, chargedToOrder } = year;
  return [
    cell(year.label),
    priced(`ROUND(unit_price*(1+price_rise)^${index},2)`, budget?.unitPrice, NO_PRICE),
    priced(`ROUND(${ordered('toOrder')}*${own('unitPrice')},2)`, budget?.cost),
    priced(`ROUND((${ordered('need')}-${ordered('recovered')})*core_refund,2)`, budget?.refund),
    priced(`ROUND(${ordered('toOrder')}*freight_each,2)`, budget?.freight),
    priced(`ROUND(${ordered('need')}*labour_each,2)`, budget?.labour),
    priced(`${own('cost')}-${own('refund')}+${own('freight')}+${own('labour')}`, budget?.net),
    priced(`SUMPRODUCT(${inYear}*(${bought}))-${own('refund')}+${own('labour')}`, chargedToOrder),
  ];
}

const priced = (text: string, value: number | undefined, otherwise = ''): SheetCell =>
  formula(`IF(ISNUMBER(unit_price),${text},"${otherwise}")`, value ?? otherwise, 'money');

function totals(block: YearBlock, years: readonly PlanYear[]): SheetCell[] {
  const total = (column: number, of: (year: PlanYear) => number | undefined): SheetCell => {
    const value = years[0]?.budget === undefined ? '' : overYears(years, (year) => of(year) ?? 0);
    const text = `IF(ISNUMBER(unit_price),${sumOf({ ...block, column })},"")`;
    return formula(text, value, 'money', 'total');
  };
  return [
    cell('All years', 'total'),
    ...emptyTotals(1),
    total(MONEY.cost, ({ budget }) => budget?.cost),
    total(MONEY.refund, ({ budget }) => budget?.refund),
    total(MONEY.freight, ({ budget }) => budget?.freight),
    total(MONEY.labour, ({ budget }) => budget?.labour),
    total(MONEY.needYear, ({ budget }) => budget?.net),
    total(MONEY.orderYear, ({ chargedToOrder }) => chargedToOrder),
  ];
}
