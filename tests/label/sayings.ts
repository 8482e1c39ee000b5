import { dayFromParts } from '../../src/basics/calendar.ts';
import type { Outcome } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';

/** The day of a date that exists. */
export const on = (year: number, month: number, day: number): number => dayFromParts(year, month, day)!;

/** A Sunday in March 2026, the as-of of these tests. */
export const AS_OF = on(2026, 3, 15);

/** The value of an outcome that must have one. */
export function valueOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(problemText(outcome.problem));
  return outcome.value;
}

/** The key of the sentence with which something is refused. */
export function refusal(outcome: Outcome<unknown>): string {
  if (outcome.ok) throw new Error(`answers ${JSON.stringify(outcome.value)}`);
  return outcome.problem.because;
}

/** The sentence with which something is refused. */
export function sentence(outcome: Outcome<unknown>): string {
  if (outcome.ok) throw new Error(`answers ${JSON.stringify(outcome.value)}`);
  return problemText(outcome.problem);
}
