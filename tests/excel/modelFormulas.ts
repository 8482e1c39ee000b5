import { isCellError } from '../../functions/cell.ts';
import { functions, NAMESPACE } from '../../functions/list.ts';
import type { Block } from '../../src/report/sheet.ts';
import { rangeOf } from '../../taskpane/host/cellAddress.ts';
import type { ModelName, ModelSheet, ModelTable, ModelWorkbook, Value } from './workbookModel.ts';
import { ErrorValue, sheetNamed, tableNamed } from './workbookModel.ts';

/** Where a formula stands. */
type At = {
  readonly workbook: ModelWorkbook;
  readonly sheet: ModelSheet;
  readonly row: number;
  readonly column: number;
};

type Grid = Value[][];

const TOKENS =
  /\s*("(?:[^"]|"")*"|\d+(?:\.\d+)?|(?:'(?:[^']|'')+'|[A-Za-z_]\w*)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?|[A-Za-z_]\w*\[\[#This Row\],\[[^\]]+\]\]|[A-Za-z_]\w*\[[^\][]+\]|\[@[^\]]+\]|\[@\[[^\]]+\]\]|\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?(?![\w(.])|[A-Za-z_][\w.]*|[-+*/^&(),])/giy;

/**
 * Answers the few formulas that the tests write: sums and products of cells, names, structured references and our
 * own functions. What it does not know is #NAME?, as in a program that lacks a function.
 */
export function evaluateFormula(formula: string, at: At): Value | Grid {
  const tokens = tokensOf(formula);
  if (tokens === undefined) return new ErrorValue('#NAME?');
  const grid = sum({ tokens, next: 0 }, at);
  return grid.length === 1 && grid[0]!.length === 1 ? grid[0]![0]! : grid;
}

function tokensOf(formula: string): string[] | undefined {
  const tokens: string[] = [];
  TOKENS.lastIndex = 0;
  let end = 0;
  for (let match = TOKENS.exec(formula); match !== null; match = TOKENS.exec(formula)) {
    tokens.push(match[1]!);
    end = TOKENS.lastIndex;
  }
  return end === formula.trimEnd().length ? tokens : undefined;
}

type Reading = { readonly tokens: readonly string[]; next: number };

function sum(reading: Reading, at: At): Grid {
  let left = product(reading, at);
  for (
    let sign = reading.tokens[reading.next];
    sign === '+' || sign === '-';
    sign = reading.tokens[reading.next]
  ) {
    reading.next += 1;
    const by = sign === '+' ? 1 : -1;
    left = combine(left, product(reading, at), (a, b) => a + by * b);
  }
  return left;
}

function product(reading: Reading, at: At): Grid {
  let left = operand(reading, at);
  for (
    let sign = reading.tokens[reading.next];
    sign === '*' || sign === '/';
    sign = reading.tokens[reading.next]
  ) {
    reading.next += 1;
    const right = operand(reading, at);
    left = combine(left, right, sign === '*' ? (a, b) => a * b : (a, b) => a / b);
  }
  return left;
}

function combine(left: Grid, right: Grid, by: (a: number, b: number) => number): Grid {
  const [rows, columns] = [Math.max(left.length, right.length), Math.max(left[0]!.length, right[0]!.length)];
  const pick = (grid: Grid, row: number, column: number): Value | undefined =>
    grid[grid.length === 1 ? 0 : row]?.[grid[0]!.length === 1 ? 0 : column];
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (__, column) => {
      const [a, b] = [pick(left, row, column), pick(right, row, column)];
      if (a instanceof ErrorValue) return a;
      if (b instanceof ErrorValue) return b;
      const result = by(Number(a ?? 0), Number(b ?? 0));
      return Number.isFinite(result) ? result : new ErrorValue('#VALUE!');
    }),
  );
}

function operand(reading: Reading, at: At): Grid {
  const token = reading.tokens[reading.next] ?? '';
  reading.next += 1;
  if (reading.tokens[reading.next] === '(') return called(token, reading, at);
  if (token === '(') {
    const inner = sum(reading, at);
    reading.next += 1;
    return inner;
  }
  if (token.startsWith('"')) return [[token.slice(1, -1).replace(/""/g, '"')]];
  if (/^\d/.test(token)) return [[Number(token)]];
  return referred(token, at) ?? [[new ErrorValue('#NAME?')]];
}

function called(name: string, reading: Reading, at: At): Grid {
  const given: Grid[] = [];
  do {
    reading.next += 1;
    if (reading.tokens[reading.next] !== ')') given.push(sum(reading, at));
  } while (reading.tokens[reading.next] === ',');
  reading.next += 1;
  if (name.toUpperCase() === 'SUM') {
    const numbers = given.flat(2).filter((value): value is number => typeof value === 'number');
    return [[numbers.reduce((total, each) => total + each, 0)]];
  }
  const ours = functions.find(({ id }) => `${NAMESPACE}.${id}` === name.toUpperCase());
  if (ours === undefined || !at.workbook.knowsOurFunctions) return [[new ErrorValue('#NAME?')]];
  const answers = ours.run(...given.map((grid) => grid.map((row) => row.map(asGiven))));
  return answers.map((row) => row.map((cell) => (isCellError(cell) ? new ErrorValue(cell.error) : cell)));
}

const asGiven = (value: Value | undefined): unknown =>
  value instanceof ErrorValue ? { error: value.code, message: '' } : (value ?? null);

function referred(token: string, at: At): Grid | undefined {
  const structured = /^(?:([A-Za-z_]\w*)?\[)/.test(token) ? structuredBlock(token, at) : undefined;
  if (structured !== undefined) return gridOf(structured.sheet, structured.block);
  const [, quoted, plain, cells] = /^(?:(?:'((?:[^']|'')+)'|(\w+))!)?(.+)$/.exec(token)!;
  const name = quoted?.replace(/''/g, "'") ?? plain;
  const sheet = name === undefined ? at.sheet : sheetNamed(at.workbook, name);
  const range = rangeOf(cells!.toUpperCase());
  if (sheet !== undefined && range !== undefined) {
    const { startRow: row, startColumn: column, endRow, endColumn } = range;
    return gridOf(sheet, { row, column, rows: endRow - row + 1, columns: endColumn - column + 1 });
  }
  const named = nameCalled(token, [...at.sheet.names, ...at.workbook.names]);
  return named === undefined ? undefined : gridOf(named.sheet, named.block);
}

const nameCalled = (name: string, names: readonly ModelName[]): ModelName | undefined =>
  names.find((each) => each.name.toLowerCase() === name.toLowerCase());

function structuredBlock(token: string, at: At): { sheet: ModelSheet; block: Block } | undefined {
  const own = /^\[@\[?([^\]]+)\]?\]$/.exec(token);
  const thisRow = /^(\w+)\[\[#This Row\],\[([^\]]+)\]\]$/i.exec(token);
  const whole = /^(\w+)\[([^\][]+)\]$/.exec(token);
  const here = at.sheet.tables.find(({ block }) => at.row > block.row && at.row < block.row + block.rows);
  const found =
    own === null ? tableNamed(at.workbook, (thisRow ?? whole)?.[1]) : here && ([at.sheet, here] as const);
  if (found == null) return undefined;
  const [sheet, table] = found;
  const column = columnOf(table, own?.[1] ?? thisRow?.[2] ?? whole![2]!);
  if (column === undefined) return undefined;
  if (whole !== null && thisRow === null && own === null)
    return { sheet, block: { row: table.block.row + 1, column, rows: table.block.rows - 1, columns: 1 } };
  return { sheet, block: { row: at.row, column, rows: 1, columns: 1 } };
}

function columnOf({ heads, block }: ModelTable, head: string): number | undefined {
  const index = heads.findIndex((each) => each.toLowerCase() === head.toLowerCase());
  return index < 0 ? undefined : block.column + index;
}

function gridOf(sheet: ModelSheet, { row, column, rows, columns }: Block): Grid {
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) => sheet.cells[row + r]?.[column + c] as Value),
  );
}
