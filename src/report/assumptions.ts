import { ASKS } from '../planning/asked.ts';
import type { Draft } from './draft.ts';
import { addGap, addRow, addSentence, cell, nameCell } from './draft.ts';
import { inCurrency } from './moneyBlock.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { Format, SheetCell } from './sheet.ts';

type Assumption = {
  /** Name of the cell on its sheet; formulas use it. */
  readonly name: string;
  readonly label: string;
  readonly value: SheetCell['value'];
  readonly format: Format;
  readonly note: string;
  /** What the counts were made for: changing it would leave them behind. */
  readonly fixed?: true;
};

/** The cells that a reader may change; everything that depends on them recalculates. */
export function addAssumptions(draft: Draft, facts: ReportFacts, columns: number): void {
  addSentence(draft, 'Assumptions', 'heading', columns);
  addSentence(
    draft,
    'Boxed cells are inputs: change one, and orders, money and totals follow.',
    'note',
    columns,
  );
  for (const each of assumptionsOf(facts)) {
    const row = addRow(draft, [
      cell(each.label, 'label'),
      null,
      null,
      { value: each.value, meaning: each.fixed ? 'body' : 'input', format: each.format },
      cell(each.fixed ? 'fixed' : 'input', 'note'),
      cell(each.note, 'label'),
    ]);
    nameCell(draft, each.name, row, 3);
  }
  addGap(draft);
}

function assumptionsOf({ plan }: ReportFacts): Assumption[] {
  const { settings } = plan;
  const { money } = settings;
  const each = `for one battery${inCurrency(money.currency)}`;
  return [
    {
      name: 'as_of',
      label: 'As of',
      value: plan.asOf,
      format: 'date',
      note: 'the counts were made for this day',
      fixed: true,
    },
    {
      name: 'ask_for',
      label: 'Ask for',
      value: ASKS.indexOf(settings.ask) + 1,
      format: 'whole',
      note: '1 = expected, 2 = enough 4 years in 5, 3 = enough 19 years in 20',
    },
    {
      name: 'unit_price',
      label: 'Price',
      value: money.unitPrice,
      format: 'money',
      note: each,
    },
    {
      name: 'price_rise',
      label: 'Price rise a year',
      value: money.rise,
      format: 'chance',
      note: 'from one fiscal year to the next',
    },
    {
      name: 'core_refund',
      label: 'Refund for the old battery',
      value: money.refund,
      format: 'money',
      note: each,
    },
    {
      name: 'freight_each',
      label: 'Freight',
      value: money.freight,
      format: 'money',
      note: each,
    },
    {
      name: 'labour_each',
      label: 'Labour to fit it',
      value: money.labour,
      format: 'money',
      note: each,
    },
    {
      name: 'stock_on_hand',
      label: 'Usable stock',
      value: plan.usableStock,
      format: 'whole',
      note: 'good or never tested, charge not overdue',
    },
    {
      name: 'stock_to_hold',
      label: 'Stock to hold at year end',
      value: settings.stockTarget,
      format: 'whole',
      note: 'batteries',
    },
    {
      name: 'recovered_share',
      label: 'Share of removed batteries that come back',
      value: settings.recovered,
      format: 'share',
      note: 'after charge and test',
    },
    {
      name: 'mates_reused',
      label: 'Share of good mates used again',
      value: settings.matesReused,
      format: 'share',
      note: 'where whole sets are renewed',
    },
    {
      name: 'lead_months',
      label: 'Lead time',
      value: settings.leadMonths,
      format: 'whole',
      note: 'months from order to shelf',
    },
    {
      name: 'safety_months',
      label: 'Safety time',
      value: settings.safetyMonths,
      format: 'whole',
      note: 'months before the year of need',
    },
  ];
}
