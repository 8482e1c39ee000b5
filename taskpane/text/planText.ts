import type { Ask } from '../../src/planning/planSettings.ts';

/** The sentences of the Plan view. */

export const NO_INVENTORY = 'Nothing has been read yet: open an inventory and read it in the Inventory view.';
export const TO_INVENTORY = 'Go to the inventory';

export const SECTIONS = {
  request: 'Years and request',
  money: 'Price and money',
  stock: 'Stock and orders under way',
  renewal: 'When batteries are renewed',
  back: 'What comes back',
  fleet: 'Changes of the fleet',
  ordering: 'Time to order',
} as const;

export const REQUEST = {
  fiscalFirstMonth: 'The fiscal year begins in',
  fiscalLabel: 'A fiscal year is named by',
  years: 'Fiscal years to plan',
  yearsHint: 'The one that has begun counts as the first; 1 to 10.',
  ask: 'Ask for',
  askHint: 'The surer the request, the more it asks for.',
  chargeTo: 'Purchases are charged to',
} as const;

export const FISCAL_LABELS = [
  ['endYear', 'the year in which it ends'],
  ['startYear', 'the year in which it begins'],
  ['both', 'both years'],
] as const;

export const ASK_CHOICES: readonly (readonly [Ask, string])[] = [
  ['expected', 'the expected number'],
  ['4in5', 'enough 4 years in 5'],
  ['19in20', 'enough 19 years in 20'],
];

export const CHARGE_CHOICES = [
  ['order', 'the year of order'],
  ['need', 'the year of need'],
] as const;

export const MONEY = {
  unitPrice: 'Price of one battery',
  unitPriceHint: 'Without a price, money is left open.',
  currency: 'Currency',
  currencyHint: 'A word or sign, as it shall be written.',
  rise: 'Price rise a year, %',
  refund: 'Refund for the old battery',
  freight: 'Freight for each',
  labour: 'Labour to fit one',
  failureCost: 'A failure in the field costs, beside the battery',
  failureCostHint: 'Towing, a missed job, a crew that waits. Only the least-cost age needs it.',
} as const;

export const STOCK = {
  usable: 'Usable stock',
  usableHint: 'Counted from the inventory: serviceable or untested, and not overdue for charge.',
  stockTarget: 'Stock to hold at year end',
  onOrder: 'On order',
  noOrders: 'Nothing on order.',
} as const;

export const ORDERING = {
  leadMonths: 'Months from order to delivery',
  safetyMonths: 'Months of safety on top',
} as const;

export const RENEWAL = {
  policy: 'Batteries are renewed',
  plannedAge: 'Planned age, months',
  plannedAgeHint: 'What fails before is renewed when it fails.',
  overdueMonths: 'Spread those already older over so many months',
  overdueMonthsHint: 'The oldest first; 0 renews them all at once.',
  wholeSets: 'A failure renews the whole set',
  wholeSetsHint: 'Else each battery alone.',
  groupBy: 'Life is counted apart for each',
  groupByHint: 'A group with few failures leans on the rule of thumb.',
} as const;

export const POLICIES = [
  ['failure', 'on failure'],
  ['age', 'at a planned age'],
  ['leastCost', 'at the age that costs least'],
] as const;

export const GROUPS = [
  [null, 'not apart: the whole fleet as one'],
  ['type', 'type'],
  ['site', 'site'],
  ['maker', 'maker'],
] as const;

export const BACK = {
  recovered: 'Removed batteries that go back to stock, %',
  recoveredHint: 'After charge and test. 0 until you know your own share.',
  matesReused: 'Good mates of a renewed set that are used again, %',
} as const;

export const LIST = {
  month: 'Month',
  monthHint: 'such as 2027-03',
  count: 'Batteries',
  change: 'More (or fewer, with a minus)',
  site: 'Site',
  type: 'Type',
  any: 'whole fleet',
  addOrder: 'Add to what is on order',
  addChange: 'Add a change of the fleet',
  changes: 'Places for batteries that come or go',
  remove: 'Take out',
  noChanges: 'The fleet stays as it is.',
} as const;

/** What the folded parts of the inputs say of themselves. */
export const STATES = {
  years: (years: number, month: string) =>
    `${years === 1 ? 'one fiscal year' : `${years} fiscal years`} from ${month}`,
  noPrice: 'no price yet, so money is left open',
  each: (price: string) => `${price} each`,
  rise: (share: string, up: boolean) => `${up ? 'rising' : 'falling'} ${share} a year`,
  usable: (count: string) => `${count} usable`,
  toHold: (count: string) => `${count} to hold at year end`,
  onOrder: (count: string) => `${count === '0' ? 'nothing' : count} on order`,
  ordering: (lead: string, safety: string) =>
    `delivery takes ${lead} ${lead === '1' ? 'month' : 'months'}, ${safety} more for safety`,
  atAge: (age: string) => `at ${age} months`,
  alone: 'each battery alone',
  wholeSets: 'whole sets',
  apart: (group: string) => `life apart for each ${group}`,
  nothingBack: 'nothing',
  recovered: (share: string) => `${share} of what is removed`,
  mates: (share: string) => `${share} of good mates`,
  changes: (count: number) => (count === 0 ? 'none' : count === 1 ? 'one change' : `${count} changes`),
} as const;

export const RESULT = {
  heading: 'The plan',
  detail: 'The plan in detail',
  request: 'The request',
  years: 'By fiscal year, term by term',
  funding: 'If you fund so many',
  sites: 'By site',
  types: 'By type',
  site: 'Site',
  type: 'Type',
  month: 'Month',
  year: 'Fiscal year',
  moneyUnit: 'money',
  rests: 'What this rests on',
  method: 'Method and cautions, all of them',
  compare: 'Compare',
  write: 'Write forecast sheet',
  writeHint: 'Adds new sheets; none is overwritten.',
  liveFormulas: "Live functions beside the plan's figures",
  liveFormulasHint: 'For a workbook whose readers have Crankbook too.',
  empty: 'not said',
} as const;

export const LATE = 'late: order now';
export const NO_PRICE = 'no price yet';
export const ALL_YEARS = 'All years';

export const BANDS_DO_NOT_ADD =
  "Low and high do not add up: not every part has its bad year at once. The total's own band is the one to use.";
export const TYPES_AS_WRITTEN =
  'Types are named as the sheet names them: one type in two spellings takes two lines.';
export const asksTitle = (last: string): string => `What to ask for, up to the end of ${last}`;
export const BAND_NOTE = 'Low and high hold 9 of 10 such years (90 % band).';
export const DUE_NOTE = 'Due now: condemned, but still in a vehicle. It comes on top of what will fail.';

/** The sentence that is read out when a plan is new. */
export function plannedSentence(units: string, span: string, money: string | undefined): string {
  return `To order ${span}: ${units} batteries${money === undefined ? '' : `, ${money} net`}.`;
}

export const fundingLabel = (counted: string, until: string): string =>
  `Batteries funded for ${counted} up to the end of ${until}`;
export const FUNDING_NOTE = 'What is due now comes on top.';
export function fundingSentence(chance: string, missing: string): string {
  return `Chance that it is enough: ${chance}. Batteries likely missing: ${missing}.`;
}
export const FUNDING_TOO_FEW = 'That is hardly ever enough.';

export const COMPARE = {
  name: 'Name of this plan',
  keep: 'Keep it for comparing',
  drop: 'Drop the kept plan',
  change: 'Change a setting: the plan that follows then stands beside the kept one.',
  usual: 'Plan A',
  now: 'now',
  difference: 'difference',
} as const;

export const besideNow = (name: string): string => `${name} beside the plan as it is now`;
export const keptSentence = (name: string): string => `"${name}" is kept.`;

export function paysSentence(age: string, cost: string, currency: string): string {
  return `Renewal at ${age} months pays only if a failure in the field costs more than ${cost}${currency && ` ${currency}`} beside the battery.`;
}
export const NEVER_PAYS =
  'With so little wear-out, renewal by age never pays: it throws good batteries away.';
export const PAYS_NEEDS_PRICE = 'With a price, it can be said from which cost of a failure on this pays.';
export const leastCostSentence = (age: string): string => `The least-cost age is ${age} months.`;
export const LEAST_COST_NEEDS =
  'The age that costs least is found from the price of one battery and what a failure in the field costs: enter both under "Price and money".';
export const LEAST_COST_WAITS = 'Waiting for failure costs least here, so batteries are renewed on failure.';

export const PLAN_NOW = 'Plan now';

export const monthsTitle = (counted: string): string => `Expected ${counted} by month, with their 90 % band`;
export const moneyTitle = (chargeTo: 'order' | 'need'): string =>
  `Net money by fiscal year, charged to the year of ${chargeTo}`;
