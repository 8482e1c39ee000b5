import { MONTH_NAMES } from '../../../src/basics/calendar.ts';
import type { Settings } from '../../../src/inventory/settings.ts';
import { oneDecimal, shownMoney, wholeNumber } from '../../shownNumber.ts';
import { ASK_CHOICES, GROUPS, POLICIES, STATES } from '../../text/planText.ts';

/** What a folded part of the inputs holds, in a few words; parts that say nothing are left out. */
const inWords = (...parts: readonly (string | false | undefined)[]): string =>
  parts.filter(Boolean).join(', ');

const wordsOf = <V>(choices: readonly (readonly [V, string])[], value: V): string | undefined =>
  choices.find(([each]) => each === value)?.[1];

/** A number of months or per cent, without the decimals that it does not have. */
const plainNumber = (value: number): string =>
  Number.isInteger(value) ? wholeNumber(value) : oneDecimal(value);

const percent = (share: number): string => `${plainNumber(Number((share * 100).toPrecision(12)))} %`;

/** How much is asked for, and for which years. */
export function requestState({ ask, years, fiscalFirstMonth }: Settings): string {
  return inWords(wordsOf(ASK_CHOICES, ask), STATES.years(years, MONTH_NAMES[fiscalFirstMonth - 1]!));
}

/** The price and what stands beside it. */
export function moneyState({ money }: Settings): string {
  const { unitPrice, currency, rise } = money;
  if (unitPrice === null) return STATES.noPrice;
  const price = `${shownMoney(unitPrice)} ${currency}`.trim();
  return inWords(STATES.each(price), rise !== 0 && STATES.rise(percent(Math.abs(rise)), rise > 0));
}

/** What is there, what is to be kept, and what is coming. */
export function stockState({ stockTarget, onOrder }: Settings, usable: number | undefined): string {
  const coming = onOrder.reduce((sum, { count }) => sum + count, 0);
  return inWords(
    usable !== undefined && STATES.usable(wholeNumber(usable)),
    STATES.toHold(wholeNumber(stockTarget)),
    STATES.onOrder(wholeNumber(coming)),
  );
}

/** How long before its year an order must go out. */
export function orderingState({ leadMonths, safetyMonths }: Settings): string {
  return STATES.ordering(plainNumber(leadMonths), plainNumber(safetyMonths));
}

/** When batteries are renewed, what with them, and whose life is counted apart. */
export function renewalState({ policy, wholeSets, groupBy }: Settings): string {
  const age = typeof policy === 'object' ? STATES.atAge(plainNumber(policy.age)) : undefined;
  return inWords(
    age ?? POLICIES.find(([word]) => word === policy)?.[1],
    wholeSets ? STATES.wholeSets : STATES.alone,
    groupBy !== null && STATES.apart(wordsOf<string | null>(GROUPS, groupBy) ?? groupBy),
  );
}

/** What comes back to stock. */
export function backState({ recovered, matesReused }: Settings): string {
  if (recovered === 0 && matesReused === 0) return STATES.nothingBack;
  return inWords(
    recovered > 0 && STATES.recovered(percent(recovered)),
    matesReused > 0 && STATES.mates(percent(matesReused)),
  );
}

/** How the fleet changes in all. */
export function fleetState({ fleetChanges }: Settings): string {
  return STATES.changes(fleetChanges.length);
}
