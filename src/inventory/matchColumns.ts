import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { Block } from './block.ts';
import type { ColumnLook } from './columnCells.ts';
import { columnLook, fitOf } from './columnCells.ts';
import type { Field } from './fields.ts';
import { FIELD_SPECS } from './fields.ts';
import type { Header } from './findHeader.ts';
import { headerMatches, headerWords } from './headerWords.ts';

/** Which column holds which field, and what was not plain about it. */
export type ColumnMatch = {
  /** Field to column index in the block. */
  readonly at: ReadonlyMap<Field, number>;
  /** Columns that fit a field nearly as well as the one that was taken. */
  readonly rivals: readonly { readonly field: Field; readonly taken: number; readonly other: number }[];
  /** Fields whose column has no header that says so. */
  readonly guessed: readonly { readonly field: Field; readonly column: number }[];
  /** Columns whose header names a field that their cells can't be. */
  readonly refused: readonly { readonly field: Field; readonly column: number }[];
};

/** What the user said about the columns: field to header; an empty text = no column holds it. */
export type NamedColumns = Readonly<Partial<Record<Field, string>>>;

type Candidate = { readonly field: Field; readonly column: number; readonly score: number };

/** Below this a column is not taken: its header says the field and its cells say otherwise. */
const LEAST_SCORE = 0.45;
/** A column that scores this near to the one taken is reported as its rival. */
const RIVAL = 0.9;
/** A column without a telling header is taken by its cells alone where this share of them agrees. */
const PLAIN_SHARE = 0.9;

/**
 * The columns of an inventory, by what their headers say and by what their cells look like. What the user
 * named goes before every guess.
 * @param block  the part of the sheet that is read
 * @param header  its header
 * @param named  what the user said
 * @param asOf  day of the question
 * @problem badInput  when the user named a header that the sheet does not have
 */
export function matchColumns(
  block: Block,
  header: Header,
  named: NamedColumns,
  asOf: Day,
): Outcome<ColumnMatch> {
  const fixed = namedColumns(header, named);
  if (!fixed.ok) return fixed;
  const looks = header.texts.map((_, column) => columnLook(block, header.dataFrom, column, asOf));
  const taken = new Set(fixed.value.values());
  const open = candidates(header, looks).filter(
    ({ field, column }) => named[field] === undefined && !taken.has(column),
  );
  const at = assign(
    fixed.value,
    open.filter(({ score }) => score >= LEAST_SCORE),
  );
  const guessed = guess(at, looks, header, named);
  return answer({ at, rivals: rivalsOf(at, open), guessed, refused: refusedOf(at, open, looks) });
}

function namedColumns(header: Header, named: NamedColumns): Outcome<Map<Field, number>> {
  const at = new Map<Field, number>();
  for (const [field, wanted] of Object.entries(named) as [Field, string][]) {
    if (wanted === '') continue;
    const column = columnNamed(header, wanted);
    if (column >= 0) at.set(field, column);
    else return headerNotFound(field, wanted, header);
  }
  return answer(at);
}

function columnNamed(header: Header, wanted: string): number {
  const exact = header.texts.indexOf(wanted.trim());
  return exact >= 0
    ? exact
    : header.texts.findIndex((text) => headerWords(text) === headerWords(wanted) && text !== '');
}

function headerNotFound(field: Field, wanted: string, header: Header): Outcome<never> {
  const headers = header.texts
    .filter((text) => text !== '')
    .slice(0, 40)
    .join(', ');
  return problem('badInput', 'headerNotFound', `columns.${field}`, wanted, { more: { headers } });
}

function candidates(header: Header, looks: readonly ColumnLook[]): Candidate[] {
  const all = header.texts.flatMap((text, column) =>
    headerMatches(text).map(({ field, score }) => ({
      field,
      column,
      score: score * (0.3 + 0.7 * fitOf(field, looks[column]!)),
    })),
  );
  return all.sort((a, b) => b.score - a.score || a.column - b.column);
}

function assign(fixed: ReadonlyMap<Field, number>, open: readonly Candidate[]): Map<Field, number> {
  const at = new Map(fixed);
  const taken = new Set(fixed.values());
  for (const { field, column } of open) {
    if (at.has(field) || taken.has(column)) continue;
    at.set(field, column);
    taken.add(column);
  }
  return at;
}

function rivalsOf(at: ReadonlyMap<Field, number>, open: readonly Candidate[]): ColumnMatch['rivals'] {
  const used = new Set(at.values());
  const scoreOf = (field: Field): number =>
    open.find((one) => one.field === field && one.column === at.get(field))?.score ?? 2;
  return open
    .filter(
      ({ field, column, score }) => !used.has(column) && at.has(field) && score >= RIVAL * scoreOf(field),
    )
    .map(({ field, column }) => ({ field, taken: at.get(field)!, other: column }));
}

function refusedOf(
  at: ReadonlyMap<Field, number>,
  open: readonly Candidate[],
  looks: readonly ColumnLook[],
): ColumnMatch['refused'] {
  const used = new Set(at.values());
  return open
    .filter(({ field, column, score }) => score < LEAST_SCORE && !at.has(field) && !used.has(column))
    .filter(({ column }) => looks[column]!.filled > 0)
    .map(({ field, column }) => ({ field, column }));
}

// Only what can hardly be anything else: stock numbers, maker codes and rest voltages.
function guess(
  at: Map<Field, number>,
  looks: readonly ColumnLook[],
  header: Header,
  named: NamedColumns,
): ColumnMatch['guessed'] {
  const found: { field: Field; column: number }[] = [];
  for (const [field, test] of BY_CELLS) {
    if (at.has(field) || named[field] !== undefined) continue;
    const used = new Set(at.values());
    const column = looks.findIndex(
      (look, index) => !used.has(index) && look.filled >= 3 && unnamed(header.texts[index]!) && test(look),
    );
    if (column < 0) continue;
    at.set(field, column);
    found.push({ field, column });
  }
  return found;
}

const unnamed = (text: string): boolean => headerMatches(text).length === 0;

const BY_CELLS: readonly (readonly [Field, (look: ColumnLook) => boolean])[] = [
  ['stockNumber', (look) => look.stockNumbers >= PLAIN_SHARE],
  ['maker', (look) => look.makerCodes >= PLAIN_SHARE && look.distinct < 0.5],
  ['restVolts', (look) => restVoltShare(look) >= PLAIN_SHARE],
];

const restVoltShare = ({ numbers, filled }: ColumnLook): number =>
  numbers.filter((value) => value > 10.5 && value < 13.5 && !Number.isInteger(value)).length /
  Math.max(1, filled);

/** The fields of which at least one must be there for a sheet to be an inventory. */
export const TELLING_FIELDS: readonly Field[] = [
  'serial',
  'code',
  'made',
  'installed',
  'removed',
  'restVolts',
  'reading',
];

/** The fields' names for people, joined. */
export const labelsOf = (fields: readonly Field[]): string =>
  fields.map((field) => FIELD_SPECS[field].label).join(', ');
