import { isoDay } from '../../src/basics/calendar.ts';
import type { Settings } from '../../src/inventory/settings.ts';
import type { Plan } from '../../src/planning/plan.ts';
import type { PlanYear } from '../../src/planning/planYears.ts';
import type { PlannedInventory } from '../headless.ts';

/** What the JSON says about its own making. */
export type Making = { readonly tool: string; readonly fileHash: string; readonly settings: Settings };

/** The plan as the JSON file holds it; its keys are a contract. */
export function planJson({ inventory, plan, tab }: PlannedInventory, making: Making): object {
  const { recordStart } = inventory;
  return {
    tool: making.tool,
    fileHash: making.fileHash,
    asOf: isoDay(plan.asOf),
    tab,
    recordsSince: {
      date: recordStart.date === undefined ? null : isoDay(recordStart.date),
      from: recordStart.from,
    },
    columns: inventory.columns,
    rows: inventory.rows,
    toCheck: inventory.toCheck.map(({ kind, row, column, given, done, setting }) => ({
      kind,
      row,
      column,
      given,
      done,
      ...(setting !== undefined && { setting }),
    })),
    causes: inventory.causes.map(({ text, count, meaning }) => ({ text, count, meaning })),
    life: lifeJson(plan),
    inService: plan.inService,
    dueNow: plan.dueNow,
    usableStock: plan.usableStock,
    years: plan.years.map((year) => yearJson(year, plan.settings.chargeTo)),
    horizons: plan.horizons,
    ownPast: plan.ownPast.map((trial) => ({ ...trial, madeOn: isoDay(trial.madeOn) })),
    standsOut: plan.standsOut,
    notes: inventory.notes,
    settings: making.settings,
  };
}

function lifeJson({ life, extrapolated }: Plan): object {
  const { model, shape, scale, median, failures, lives, basis, halfGone, tenthGone, ifNotSaidFailed } = life;
  return {
    model,
    shape,
    scale,
    median,
    failures,
    lives,
    basis,
    halfGone,
    tenthGone,
    extrapolated,
    ...(ifNotSaidFailed && { ifNotSaidFailed }),
  };
}

function yearJson(year: PlanYear, chargeTo: Settings['chargeTo']): object {
  const { label, from, to, dueNow, expected, low, high, order, budget } = year;
  const net = chargeTo === 'order' ? year.chargedToOrder : budget?.net;
  return {
    label,
    from: isoDay(from),
    to: isoDay(to),
    dueNow,
    expected,
    low,
    high,
    unitsToOrder: order.unitsToOrder,
    cost: cents(budget?.cost),
    net: cents(net),
    orderBy: isoDay(order.orderBy),
  };
}

/** Money to two decimals; null where there is none. */
const cents = (amount: number | undefined): number | null =>
  amount === undefined ? null : Number(amount.toFixed(2));
