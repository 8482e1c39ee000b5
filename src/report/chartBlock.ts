import type { Draft } from './draft.ts';
import { addGap, addSentence } from './draft.ts';
import type { Block } from './sheet.ts';

const CHART_ROWS = 18;

/** Two charts: demand by month with its band, and money by fiscal year. */
export function addCharts(draft: Draft, months: Block, money: Block, currency: string): void {
  addSentence(draft, 'Charts', 'heading', 18);
  const row = draft.rows.length;
  const column = (block: Block, index: number): Block => ({ ...block, column: index, columns: 1 });
  draft.charts.push({
    kind: 'line',
    title: 'Failures to come by month',
    xTitle: 'month',
    yTitle: 'batteries',
    categories: column(months, 0),
    series: [
      { name: 'expected', values: column(months, 3) },
      { name: 'low (5 %)', values: column(months, 4) },
      { name: 'high (95 %)', values: column(months, 5) },
    ],
    at: { row, column: 0, rows: CHART_ROWS, columns: 8 },
  });
  draft.charts.push({
    kind: 'column',
    title: 'Net money by fiscal year',
    xTitle: 'fiscal year',
    yTitle: currency === '' ? 'money' : currency,
    categories: column(money, 0),
    series: [
      { name: 'year of need', values: column(money, 6) },
      { name: 'year of order', values: column(money, 7) },
    ],
    at: { row, column: 9, rows: CHART_ROWS, columns: 8 },
  });
  for (let line = 0; line <= CHART_ROWS; line += 1) addGap(draft);
}
