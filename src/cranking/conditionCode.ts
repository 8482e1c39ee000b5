import type { Whereabouts } from '../service/battery.ts';
import type { Judgement } from './verdict.ts';

/** The supply condition codes that a battery's verdict can suggest. */
export type ConditionCode = 'A' | 'B' | 'E' | 'F' | 'H' | 'K';

/** The codes in our own short words, as they are meant for batteries. */
export const CONDITION_CODES: Readonly<Record<ConditionCode, string>> = {
  A: 'serviceable, no restriction',
  B: 'serviceable, used: under 90 % of its label',
  E: 'unserviceable, needs a charge and a test only',
  F: 'unserviceable, failed a test: charge and test again',
  H: 'unserviceable, condemned',
  K: 'suspended, a return that is not judged yet',
};

/** A battery is issued from stock without a remark when it reads this share of its label or more. */
export const ISSUE_SHARE_OF_LABEL = 0.9;

/** What a product such as 0.9 x 1100 may be out in its last place. */
const ROUNDING = 1e-9;

/**
 * Supply condition code to suggest for a battery in stock or a turn-in, from its judgement. It is a suggestion for the
 * inspector, who decides; a shell shows it only where the user has asked for it. A battery in service has no such code.
 * Where the label's rating is not known, or the reading is volts of a load test, a serviceable one is suggested as A.
 * @param judgement what judge answered
 * @param whereabouts inStock, or removed for a turn-in; inService answers nothing
 * @param labelAmps cold-cranking rating on its label [A], where known
 * @returns A, B, E, F, H, K, or undefined where no code follows
 * @source dlaConditionCodes meaning of the codes
 * @source tb9-6140-252-13 above 0.90 of the label to issue from stock
 * @example conditionCode({ line: 1, word: 'Condemned', test: { damage: true } }, 'removed') // "H"
 */
export function conditionCode(
  judgement: Judgement,
  whereabouts: Whereabouts,
  labelAmps?: number,
): ConditionCode | undefined {
  if (whereabouts === 'inService') return undefined;
  if (judgement.word === 'Serviceable') return isUnderLabelShare(judgement, labelAmps) ? 'B' : 'A';
  if (judgement.word === 'Awaiting charge') return hasFailed(judgement) ? 'F' : 'E';
  if (judgement.word === 'Condemned') return 'H';
  return whereabouts === 'removed' ? 'K' : undefined;
}

function isUnderLabelShare({ compared }: Judgement, labelAmps: number | undefined): boolean {
  if (labelAmps === undefined || compared === undefined || compared.unit === 'V') return false;
  return compared.reading < labelAmps * (ISSUE_SHARE_OF_LABEL - ROUNDING);
}

// A retest follows a failing test, whatever its charge is now.
function hasFailed({ line, test }: Judgement): boolean {
  return line === 10 || (test.retest ?? 0) > 0;
}
