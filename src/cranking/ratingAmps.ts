import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';

/** Cold-cranking ratings of 12 V starting batteries, smallest to largest, with room to spare [A]. Own judgement. */
const LEAST_RATING = 50;
const MOST_RATING = 5_000;

/**
 * A cranking rating that can be one: the rating itself where it lies within 50 to 5000 A.
 * @param amps rating on a label or data sheet [A], 50 to 5000
 * @param argument what the caller's user knows it as
 * @returns the same [A]
 * @problem badInput    when it is no number
 * @problem outOfRange  when it is outside 50 to 5000 A
 * @example ratingAmps(1100, 'rating') // 1100
 */
export function ratingAmps(amps: number, argument: string): Outcome<number> {
  if (!Number.isFinite(amps)) return problem('badInput', 'notANumber', argument, amps);
  if (amps >= LEAST_RATING && amps <= MOST_RATING) return answer(amps);
  return problem('outOfRange', 'outOfLimits', argument, amps, { limits: [LEAST_RATING, `${MOST_RATING} A`] });
}
