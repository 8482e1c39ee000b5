import type { Draft } from './draft.ts';
import { addGap, keepTogether } from './draft.ts';
import { inCurrency } from './moneyBlock.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { Block, Chart } from './sheet.ts';
import type { YearBlock } from './yearBlock.ts';
import { countedWord, MONEY } from './yearBlock.ts';

const CHART_ROWS = 12;

/** Leaves the room for two charts beside each other; answers its first row. */
export function addChartRoom(draft: Draft): number {
  keepTogether(draft, CHART_ROWS);
  const row = draft.rows.length;
  addGap(draft, CHART_ROWS);
  return row;
}

/** Two charts: demand by month with its band, and money by fiscal year, which is drawn as soon as there is a price. */
export function addCharts(
  draft: Draft,
  row: number,
  { plan }: ReportFacts,
  { months, money }: { readonly months: Block; readonly money: YearBlock },
): void {
  const { currency } = plan.settings.money;
  draft.charts.push(demandChart(row, months, countedWord(plan)), moneyChart(row, money, currency));
}

function demandChart(row: number, months: Block, counted: string): Chart {
  const column = (index: number): Block => ({ ...months, column: index, columns: 1 });
  return {
    kind: 'line',
    title: `Expected ${counted} by month, with their 90 % band`,
    xTitle: 'month',
    yTitle: 'batteries',
    yFormat: 'whole',
    categories: column(0),
    series: [
      { name: 'expected', values: column(3) },
      { name: 'low (5 %)', values: column(4) },
      { name: 'high (95 %)', values: column(5) },
    ],
    at: { row, column: 0, rows: CHART_ROWS, columns: 7 },
  };
}

function moneyChart(row: number, money: YearBlock, currency: string): Chart {
  const column = (index: number): Block => ({ ...money, column: index, columns: 1 });
  return {
    kind: 'column',
    title: `Net money by fiscal year${inCurrency(currency)}`,
    xTitle: 'fiscal year',
    yTitle: currency === '' ? 'money' : currency,
    yFormat: 'whole',
    categories: column(0),
    series: [
      { name: 'charged to the year of need', values: column(MONEY.needYear) },
      { name: 'charged to the year of order', values: column(MONEY.orderYear) },
    ],
    at: { row, column: 7, rows: CHART_ROWS, columns: 5 },
  };
}
