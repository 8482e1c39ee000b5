import type { Outcome } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';

/** The value of an outcome that must be one. */
export function valueOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(problemText(outcome.problem));
  return outcome.value;
}

/** Kind and sentence of an outcome that must be a problem. */
export function refusal(outcome: Outcome<unknown>): [string, string] {
  if (outcome.ok) throw new Error(`answered ${JSON.stringify(outcome.value)}`);
  return [outcome.problem.kind, problemText(outcome.problem)];
}

/** One seed for every property, so that a failure comes again. */
export const SEED = 20_260_115;
