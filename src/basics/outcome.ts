import type { ProblemCode } from './problemText.ts';

/** The five ways in which a quantity can't be answered. */
export type ProblemKind = 'missing' | 'badInput' | 'outOfRange' | 'notEnoughData' | 'noConvergence';

/** What a sentence about a problem may tell: which argument, what was given, what is allowed. */
export type Facts = {
  readonly argument: string;
  readonly given?: unknown;
  readonly limits?: readonly [number | string, number | string];
  /** Further words or figures that only this problem's sentence needs. */
  readonly more?: Readonly<Record<string, string | number>>;
};

/** Why there is no answer. `because` names its sentence in problemText.ts. */
export type Problem = Facts & { readonly kind: ProblemKind; readonly because: ProblemCode };

/** A value, perhaps with cautions in plain sentences, or the problem that stands in its way. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly notes?: readonly string[] }
  | { readonly ok: false; readonly problem: Problem };

/** The outcome that holds a value; `notes` are sentences of caution for a reader. */
export function answer<T>(value: T, notes?: readonly string[]): Outcome<T> {
  return notes === undefined || notes.length === 0 ? { ok: true, value } : { ok: true, value, notes };
}

/** The outcome that holds a problem. */
export function problem(
  kind: ProblemKind,
  because: ProblemCode,
  argument: string,
  given?: unknown,
  rest: Pick<Facts, 'limits' | 'more'> = {},
): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem: { kind, because, argument, given, ...rest } };
}

/** Applies `next` to a value; a problem passes through unchanged. */
export function andThen<A, B>(first: Outcome<A>, next: (value: A) => Outcome<B>): Outcome<B> {
  return first.ok ? next(first.value) : first;
}
