import type { NotIssued, StoreLimits, StoreList, ToCharge, ToWarm } from '../inventory/storeList.ts';
import type { StoreSet } from '../inventory/storeSets.ts';
import type { Battery } from '../service/battery.ts';
import type { SheetCell } from './sheet.ts';
import { storeRow } from './storeRow.ts';

/** One list of the store: its title, what to know, what to mind, its rows or what is said where there are none. */
export type StoreBlock = {
  readonly title: string;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  readonly rows: readonly (readonly SheetCell[])[];
  readonly none: string;
};

/** The lists in the order of the storekeeper's day. */
export const STORE_BLOCKS: readonly ((list: StoreList, limits: StoreLimits) => StoreBlock)[] = [
  ({ chargeNext }, { chargeSoonDays }) => ({
    title: titled('Charge next', chargeNext.length),
    notes: [
      `Overdue first; then those without a charge on record; then those due within ${counted(chargeSoonDays, 'day')}. A condemned battery is not listed.`,
    ],
    cautions: [
      'Ventilate: hydrogen. No flames, no sparks; charger off before clamps go on or come off. Charger set for the construction, each battery of a set alone; stop at 50 C.',
      'Never charge a battery that is frozen, cracked, bulged or hot.',
    ],
    rows: chargeNext.map((each) => storeRow(each.battery, chargeText(each))),
    none: 'Nothing to charge.',
  }),
  ({ issueNext, notIssued }) => ({
    title: titled('Issue next', issueNext.length),
    notes: [
      `Oldest made first, of those tested good, charged and within their shelf limit. ${notIssuedText(notIssued)}`,
    ],
    cautions: ['A battery here weighs about 40 kg: two persons or a hoist. Cover the posts.'],
    rows: issueNext.map((battery) => storeRow(battery, issueText(battery))),
    none: 'Nothing that is tested good, charged and within its shelf limit.',
  }),
  ({ sets }, limits) => ({
    title: titled('Sets to issue', sets.length),
    notes: [
      `Of the batteries above: one site, type and construction, made within ${counted(limits.setMonths, 'month')}, readings within ${Number((limits.setReading * 100).toFixed(1))} %, rest volts within ${limits.setVolts} V. Two of a four make a pair.`,
    ],
    cautions: [],
    rows: sets.flatMap(setRows),
    none: 'No two batteries fit for issue are alike enough for a set.',
  }),
  ({ turnIns }) => ({
    title: titled('Turn-ins not yet judged', turnIns.length),
    notes: ['In stock again after service, without a test that counts. Charge, rest and test before issue.'],
    cautions: [
      'Look first: never charge, jump or test a battery that is frozen, cracked, bulged, leaking or hot.',
    ],
    rows: turnIns.map((battery) => storeRow(battery, turnInText(battery))),
    none: 'No turn-in waits for its test.',
  }),
  ({ mayFreeze }) => ({
    title: titled('May freeze here', mayFreeze.length),
    notes: [
      'The coldest temperature of its place lies below the freezing point at the low end of its charge band, and 5 K. In stock first, then in vehicles. Only batteries with a rest voltage on record, at places whose coldest temperature is given, can be listed.',
    ],
    cautions: [
      'Once frozen: do not charge, jump or test; thaw slowly indoors without direct heat, then look for cracks.',
    ],
    rows: mayFreeze.map((each) => storeRow(each.battery, frostText(each))),
    none: 'No battery is known to be at risk of frost.',
  }),
  ({ overShelf }, { shelfMonths, shelfMonthsFlooded }) => ({
    title: titled('Over the shelf limit', overShelf.length),
    notes: [
      `Never fitted, and made longer ago than ${counted(shelfMonths, 'month')}, flooded ${counted(shelfMonthsFlooded, 'month')}. Charge, rest and test each before it is issued or kept.`,
    ],
    cautions: [],
    rows: overShelf.map(({ battery, months, limit }) =>
      storeRow(battery, `${months.toFixed(0)} months since it was made, the limit is ${limit}`),
    ),
    none: 'No battery is over its shelf limit.',
  }),
];

const titled = (title: string, count: number): string => (count === 0 ? title : `${title}: ${count}`);

const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;

function chargeText({ reason, days, battery }: ToCharge): string {
  if (reason === 'awaiting charge') return battery.verdictReason ?? 'its test asks for a charge';
  if (days === undefined) return 'no charge on record';
  if (days > 0) return `due in ${counted(days, 'day')}`;
  return days === 0 ? 'due today' : `overdue by ${counted(-days, 'day')}`;
}

function issueText({ made, installed }: Battery): string {
  const age = made === undefined ? '; made date unknown: read its label' : '';
  return `${installed === undefined ? 'never fitted' : 'has been in service before'}${age}`;
}

function notIssuedText({ notTested, toCharge, overShelf, condemned }: NotIssued): string {
  const parts = [
    [notTested, 'not tested'],
    [toCharge, 'to charge'],
    [overShelf, 'over the shelf limit'],
    [condemned, 'condemned'],
  ] as const;
  const said = parts.flatMap(([count, why]) => (count > 0 ? `${count} ${why}` : []));
  return said.length === 0 ? 'All in stock are listed.' : `Not listed: ${said.join(', ')}.`;
}

function setRows({ batteries, months, reading, volts }: StoreSet, index: number): SheetCell[][] {
  const name = `Set ${index + 1}, ${batteries.length === 4 ? 'a four' : 'a pair'}`;
  const apart = `made ${months.toFixed(0)} months, readings ${(reading * 100).toFixed(0)} %, rest volts ${volts.toFixed(2)} V apart`;
  return batteries.map((battery, at) => storeRow(battery, at === 0 ? `${name}: ${apart}` : name));
}

const turnInText = ({ verdict, verdictReason }: Battery): string =>
  verdict === undefined ? 'no test that counts' : (verdictReason ?? verdict);

function frostText({ battery, freezesAt, coldest, heated }: ToWarm): string {
  const where = battery.whereabouts === 'inService' ? 'in its vehicle: ' : '';
  const { whereabouts, verdict } = battery;
  const act = heated && whereabouts === 'inStock' ? 'the store is heated: keep it in there' : 'charge it';
  const next = verdict === 'Condemned' ? 'condemned: take it out' : act;
  return `${where}may freeze at ${freezesAt.toFixed(0)} C, coldest here ${coldest} C; ${next}`;
}
