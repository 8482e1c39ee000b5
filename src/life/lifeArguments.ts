import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';

/** A number above 0, or the problem with it. */
export function aboveZero(value: number, argument: string): Outcome<number> {
  if (!Number.isFinite(value)) return problem('badInput', 'notANumber', argument, value);
  return value > 0 ? answer(value) : problem('outOfRange', 'mustBeAboveZero', argument, value);
}

/** A number of 0 or more, or the problem with it. */
export function zeroOrMore(value: number, argument: string): Outcome<number> {
  if (!Number.isFinite(value)) return problem('badInput', 'notANumber', argument, value);
  return value >= 0 ? answer(value) : problem('outOfRange', 'mustNotBeNegative', argument, value);
}

/** A share above 0 and below 1, or the problem with it. */
export function properShare(value: number, argument: string): Outcome<number> {
  if (!Number.isFinite(value)) return problem('badInput', 'notANumber', argument, value);
  return value > 0 && value < 1 ? answer(value) : problem('outOfRange', 'mustBeProperShare', argument, value);
}

/** The values where all of them stand, else the first problem. */
export function every(...outcomes: readonly Outcome<number>[]): Outcome<readonly number[]> {
  const wrong = outcomes.find((outcome) => !outcome.ok);
  if (wrong !== undefined && !wrong.ok) return wrong;
  return answer(outcomes.map((outcome) => (outcome.ok ? outcome.value : Number.NaN)));
}
