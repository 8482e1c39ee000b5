import type { Day } from '../basics/calendar.ts';
import { addMonths } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';
import type { Life } from '../service/battery.ts';

/** The terms of a warranty. They are the owner's own; nothing is taken for granted. */
export type WarrantyTerms = {
  /** Months from the first installation within which a failure is covered. */
  readonly months: number;
  /** Days after the removal within which the claim must be made. */
  readonly claimDays: number;
};

/** A battery that failed within its warranty. */
export type WarrantyClaim = {
  readonly life: Life;
  readonly failedOn: Day;
  /** End of its warranty: first installation plus the months of the terms. */
  readonly coveredUntil: Day;
  readonly claimBy: Day;
  /** Days from as-of to the last day of the claim; below 0 = too late. */
  readonly daysLeft: number;
};

/**
 * The batteries that failed within their warranty, with the last day to claim. Assumes a warranty that runs from the
 * first installation, whatever was done with the battery since, and a claim period that begins with the removal; a
 * warranty from the date of purchase or of manufacture ends sooner. A battery whose removal is known to the month is taken
 * as removed on its first day; one known only as over by as-of has no day to claim from and is left out.
 * @param lives  lives on record
 * @param terms  months of warranty, 1 to 240, and days to claim, 0 to 3660
 * @param asOf   the day of the list
 * @returns claims, those that end first standing first; those that are too late stand behind them
 * @problem outOfRange  when the months or the days are outside their limits
 */
export function warrantyClaims(
  lives: readonly Life[],
  terms: WarrantyTerms,
  asOf: Day,
): Outcome<readonly WarrantyClaim[]> {
  const wrong =
    limited('warranty months', terms.months, 1, 240) ?? limited('days to claim', terms.claimDays, 0, 3660);
  if (wrong !== undefined) return wrong;
  const claims = lives.flatMap((life) => claimOf(life, terms, asOf));
  return answer(
    claims.sort((a, b) => isLate(a) - isLate(b) || a.claimBy - b.claimBy || a.life.row - b.life.row),
  );
}

const isLate = ({ daysLeft }: WarrantyClaim): number => (daysLeft < 0 ? 1 : 0);

function limited(
  name: string,
  given: number,
  least: number,
  most: number,
): ReturnType<typeof problem> | undefined {
  if (Number.isInteger(given) && given >= least && given <= most) return undefined;
  return problem('outOfRange', 'wholePeriods', name, given, { limits: [least, most] });
}

function claimOf(life: Life, { months, claimDays }: WarrantyTerms, asOf: Day): WarrantyClaim[] {
  const { removed, meaning, installed } = life;
  if (removed === undefined || meaning !== 'failed' || removed > asOf || isDayUnknown(life)) return [];
  const coveredUntil = addMonths(installed, months);
  if (removed >= coveredUntil) return [];
  const claimBy = removed + claimDays;
  return [{ life, failedOn: removed, coveredUntil, claimBy, daysLeft: claimBy - asOf }];
}

/** A removal known to the month leaves an interval of little more than a month. */
const LONGEST_MONTH = 32 / DAYS_PER_MONTH;

const isDayUnknown = ({ from, to }: Life): boolean => to - from > 2 * LONGEST_MONTH;
