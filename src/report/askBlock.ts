import { asked, ASKS } from '../planning/asked.ts';
import type { Ask } from '../planning/planSettings.ts';
import type { Draft } from './draft.ts';
import { addGap, addHeads, addSentence, cell, formula, placeRow } from './draft.ts';
import { inCurrency } from './moneyBlock.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { SheetCell } from './sheet.ts';
import { address } from './sheet.ts';
import type { YearBlocks } from './yearBlock.ts';
import { columnOf, COUNTS, NO_PRICE, ORDERS } from './yearBlock.ts';

/** The words for each way of asking. */
export const ASK_WORDS: Record<Ask, string> = {
  expected: 'expected',
  '4in5': 'enough 4 years in 5',
  '19in20': 'enough 19 years in 20',
};

/** What to ask for under each way of asking; its cells are written later. Answers its first row. */
export function addAsks(draft: Draft, { plan }: ReportFacts, columns: number): number {
  const last = plan.years[plan.years.length - 1]!.label;
  addSentence(
    draft,
    `What to ask for, up to the end of ${last}${inCurrency(plan.settings.money.currency)}`,
    'heading',
    columns,
  );
  addHeads(draft, ['Way of asking', 'Batteries needed', 'To buy', 'At the first price']);
  const row = draft.rows.length;
  addGap(draft, ASKS.length + 1);
  return row;
}

/** Writes what to ask for under each way of asking, over all years of the plan. */
export function fillAsks(draft: Draft, facts: ReportFacts, first: number, blocks: YearBlocks): void {
  ASKS.forEach((ask, index) => placeRow(draft, first + index, askCells(facts, ask, first + index, blocks)));
}

function askCells({ plan }: ReportFacts, ask: Ask, row: number, { counts, orders }: YearBlocks): SheetCell[] {
  const counted = (column: keyof typeof COUNTS): string => `SUM(${columnOf(counts, COUNTS[column])})`;
  const onOrder = `SUM(${columnOf(orders, ORDERS.onOrder)})`;
  const inYear = (column: keyof typeof COUNTS): string => columnOf(counts, COUNTS[column]);
  const needed = `(${inYear('dueNow')}+${inYear(ask)}+${inYear('fleetChange')})`;
  const back = `SUMPRODUCT(ROUND(recovered_share*${needed}+mates_reused*${inYear('mates')},1))`;
  const missing = `${address(row, 1)}-${back}+stock_to_hold-stock_on_hand-${onOrder}`;
  const { need, buy } = asked(plan, ask);
  const price = plan.settings.money.unitPrice;
  return [
    cell(ASK_WORDS[ask]),
    formula(`${counted('dueNow')}+${counted(ask)}+${counted('fleetChange')}`, need, 'oneDecimal'),
    formula(`ROUNDUP(MAX(0,ROUND(${missing},6)),0)`, buy, 'whole'),
    formula(
      `IF(ISNUMBER(unit_price),${address(row, 2)}*unit_price,"${NO_PRICE}")`,
      price === null ? NO_PRICE : buy * price,
      'money',
    ),
  ];
}
