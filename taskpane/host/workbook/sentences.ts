import type { Cell, CellError } from '../../../functions/cell.ts';
import { isCellError } from '../../../functions/cell.ts';

/** A cell of the built-in workbook; rows and columns count from 0. */
export type CellPlace = { readonly sheet: string; readonly row: number; readonly column: number };

/**
 * What errors say. The engine knows an error's code only: its sentence travels as custom data of the value and ends
 * in the custom data of its cell. Where a function of the engine makes a new error out of ours, the last sentence
 * that was noted for that formula stands in.
 */
export type Sentences = {
  /** Notes the errors of an answer that a function gave for a formula cell. */
  readonly note: (place: CellPlace, answer: readonly (readonly Cell[])[]) => void;
  /** The last sentence noted for a formula cell with that error code; empty where there is none. */
  readonly last: (place: CellPlace, error: string) => string;
  /** Forgets everything, before a new calculation. */
  readonly clear: () => void;
};

/** The sentence in the custom data of a value or a cell that shows an error; empty where that error has none. */
export function sentenceIn(custom: unknown, error: string): string {
  const told = (custom ?? {}) as Partial<CellError>;
  // The sheet keeps what a cell was told before: it counts only where it speaks of the same error.
  return told.error === error && typeof told.message === 'string' ? told.message : '';
}

/** Marks a text that reads like an error: the engine tells the two apart by nothing else. */
export function markOfText(text: string): { readonly custom?: { readonly isText: true } } {
  return text.startsWith('#') ? { custom: { isText: true } } : {};
}

/** Whether a cell was marked so, and no formula has come into it since. */
export function isMarkedText({ custom, f, si }: MarkedCell): boolean {
  return (custom as { readonly isText?: unknown } | null | undefined)?.isText === true && !f && !si;
}

type MarkedCell = { readonly custom?: unknown; readonly f?: unknown; readonly si?: unknown };

const keyOf = ({ sheet, row, column }: CellPlace, error: string): string =>
  `${sheet}|${row}|${column}|${error}`;

/** An empty record of sentences. */
export function newSentences(): Sentences {
  const noted = new Map<string, string>();
  const noteOne = (place: CellPlace, { error, message }: CellError): void => {
    if (message !== '') noted.set(keyOf(place, error), message);
  };
  return {
    note: (place, answer) =>
      answer.forEach((row) => row.filter(isCellError).forEach((each) => noteOne(place, each))),
    last: (place, error) => noted.get(keyOf(place, error)) ?? '',
    clear: () => noted.clear(),
  };
}
