import type { Outcome } from '../../src/basics/outcome.ts';

/** One value from outside the project, beside ours. The same rows make the tests and docs/validation.md. */
export type PublishedCheck = {
  /** Our own short name for the check. */
  readonly id: string;
  /** What is compared, in a few words with its unit. */
  readonly quantity: string;
  /** A key of docs/sources.md, or "common practice", "from memory", "computed here". */
  readonly source: string;
  /** Equation, table or page in the source. */
  readonly where: string;
  /** The inputs in words. */
  readonly given: string;
  readonly expected: number | string | boolean;
  /** Digits printed after the decimal point; the tolerance is half a unit of the last. */
  readonly digits?: number;
  /** A wider tolerance and the reason for it. */
  readonly tolerance?: { readonly within: number; readonly because: string };
  readonly ours: () => number | string | boolean;
  /** We knowingly don't reproduce it, and why; the test fails when it starts to agree. */
  readonly knownMiss?: string;
};

/** A published figure that nothing in this project computes, and why. */
export type NotOurs = { readonly id: string; readonly quantity: string; readonly because: string };

/** Largest difference from the published value that still agrees with it. */
export function allowedDifference(check: PublishedCheck): number {
  return check.tolerance?.within ?? 0.5 * 10 ** -(check.digits ?? 0) * (1 + 1e-9);
}

/** Whether our value agrees with the published one. */
export function agrees(check: PublishedCheck): boolean {
  const ours = check.ours();
  if (typeof check.expected !== 'number') return ours === check.expected;
  return Math.abs(Number(ours) - check.expected) <= allowedDifference(check);
}

/** The value of an outcome; a check that meets a problem fails with its code. */
export function valueOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.problem.because);
  return outcome.value;
}
