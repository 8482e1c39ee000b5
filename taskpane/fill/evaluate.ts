import { isCellError } from '../../functions/cell.ts';
import { functions } from '../../functions/list.ts';
import type { Day } from '../../src/basics/calendar.ts';
import type { Field } from '../../src/inventory/fields.ts';
import type { Expression } from './expression.ts';

/** A cell of a column as a formula sees it. */
type Given = unknown;

/** What formulas are computed from, without a workbook: the cells under each field, row by row. */
export type Columns = {
  readonly rows: number;
  readonly cell: (field: Field, row: number) => Given;
  readonly asOf: Day;
};

const FUNCTIONS = new Map(functions.map(({ id, run }) => [id, run]));
const VALUE_ERROR = { error: '#VALUE!', message: 'the cell is no number' };
const DAYS = 30.4375;

/** The answers that a formula gives in each row; an error keeps the sentence that a cell can't show. */
export function evaluated(expression: Expression, columns: Columns): readonly Given[] {
  switch (expression.kind) {
    case 'field':
      return rowsOf(columns, (row) => columns.cell(expression.field, row));
    case 'asOf':
      return rowsOf(columns, () => columns.asOf);
    case 'value':
      return rowsOf(columns, () => expression.value);
    case 'nothing':
      return rowsOf(columns, () => null);
    case 'call':
      return called(expression, columns);
    case 'orElse': {
      const other = evaluated(expression.other, columns);
      return whereFilled(
        columns,
        expression.field,
        (cell) => cell,
        (row) => other[row],
      );
    }
    case 'blankWhere': {
      const then = evaluated(expression.then, columns);
      const [filled, empty] = expression.is === 'filled' ? ['', undefined] : [undefined, ''];
      return whereFilled(
        columns,
        expression.field,
        (_, row) => filled ?? then[row],
        (row) => empty ?? then[row],
      );
    }
    case 'cases':
      return byText(expression, columns);
    case 'recent':
      return recent(expression, columns);
    case 'monthsSince':
      return rowsOf(columns, (row) => {
        const cell = columns.cell(expression.field, row);
        if (isCellError(cell)) return cell;
        return typeof cell === 'number' ? (columns.asOf - cell) / DAYS : VALUE_ERROR;
      });
  }
}

const rowsOf = ({ rows }: Columns, of: (row: number) => Given): readonly Given[] =>
  Array.from({ length: rows }, (_, row) => of(row));

function whereFilled(
  columns: Columns,
  field: Field,
  filled: (cell: Given, row: number) => Given,
  empty: (row: number) => Given,
): readonly Given[] {
  return rowsOf(columns, (row) => {
    const cell = columns.cell(field, row);
    if (isCellError(cell)) return cell;
    return isEmpty(cell) ? empty(row) : filled(cell, row);
  });
}

const isEmpty = (cell: Given): boolean => cell === null || cell === undefined || cell === '';

type Call = Extract<Expression, { kind: 'call' }>;

// Layouts and units are taken once for all rows, the rest cell by cell.
function called({ id, given }: Call, columns: Columns): readonly Given[] {
  const run = FUNCTIONS.get(id)!;
  const columnsGiven = given.map((one) =>
    one.kind === 'nothing'
      ? undefined
      : one.kind === 'value'
        ? [[one.value]]
        : inColumn(evaluated(one, columns)),
  );
  const answers = run(...columnsGiven);
  return rowsOf(columns, (row) => (answers.length === 1 ? answers[0]![0] : answers[row]![0]));
}

const inColumn = (cells: readonly Given[]): readonly Given[][] => cells.map((cell) => [cell]);

type Cases = Extract<Expression, { kind: 'cases' }>;

function byText({ field, cases, otherwise }: Cases, columns: Columns): readonly Given[] {
  const answers = new Map(
    cases
      .flatMap(([words, then]) => {
        const given = evaluated(then, columns);
        return words.map((word) => [word.toLowerCase(), given] as const);
      })
      .reverse(),
  );
  const rest = evaluated(otherwise, columns);
  return rowsOf(columns, (row) => {
    const cell = columns.cell(field, row);
    if (isCellError(cell)) return cell;
    const found = typeof cell === 'string' ? answers.get(cell.toLowerCase()) : undefined;
    return (found ?? rest)[row];
  });
}

type Recent = Extract<Expression, { kind: 'recent' }>;

function recent({ field, days, then }: Recent, columns: Columns): readonly Given[] {
  const answers = evaluated(then, columns);
  return whereFilled(
    columns,
    field,
    (cell, row) => {
      if (typeof cell !== 'number') return VALUE_ERROR;
      return columns.asOf - cell > days ? '' : answers[row];
    },
    (row) => answers[row],
  );
}
