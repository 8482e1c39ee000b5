import { isoDay } from '../../src/basics/calendar.ts';
import type { Inventory } from '../../src/inventory/inventory.ts';
import type { PlanYear } from '../../src/planning/planYears.ts';
import type { PlannedInventory } from '../headless.ts';

const START_WORDS: Record<Exclude<Inventory['recordStart']['from'], 'never'>, string> = {
  option: 'as you said',
  column: "by each row's own date",
  assumed: 'assumed: the month of the earliest removal; say --records-since',
};

function recordLine({ recordStart: { date, from } }: Inventory): string {
  const since = date === undefined ? '' : ` since ${isoDay(date)}`;
  if (from === 'never') return 'No removal is on record: only survivors are.';
  return `Every removal written down${since} (${START_WORDS[from]}).`;
}

const orderBy = ({ unitsToOrder, orderBy, late }: PlanYear['order']): string =>
  unitsToOrder === 0 ? '' : `${isoDay(orderBy)}${late ? ' late: order now' : ''}`;

function restsOn({ failures, lives, basis }: PlannedInventory['plan']['life']): string {
  if (failures === 0) return 'the rule of thumb: no failure is on record';
  return `${failures} ${failures === 1 ? 'failure' : 'failures'} among ${lives} lives (${basis})`;
}

/** What a plan says in a few lines on a terminal. */
export function planSummary({ inventory, plan }: PlannedInventory, warnings: readonly string[]): string {
  const { rows } = inventory;
  const { life } = plan;
  return [
    ...warnings,
    ...inventory.notes,
    `As of ${isoDay(plan.asOf)}: ${plan.inService} batteries in service, ${plan.dueNow} due now, ${plan.usableStock} usable in stock.`,
    `Rows: ${rows.read} read = ${rows.used} used + ${rows.repaired} repaired + ${rows.ageUnknown} age unknown + ${rows.leftOut} left out; ${inventory.toCheck.length} things to check.`,
    recordLine(inventory),
    `Life: half are gone by ${life.halfGone.best.toFixed(0)} months (${life.halfGone.low.toFixed(0)} to ${life.halfGone.high.toFixed(0)}), from ${restsOn(life)}.`,
    'Fiscal year   expected   low  high   to order   order by',
    ...plan.years.map(({ label, expected, low, high, order }) =>
      `${label.padEnd(12)}${expected.toFixed(1).padStart(10)}${String(low).padStart(6)}${String(high).padStart(6)}${String(order.unitsToOrder).padStart(11)}   ${orderBy(order)}`.trimEnd(),
    ),
    '',
  ].join('\n');
}
