import { describe, expect, it } from 'vitest';
import { functionWords } from '../../docs/generate/metadata.ts';
import described from '../../functions/functions.json' with { type: 'json' };
import { functions } from '../../functions/list.ts';
import { address } from '../../src/report/sheet.ts';
import type { FormulaAnswer, FormulaScalar } from '../../taskpane/host/workbook/headlessWorkbook.ts';
import { askedSheet, sheetOf } from './askedSheet.ts';

/** Functions whose first argument is a block that is taken as a whole. */
const TABLES = ['LIFEFIT', 'LIFETABLE', 'REPLACEMENTFORECAST'];
/** Functions that answer a header row above their rows. */
const HEADED = ['CONVERTRATING', 'LIFEFROMRULES'];
/** Functions that answer one row for each row, not one cell for each cell. */
const ROW_WISE = ['CHARGEBAND', 'CELLSPREAD'];
/** Functions where a first argument of 0 can't be meant, so that it counts as an empty cell. */
const NO_ZERO = [
  ['MANUFACTUREDATE', 'LOTNUMBER', 'STOCKNUMBER', 'MAKERCODE', 'LABELSCAN'],
  ['MONTHSINSERVICE', 'MONTHSONSHELF', 'FISCALPERIOD', 'RECHARGEBY', 'ORDERBY'],
  ['STATEOFCHARGE', 'CHARGEBAND', 'GRAVITYCHARGE', 'FREEZINGPOINT', 'CRANKINGAMPS', 'SPECIFIEDAMPS'],
  ['REPLACEMENTAGE'],
].flat();
/** The verdict has a rule of its own for a blank reading. */
const OWN_BLANK_RULE = ['VERDICT', 'VERDICTREASON'];

type Sample = { readonly id: string; readonly args: readonly string[]; readonly column: number };

/** The arguments of a formula, cut at commas outside quotes, braces and brackets. */
function argumentsOf(formula: string): string[] {
  const inside = formula.slice(formula.indexOf('(') + 1, -1);
  return inside.match(/(?:"[^"]*"|\{[^}]*\}|[^,])+/g)!.map((each) => each.trim());
}

const valueOf = (literal: string): string | number =>
  literal.startsWith('"') ? literal.slice(1, -1) : Number(literal);

const samples: Sample[] = functionWords().map(({ id, example }, column) => ({
  id,
  args: argumentsOf(example),
  column,
}));
const cellWise = samples.filter(({ id }) => ![...TABLES, ...HEADED, ...ROW_WISE].includes(id));

// Below each other for each function: a value, the same, nothing, an error, 0, the value again.
const first = samples.map(({ args }) => (args[0]!.startsWith('{') ? 1 : valueOf(args[0]!)));
const error = { error: '#DIV/0!', message: '' };
const ROWS = [first, first, first.map(() => null), first.map(() => error), first.map(() => 0), first];
const { ask } = askedSheet([sheetOf('Data', ROWS)]);

const call = ({ id, args }: Sample, ...changed: string[]): string =>
  `CRANK.${id}(${[...changed, ...args.slice(changed.length)].join(',')})`;
const range = ({ column }: Sample, from: number, to: number): string =>
  `${address(from, column)}:${address(to, column)}`;
const rowsOf = (answer: FormulaAnswer): readonly (readonly FormulaScalar[])[] =>
  Array.isArray(answer) ? answer : [[answer as FormulaScalar]];
const isError = (cell: unknown): boolean => typeof cell === 'object' && cell !== null && 'error' in cell;

describe.each(cellWise)('CRANK.$id in a sheet', (sample) => {
  const one = ask(`=${call(sample)}`);
  const fromCell = ask(`=${call(sample, address(0, sample.column))}`);
  const column = ask(`=${call(sample, range(sample, 0, 5))}`);

  it('answers a value typed into the formula and the same value in a cell alike', () => {
    expect(isError(one())).toBe(false);
    expect(fromCell()).toEqual(one());
  });

  it('answers a column row by row: a bad row spoils its own cell only', () => {
    const answers = rowsOf(column()).map(([cell]) => cell);
    expect(answers).toHaveLength(6);
    expect([answers[0], answers[1], answers[5]]).toEqual([one(), one(), one()]);
    expect(answers[3]).toEqual(error);
  });

  it('gives an empty answer for an empty cell', () => {
    if (OWN_BLANK_RULE.includes(sample.id)) expect(isError(rowsOf(column())[2]![0])).toBe(false);
    else expect(rowsOf(column())[2]).toEqual(['']);
  });

  it('takes 0 for an empty cell where 0 can’t be meant', () => {
    const zero = rowsOf(column())[4]![0];
    if (NO_ZERO.includes(sample.id)) expect(zero).toBe('');
    else expect(zero).not.toBe('');
  });

  const picked = ask(`=INDEX(${call(sample, range(sample, 0, 5))},2,1)`);
  const mended = ask(`=IFERROR(${call(sample, range(sample, 0, 5))},"mended")`);
  const counted = ask(`=ROWS(${call(sample, range(sample, 0, 5))})`);

  it('can stand inside functions of the sheet', () => {
    expect(picked()).toEqual(one());
    expect(rowsOf(mended())[3]).toEqual(['mended']);
    expect(counted()).toBe(6);
  });
});

describe('every function', () => {
  const named = functions.map(({ id }) => ({ id, run: ask(`=CRANK.${id}()`) }));
  it.each(named)('CRANK.$id is known, and says so when called with nothing', ({ id, run }) => {
    const [cell] = rowsOf(run())[0]!;
    expect(cell).toMatchObject({ error: '#VALUE!' });
    expect((cell as { message: string }).message).toMatch(new RegExp(`^CRANK\\.${id} takes \\d.*; given 0$`));
  });

  const matrixCount = (id: string): number =>
    described.functions
      .find((each) => each.id === id)!
      .parameters.slice(0, 2)
      .filter(({ dimensionality }) => dimensionality === 'matrix').length;
  const pairs = samples.filter(({ id }) => matrixCount(id) === 2 && !TABLES.includes(id));
  const odd = pairs.map((sample) => ({
    id: sample.id,
    answer: ask(`=${call(sample, range(sample, 0, 2), range(sample, 0, 1))}`),
  }));
  it.each(odd)('CRANK.$id refuses ranges of two shapes as a whole, naming both', ({ answer }) => {
    expect(answer()).toMatchObject({ error: '#VALUE!', message: expect.stringMatching(/3 x 1 and 2 x 1/) });
  });

  const tables = samples.filter(({ id }) => TABLES.includes(id));
  const spoiled = tables.map((sample) => ({
    id: sample.id,
    answer: ask(`=${call(sample, range(sample, 2, 4))}`),
  }));
  it.each(spoiled)('CRANK.$id answers the error that stands in its records', ({ answer }) => {
    expect(answer()).toEqual(error);
  });

  const spilled = samples
    .filter(({ id }) => [...TABLES, ...HEADED].includes(id))
    .map((sample) => ({
      id: sample.id,
      answer: ask(`=${call(sample)}`),
      head: ask(`=INDEX(${call(sample)},1,1)`),
    }));
  it.each(spilled)('CRANK.$id spills a table without gaps under its header', ({ answer, head }) => {
    const rows = rowsOf(answer());
    expect(rows.length).toBeGreaterThan(1);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    expect(rows[0]!.every((cell) => typeof cell === 'string' && cell !== '')).toBe(true);
    expect(head()).toBe(rows[0]![0]);
  });
});
