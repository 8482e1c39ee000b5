import { asked, ASKS } from '../../../src/planning/asked.ts';
import type { PlanYear } from '../../../src/planning/planYears.ts';
import type { PartPlan } from '../../../src/planning/planParts.ts';
import { ASK_WORDS } from '../../../src/report/askBlock.ts';
import { countedWord } from '../../../src/report/yearBlock.ts';
import type { ShownPlan } from '../../computing/planAnswer.ts';
import type { TableHead } from '../../parts/wideTable.tsx';
import { oneDecimal, shownMoney, wholeNumber } from '../../shownNumber.ts';
import { ALL_YEARS, LATE, NO_PRICE, RESULT } from '../../text/planText.ts';

/** A table's content, without its caption. */
export type Table = {
  readonly heads: readonly TableHead[];
  readonly rows: readonly (readonly string[])[];
  readonly total?: readonly string[];
};

/** What a day looks like in the user's own order. */
export type ShowDay = (day: number) => string;

const heads = (first: string, ...numbers: string[]): TableHead[] => [
  { text: first },
  ...numbers.map((text) => ({ text, number: true })),
];

const sum = (years: readonly PlanYear[], of: (year: PlanYear) => number): number =>
  years.reduce((all, year) => all + of(year), 0);

/** What the year pays, by the way in which purchases are charged; undefined without a price. */
export function netOf({ budget, chargedToOrder }: PlanYear, { settings }: ShownPlan): number | undefined {
  return settings.chargeTo === 'order' ? chargedToOrder : budget?.net;
}

/** The net money of all years, or undefined without a price. */
export function netInAll(plan: ShownPlan): number | undefined {
  const nets = plan.years.map((year) => netOf(year, plan));
  return nets.reduce<number | undefined>(
    (all, net) => (all === undefined || net === undefined ? undefined : all + net),
    0,
  );
}

/** Units to order in all years. */
export function unitsInAll({ years }: ShownPlan): number {
  return sum(years, ({ order }) => order.unitsToOrder);
}

/** What to ask for under each way of asking: units and money. */
export function askTable(plan: ShownPlan): Table {
  const { unitPrice, currency } = plan.settings.money;
  const price = `At the first price${currency && `, ${currency}`}`;
  return {
    heads: heads('Way of asking', 'Needed', 'To buy', price),
    rows: ASKS.map((ask) => {
      const { need, buy } = asked(plan, ask);
      const money = unitPrice === null ? NO_PRICE : shownMoney(buy * unitPrice);
      return [ASK_WORDS[ask], oneDecimal(need), wholeNumber(buy), money];
    }),
  };
}

/** The request at a glance: what to order in each fiscal year, by when, for how much. */
export function requestTable(plan: ShownPlan, showDay: ShowDay): Table {
  const net = netInAll(plan);
  return {
    heads: [
      ...heads('Fiscal year', 'To order'),
      { text: 'Order by' },
      { text: `Net${plan.settings.money.currency && `, ${plan.settings.money.currency}`}`, number: true },
    ],
    rows: plan.years.map((year) => [
      year.label,
      wholeNumber(year.order.unitsToOrder),
      orderBy(year, showDay),
      moneyText(netOf(year, plan)),
    ]),
    total: [ALL_YEARS, wholeNumber(unitsInAll(plan)), '', moneyText(net)],
  };
}

const moneyText = (net: number | undefined): string => (net === undefined ? NO_PRICE : shownMoney(net));

const orderBy = ({ order }: PlanYear, showDay: ShowDay): string =>
  order.unitsToOrder === 0 ? '' : order.late ? `${showDay(order.orderBy)}\n${LATE}` : showDay(order.orderBy);

/** The fiscal years: counts, stock, orders, money. */
export function yearTable(plan: ShownPlan, showDay: ShowDay): Table {
  const { years, settings } = plan;
  const net = netInAll(plan);
  const money = `Net, year of ${settings.chargeTo}`;
  return {
    heads: [
      ...heads('Fiscal year', 'Due now', `Expected ${countedWord(plan)}`, 'Low', 'High', 'Fleet change'),
      ...heads('', 'Needed', 'Opening stock', 'On order', 'Recovered', 'To order', 'Closing stock').slice(1),
      { text: 'Order by' },
      { text: money, number: true },
    ],
    rows: years.map((year) => yearCells(year, plan, showDay)),
    total: [
      ALL_YEARS,
      wholeNumber(sum(years, ({ dueNow }) => dueNow)),
      oneDecimal(sum(years, ({ expected }) => expected)),
      ...['', ''],
      oneDecimal(sum(years, ({ fleetChange }) => fleetChange)),
      oneDecimal(sum(years, ({ order }) => order.need)),
      '',
      wholeNumber(sum(years, ({ order }) => order.onOrder)),
      oneDecimal(sum(years, ({ order }) => order.recovered)),
      wholeNumber(unitsInAll(plan)),
      ...['', ''],
      moneyText(net),
    ],
  };
}

function yearCells(year: PlanYear, plan: ShownPlan, showDay: ShowDay): string[] {
  const { label, dueNow, expected, low, high, fleetChange, order } = year;
  return [
    label,
    wholeNumber(dueNow),
    oneDecimal(expected),
    wholeNumber(low),
    wholeNumber(high),
    oneDecimal(fleetChange),
    oneDecimal(order.need),
    oneDecimal(order.opening),
    wholeNumber(order.onOrder),
    oneDecimal(order.recovered),
    wholeNumber(order.unitsToOrder),
    oneDecimal(order.closing),
    orderBy(year, showDay),
    moneyText(netOf(year, plan)),
  ];
}

/** The plan by site or by type. */
export function partTable(first: string, parts: readonly PartPlan[], { years }: ShownPlan): Table {
  const perYear = years.flatMap(({ label }) =>
    ['expected', 'low', 'high', 'to order'].map((head) => `${label} ${head}`),
  );
  return {
    heads: heads(first, 'In service', 'Due now', ...perYear),
    rows: parts.map((part) => [
      part.name === '' ? RESULT.empty : part.name,
      wholeNumber(part.inService),
      wholeNumber(part.dueNow),
      ...part.years.flatMap(({ expected, low, high, unitsToOrder }) => [
        oneDecimal(expected),
        wholeNumber(low),
        wholeNumber(high),
        wholeNumber(unitsToOrder),
      ]),
    ]),
  };
}
