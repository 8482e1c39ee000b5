import type { Day } from '../basics/calendar.ts';
import { monthsOnShelf } from '../service/monthsOnShelf.ts';
import type { Battery } from '../service/battery.ts';
import type { Frost, NamedPlaces } from './frost.ts';
import { frostAt, placeOf } from './frost.ts';
import type { SetLimits, StoreSet } from './storeSets.ts';
import { storeSets } from './storeSets.ts';

/** The limits by which a store's batteries are sorted into lists. */
export type StoreLimits = SetLimits & {
  /** Months from made after which a battery that was never fitted is too long on its shelf; flooded ones apart. */
  readonly shelfMonths: number;
  readonly shelfMonthsFlooded: number;
  /** Batteries due for charge within so many days are listed beside those overdue. */
  readonly chargeSoonDays: number;
};

/** Why a battery is to be charged: its test asks for it, its day has come or comes soon, or no charge is on record. */
export type ChargeReason = 'awaiting charge' | 'due' | 'no charge on record' | 'due soon';

/** A battery to charge; `days` to its day (0 or less: the day has come) where one is known. */
export type ToCharge = {
  readonly battery: Battery;
  readonly reason: ChargeReason;
  readonly days?: number;
};

/** A battery that may freeze where it is. */
export type ToWarm = Frost & { readonly battery: Battery };

/** A battery longer on its shelf than its limit [months]. */
export type TooLong = { readonly battery: Battery; readonly months: number; readonly limit: number };

/** Batteries in stock that are not to be issued now, counted by the first reason that holds. */
export type NotIssued = {
  readonly condemned: number;
  readonly notTested: number;
  readonly toCharge: number;
  readonly overShelf: number;
};

/** What a storekeeper does next. A battery can stand in several lists, in `sets` only where it is fit for issue. */
export type StoreList = {
  readonly inStock: number;
  readonly chargeNext: readonly ToCharge[];
  readonly issueNext: readonly Battery[];
  readonly notIssued: NotIssued;
  readonly sets: readonly StoreSet[];
  readonly turnIns: readonly Battery[];
  readonly mayFreeze: readonly ToWarm[];
  readonly overShelf: readonly TooLong[];
};

/**
 * What a storekeeper does next with the batteries in stock: charge, issue, match to sets, judge, bring in from the
 * frost, look at for their time on the shelf. Batteries in vehicles stand among those that may freeze only.
 * @param batteries  as they stand at as-of
 * @param asOf       the day of the list
 * @param limits     limits of shelf time, of charge to come and of sets
 * @param sites      temperatures of places; a place without them tells nothing about frost
 * @returns lists, each in the order in which it is to be worked through
 */
export function storeList(
  batteries: readonly Battery[],
  asOf: Day,
  limits: StoreLimits,
  sites: NamedPlaces,
): StoreList {
  const stock = batteries.filter(({ whereabouts }) => whereabouts === 'inStock');
  const issueNext = stock.filter((battery) => whyNotIssued(battery, asOf, limits) === undefined).sort(byMade);
  return {
    inStock: stock.length,
    chargeNext: chargeNext(stock, asOf, limits),
    issueNext,
    notIssued: notIssued(stock, asOf, limits),
    sets: storeSets(issueNext, limits),
    turnIns: stock.filter((battery) => wasFitted(battery) && !isJudged(battery)).sort(byPlace),
    mayFreeze: mayFreeze(batteries, sites),
    overShelf: stock
      .flatMap((battery) => tooLong(battery, asOf, limits) ?? [])
      .sort((a, b) => b.months - b.limit - (a.months - a.limit) || a.battery.row - b.battery.row),
  };
}

const wasFitted = ({ installed }: Battery): boolean => installed !== undefined;
const isJudged = ({ verdict }: Battery): boolean => verdict !== undefined && verdict !== 'Not judged';
const isDue = ({ chargeBy }: Battery, asOf: Day): boolean => chargeBy !== undefined && chargeBy <= asOf;

// A day unknown comes last: what is known to be old is issued before what may be.
const byMade = (a: Battery, b: Battery): number =>
  (a.made ?? Number.MAX_SAFE_INTEGER) - (b.made ?? Number.MAX_SAFE_INTEGER) || a.row - b.row;

function byPlace(a: Battery, b: Battery): number {
  const [one, other] = [a, b].map(({ site, storagePlace = '' }) => `${site}\n${storagePlace}`);
  return one! < other! ? -1 : one! > other! ? 1 : a.row - b.row;
}

const REASONS: readonly ChargeReason[] = ['awaiting charge', 'due', 'no charge on record', 'due soon'];

function chargeNext(stock: readonly Battery[], asOf: Day, limits: StoreLimits): readonly ToCharge[] {
  const listed = stock.flatMap((battery) => toCharge(battery, asOf, limits) ?? []);
  const rank = ({ reason }: ToCharge): number => REASONS.indexOf(reason);
  const days = (each: ToCharge): number => each.days ?? Number.NEGATIVE_INFINITY;
  return listed.sort((a, b) => rank(a) - rank(b) || days(a) - days(b) || a.battery.row - b.battery.row);
}

// A condemned battery is charged no more.
function toCharge(battery: Battery, asOf: Day, { chargeSoonDays }: StoreLimits): ToCharge | undefined {
  const { verdict, chargeBy } = battery;
  if (verdict === 'Condemned') return undefined;
  const dated = chargeBy === undefined ? { battery } : { battery, days: chargeBy - asOf };
  if (awaitsCharge(battery)) return { ...dated, reason: 'awaiting charge' };
  if (chargeBy === undefined) return { ...dated, reason: 'no charge on record' };
  if (chargeBy <= asOf) return { ...dated, reason: 'due' };
  return chargeBy <= asOf + chargeSoonDays ? { ...dated, reason: 'due soon' } : undefined;
}

// One charged since its test awaits a test, not a charge.
function awaitsCharge({ verdict, readings }: Battery): boolean {
  const { testedOn, chargedOn } = readings ?? {};
  if (verdict !== 'Awaiting charge') return false;
  return testedOn === undefined || chargedOn === undefined || chargedOn <= testedOn;
}

/** Why a battery in stock is not to be issued now; undefined where it is fit for issue. */
function whyNotIssued(battery: Battery, asOf: Day, limits: StoreLimits): keyof NotIssued | undefined {
  const { verdict, chargeBy } = battery;
  if (verdict === 'Condemned') return 'condemned';
  if (awaitsCharge(battery)) return 'toCharge';
  if (verdict !== 'Serviceable') return 'notTested';
  if (chargeBy === undefined || isDue(battery, asOf)) return 'toCharge';
  return tooLong(battery, asOf, limits) === undefined ? undefined : 'overShelf';
}

function notIssued(stock: readonly Battery[], asOf: Day, limits: StoreLimits): NotIssued {
  const counts = { condemned: 0, notTested: 0, toCharge: 0, overShelf: 0 };
  for (const battery of stock) {
    const why = whyNotIssued(battery, asOf, limits);
    if (why !== undefined) counts[why] += 1;
  }
  return counts;
}

// One that was fitted before is judged by its test; its months on a shelf can't be told from its made date.
function tooLong(battery: Battery, asOf: Day, limits: StoreLimits): TooLong | undefined {
  if (battery.made === undefined || wasFitted(battery)) return undefined;
  const limit = battery.construction === 'flooded' ? limits.shelfMonthsFlooded : limits.shelfMonths;
  const months = monthsOnShelf(battery.made, asOf);
  return months.ok && months.value > limit ? { battery, months: months.value, limit } : undefined;
}

// On the shelf first: there the storekeeper can carry them in.
function mayFreeze(batteries: readonly Battery[], sites: NamedPlaces): readonly ToWarm[] {
  const here = (battery: Battery): ToWarm | undefined => {
    const frost = battery.whereabouts === 'removed' ? undefined : frostAt(battery, placeOf(battery, sites));
    return frost === undefined ? undefined : { battery, ...frost };
  };
  const rank = ({ battery }: ToWarm): number => (battery.whereabouts === 'inStock' ? 0 : 1);
  return batteries
    .flatMap((battery) => here(battery) ?? [])
    .sort((a, b) => rank(a) - rank(b) || b.freezesAt - a.freezesAt || a.battery.row - b.battery.row);
}
