import { isoDay } from '../basics/calendar.ts';
import type { Draft } from './draft.ts';
import { addGap, addRow, addSentence, cell, nameCell } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { Format, SheetCell } from './sheet.ts';

/** The ways of asking, in the order of the number that chooses one. */
export const ASKS = ['expected', '4in5', '19in20'] as const;

type Assumption = {
  /** Name of the cell on its sheet; formulas use it. */
  readonly name: string;
  readonly label: string;
  readonly value: SheetCell['value'];
  readonly format: Format;
  readonly note: string;
};

/** Head of the forecast: what it is, from which rows, by whom. */
export function addHead(draft: Draft, facts: ReportFacts, columns: number): void {
  const { plan } = facts;
  addSentence(draft, 'Replacement forecast for starting batteries', 'title', columns);
  addSentence(
    draft,
    `As of ${isoDay(plan.asOf)}, from ${facts.fileName}, sheet ${facts.tab}`,
    'subtitle',
    columns,
  );
  addSentence(draft, `Made by ${facts.madeBy}. Source file SHA-256 ${facts.fileHash}.`, 'note', columns);
  addSentence(draft, rowSentence(facts), 'label', columns);
  addSentence(draft, recordSentence(facts), 'label', columns);
  if (facts.toCheck.length > 0) {
    const count = facts.toCheck.length;
    const things = count === 1 ? '1 thing to check stands' : `${count} things to check stand`;
    addSentence(draft, `${things} on the sheet of rows to check.`, 'label', columns);
  }
  for (const note of facts.notes) addSentence(draft, note, 'label', columns);
  addGap(draft);
}

/** How many rows were used and what became of the others. */
function rowSentence({ rows, leftOutReasons }: ReportFacts): string {
  const reasons = Object.entries(leftOutReasons).map(([reason, count]) => `${count} ${reason}`);
  const why = reasons.length > 0 ? ` (${reasons.join(', ')})` : '';
  return `Rows: ${rows.read} read = ${rows.used} used + ${rows.repaired} used after a stated repair + ${rows.ageUnknown} planned as age unknown + ${rows.leftOut} left out${why}.`;
}

function recordSentence({ recordStart }: ReportFacts): string {
  const { date, from } = recordStart;
  if (from === 'never')
    return 'This sheet shows only what is still here, so it cannot show how long batteries last: a rule of thumb carries the answer.';
  if (from === 'column') return 'Since when each battery was watched is told by its own row.';
  const since = date === undefined ? 'an unknown date' : isoDay(date);
  const basis = from === 'assumed' ? ' (assumed: the month of the earliest removal)' : '';
  return `Every removal has been written down since ${since}${basis}.`;
}

/** The cells that a reader may change; everything that depends on them recalculates. */
export function addAssumptions(draft: Draft, facts: ReportFacts, columns: number): void {
  addSentence(draft, 'Assumptions', 'heading', columns);
  addSentence(
    draft,
    'Boxed cells are inputs: change one and money, orders and totals follow.',
    'note',
    columns,
  );
  for (const each of assumptionsOf(facts)) {
    const row = addRow(draft, [
      cell(each.label, 'label'),
      null,
      null,
      { value: each.value, meaning: 'input', format: each.format },
      cell('input', 'note'),
      cell(each.note, 'label'),
    ]);
    nameCell(draft, each.name, row, 3);
  }
  addGap(draft);
}

function assumptionsOf({ plan }: ReportFacts): Assumption[] {
  const { settings } = plan;
  const { money } = settings;
  const currency = money.currency === '' ? 'money' : money.currency;
  return [
    { name: 'as_of', label: 'As of', value: plan.asOf, format: 'date', note: 'counts and dates start here' },
    {
      name: 'ask_for',
      label: 'Ask for',
      value: ASKS.indexOf(settings.ask) + 1,
      format: 'whole',
      note: '1 = expected, 2 = enough 4 years in 5, 3 = enough 19 years in 20',
    },
    {
      name: 'unit_price',
      label: 'Price of one battery',
      value: money.unitPrice,
      format: 'money',
      note: currency,
    },
    { name: 'price_rise', label: 'Price rise a year', value: money.rise, format: 'chance', note: 'share' },
    {
      name: 'core_refund',
      label: 'Refund for an old battery',
      value: money.refund,
      format: 'money',
      note: currency,
    },
    {
      name: 'freight_each',
      label: 'Freight for one battery',
      value: money.freight,
      format: 'money',
      note: currency,
    },
    {
      name: 'labour_each',
      label: 'Labour to fit one battery',
      value: money.labour,
      format: 'money',
      note: currency,
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
