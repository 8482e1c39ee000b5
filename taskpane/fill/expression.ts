import type { Field } from '../../src/inventory/fields.ts';
import { columnLetters } from '../../src/report/sheet.ts';

/** Texts that share an answer: it is worked out once for all of them. */
export type Case = readonly [words: readonly string[], then: Expression];

/** What a filled column is computed from, for each row: the formula and the check of its answers both come from it. */
export type Expression =
  | { readonly kind: 'field'; readonly field: Field }
  | { readonly kind: 'asOf' }
  | { readonly kind: 'value'; readonly value: string | number }
  /** An argument that is left out. */
  | { readonly kind: 'nothing' }
  | { readonly kind: 'call'; readonly id: string; readonly given: readonly Expression[] }
  /** The field where its cell is filled, else the other. */
  | { readonly kind: 'orElse'; readonly field: Field; readonly other: Expression }
  /** Empty where the field's cell is filled, or (`empty`) where it is not. */
  | {
      readonly kind: 'blankWhere';
      readonly field: Field;
      readonly is: 'filled' | 'empty';
      readonly then: Expression;
    }
  /** By the field's text, several texts for one answer; case doesn't count. */
  | {
      readonly kind: 'cases';
      readonly field: Field;
      readonly cases: readonly Case[];
      readonly otherwise: Expression;
    }
  /** Empty where the date in the field is more than so many days before as-of. */
  | {
      readonly kind: 'recent';
      readonly field: Field;
      readonly days: number;
      readonly then: Expression;
    }
  /** Months of 30.4375 days from the date in the field to as-of. */
  | { readonly kind: 'monthsSince'; readonly field: Field };

/** How a formula points at a field's cell and at the day of the question. */
export type Pointers = { readonly field: (field: Field) => string; readonly asOf: string };

/** Days in a month of life statistics. */
const DAYS = 30.4375;

/** The formula of an expression, without "=". */
export function formulaText(expression: Expression, pointers: Pointers): string {
  const text = (one: Expression): string => formulaText(one, pointers);
  const cell = pointers.field;
  switch (expression.kind) {
    case 'field':
      return cell(expression.field);
    case 'asOf':
      return pointers.asOf;
    case 'value':
      return literal(expression.value);
    case 'nothing':
      return '';
    case 'call':
      return `CRANK.${expression.id}(${withoutEnd(expression.given).map(text).join(',')})`;
    case 'orElse':
      return `IF(${cell(expression.field)}<>"",${cell(expression.field)},${text(expression.other)})`;
    case 'blankWhere': {
      const sign = expression.is === 'filled' ? '<>' : '=';
      return `IF(${cell(expression.field)}${sign}"","",${text(expression.then)})`;
    }
    case 'cases':
      return expression.cases.reduceRight(
        (rest, [words, then]) => `IF(${isOneOf(cell(expression.field), words)},${text(then)},${rest})`,
        text(expression.otherwise),
      );
    case 'recent': {
      const date = cell(expression.field);
      const age = `IF(${date}="",0,${pointers.asOf}-${date})`;
      return `IF(${age}>${expression.days},"",${text(expression.then)})`;
    }
    case 'monthsSince':
      return `(${pointers.asOf}-${cell(expression.field)})/${DAYS}`;
  }
}

function isOneOf(cell: string, words: readonly string[]): string {
  const [first, ...more] = words.map((word) => `${cell}=${literal(word)}`);
  return more.length === 0 ? first! : [first!, ...more].map((each) => `(${each})`).join('+');
}

const literal = (value: string | number): string =>
  typeof value === 'number' ? String(value) : `"${value.replaceAll('"', '""')}"`;

function withoutEnd(given: readonly Expression[]): readonly Expression[] {
  let end = given.length;
  while (end > 0 && given[end - 1]!.kind === 'nothing') end -= 1;
  return given.slice(0, end);
}

/** Whether a formula can be written for it: spreadsheets take no text over 255 characters in a formula. */
export const fitsFormula = (text: string): boolean =>
  text.length <= 8000 && !/"(?:[^"]|""){256,}"/.test(text);

/** A reference to the cell of the formula's own row under a table's head. */
export function tableCell(head: string): string {
  return `[@[${head.replace(/['#[\]]/g, "'$&")}]]`;
}

/** A reference to the rows of one column, held fast. Rows and columns count from 0. */
export function columnRange(column: number, firstRow: number, rows: number): string {
  const letters = columnLetters(column);
  return `$${letters}$${firstRow + 1}:$${letters}$${firstRow + rows}`;
}
