import type { Cell, CellError } from '../../functions/cell.ts';
import { isCellError } from '../../functions/cell.ts';

/** A cell of the built-in workbook; rows and columns count from 0. */
export type CellPlace = { readonly sheet: string; readonly row: number; readonly column: number };

/**
 * What errors say, cell by cell: the formula engine passes on an error's code only. An error that went through a
 * function of the engine itself has the last sentence that was noted for its formula.
 */
export type Sentences = {
  /** Notes the errors of an answer that a function gave for a formula cell. */
  readonly note: (place: CellPlace, answer: readonly (readonly Cell[])[]) => void;
  /** The sentence of an error of a formula; empty where none was noted. */
  readonly of: (place: CellPlace, wanted: Wanted) => string;
  /** Forgets everything, before a new calculation. */
  readonly clear: () => void;
};

/** Rows and columns of an answer. */
export type Shape = { readonly rows: number; readonly columns: number };

/** An error that stands `down` and `right` of a formula whose answer has that shape. */
export type Wanted = {
  readonly error: string;
  readonly shape: Shape;
  readonly down: number;
  readonly right: number;
};

type Noted = Shape & { readonly at: ReadonlyMap<string, CellError>; readonly last: CellError | undefined };

const keyOf = ({ sheet, row, column }: CellPlace): string => `${sheet}|${row}|${column}`;

/** An empty record of sentences. */
export function newSentences(): Sentences {
  const noted = new Map<string, Noted>();
  return {
    note: (place, answer) => noted.set(keyOf(place), notedFrom(answer, noted.get(keyOf(place)))),
    of: (place, wanted) => sentenceOf(noted, place, wanted),
    clear: () => noted.clear(),
  };
}

function notedFrom(answer: readonly (readonly Cell[])[], before: Noted | undefined): Noted {
  const at = new Map<string, CellError>();
  let last = before?.last;
  answer.forEach((row, down) =>
    row.forEach((cell, right) => {
      if (!isCellError(cell)) return;
      at.set(`${down}|${right}`, cell);
      last = cell;
    }),
  );
  return { rows: answer.length, columns: answer[0]?.length ?? 0, at, last };
}

const ownError = (noted: Noted, shape: Shape, key: string): CellError | undefined =>
  noted.rows === shape.rows && noted.columns === shape.columns ? noted.at.get(key) : undefined;

// The engine computes equal parts of formulas once, so a cell without notes of its own borrows another's.
function sentenceOf(all: ReadonlyMap<string, Noted>, place: CellPlace, wanted: Wanted): string {
  const { error, shape, down, right } = wanted;
  const own = all.get(keyOf(place));
  const candidates = own === undefined ? [...all.values()].reverse() : [own];
  const exact = candidates.map((noted) => ownError(noted, shape, `${down}|${right}`));
  const last = candidates.map((noted) => noted.last);
  return [...exact, ...last].find((each) => each?.error === error)?.message ?? '';
}
