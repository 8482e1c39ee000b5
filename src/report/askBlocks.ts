import { chanceAt } from '../planning/funding.ts';
import type { Ask } from '../planning/planSettings.ts';
import type { PlanYear } from '../planning/planYears.ts';
import type { Draft } from './draft.ts';
import { addGap, addRow, addSentence, cell, formula, nameCell } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import { ASKS } from './assumptions.ts';
import type { SheetCell } from './sheet.ts';
import { address, fixedBlock } from './sheet.ts';
import type { YearBlock } from './yearBlocks.ts';
import { NO_PRICE } from './yearBlocks.ts';

const ASK_WORDS: Record<Ask, string> = {
  expected: 'expected',
  '4in5': 'enough 4 years in 5',
  '19in20': 'enough 19 years in 20',
};

/** Column of the years' block in which the need of each way of asking stands. */
const NEED_COLUMN: Record<Ask, number> = { expected: 4, '4in5': 7, '19in20': 8 };

/** What to ask for over all years of the plan, under each way of asking. */
export function addAsks(draft: Draft, { plan }: ReportFacts, units: YearBlock, columns: number): void {
  const last = plan.years[plan.years.length - 1]!.label;
  addSentence(draft, `What to ask for, up to the end of ${last}`, 'heading', columns);
  addRow(
    draft,
    ['Way of asking', 'Batteries needed', 'To buy', 'Purchase at the first price'].map((head) =>
      cell(head, 'columnHead'),
    ),
  );
  for (const ask of ASKS)
    addRow(draft, askCells(ask, plan.years, plan.usableStock, plan.settings, units, draft.rows.length));
  addGap(draft);
}

type AskSettings = ReportFacts['plan']['settings'];

function askCells(
  ask: Ask,
  years: readonly PlanYear[],
  stock: number,
  settings: AskSettings,
  units: YearBlock,
  row: number,
): SheetCell[] {
  const column = (at: number): string =>
    `${address(units.row, at)}:${address(units.row + units.rows - 1, at)}`;
  const need = years.reduce((sum, year) => sum + year.dueNow + year.needs[ask] + year.fleetChange, 0);
  const mates = years.reduce((sum, year) => sum + year.mates, 0);
  const onOrder = years.reduce((sum, year) => sum + year.order.onOrder, 0);
  const buy = Math.ceil(
    Number(
      Math.max(
        0,
        need * (1 - settings.recovered) -
          settings.matesReused * mates +
          settings.stockTarget -
          stock -
          onOrder,
      ).toFixed(6),
    ),
  );
  const price = settings.money.unitPrice;
  const short = `${address(row, 1)}*(1-recovered_share)-mates_reused*SUM(${column(18)})+stock_to_hold-stock_on_hand-SUM(${column(11)})`;
  return [
    cell(ASK_WORDS[ask]),
    formula(
      `SUM(${column(3)})+SUM(${column(NEED_COLUMN[ask])})+SUM(${column(19)})`,
      Number(need.toFixed(1)),
      'oneDecimal',
    ),
    formula(`ROUNDUP(MAX(0,ROUND(${short},6)),0)`, buy, 'whole'),
    formula(
      `IF(ISNUMBER(unit_price),${address(row, 2)}*unit_price,"${NO_PRICE}")`,
      price === null ? NO_PRICE : buy * price,
      'money',
    ),
  ];
}

/** "If you fund this many": the chance that it is enough and how many are likely missing. */
export function addFunding(draft: Draft, { plan }: ReportFacts, columns: number): void {
  const { funding } = plan;
  if (funding.rows.length === 0) return;
  addSentence(
    draft,
    `If you fund so many batteries for failures up to the end of ${funding.until}`,
    'heading',
    columns,
  );
  const funded = Math.round(
    plan.years.slice(0, 2).reduce((sum, year) => sum + year.needs[plan.settings.ask], 0),
  );
  const first = draft.rows.length + 5;
  const table = fixedBlock({ row: first, column: 0, rows: funding.rows.length, columns: 3 });
  const smallest = funding.rows[0]!.count;
  const looked = (column: number, below: string): string =>
    `IF(funded_units<${smallest},${below},VLOOKUP(funded_units,${table},${column},TRUE))`;
  const found = chanceAt(funding, funded);
  const input = addRow(draft, [
    cell('Funded batteries', 'label'),
    null,
    null,
    cell(funded, 'input', 'whole'),
    cell('input', 'note'),
  ]);
  nameCell(draft, 'funded_units', input, 3);
  const enough = formula(looked(2, '"hardly ever enough"'), found?.chance ?? 'hardly ever enough', 'share');
  addRow(draft, [cell('Chance that it is enough', 'label'), null, null, enough]);
  const missing = formula(
    looked(3, '"more than listed"'),
    found?.missing ?? 'more than listed',
    'oneDecimal',
  );
  addRow(draft, [cell('Batteries likely missing', 'label'), null, null, missing]);
  addGap(draft);
  addRow(
    draft,
    ['Batteries', 'Chance that it is enough', 'Likely missing'].map((head) => cell(head, 'columnHead')),
  );
  for (const { count, chance, missing: short } of funding.rows) {
    addRow(draft, [
      cell(count, 'body', 'whole'),
      cell(chance, 'body', 'chance'),
      cell(short, 'body', 'oneDecimal'),
    ]);
  }
  addGap(draft);
}
