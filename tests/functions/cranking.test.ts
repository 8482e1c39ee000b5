import { describe, expect, it } from 'vitest';
import type { Cell } from '../../functions/cell.ts';
import * as cells from '../../functions/cranking.ts';
import { verdictReason } from '../../src/cranking/verdictReason.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { call, errorOf } from './call.ts';

const verdictOf = (...given: unknown[]): Cell => call(cells.verdict, ...given)[0]![0]!;

describe('CRANKINGAMPS and LOADTESTFLOOR', () => {
  it('take their arguments in order, with the unit last', () => {
    expect(call(cells.crankingAmps, [[1_100]], [[-18]])).toEqual([[1_100]]);
    expect(call(cells.crankingAmps, 1_000, 32, 'F')).toEqual([[1_200]]);
    expect(call(cells.loadTestFloor, 45, 'f')).toEqual([[expect.closeTo(9.35, 9)]]);
    expect(call(cells.loadTestFloor, [[5]])).toEqual([[expect.closeTo(9.31, 9)]]);
  });

  it('answer a column for a column, blank for blank, and spoil a bad row only', () => {
    const answers = call(
      cells.crankingAmps,
      [[1_100], [''], [0], ['x'], [1_000], [1_000]],
      [[-18], [0], [0], [0], [-50], ['']],
    );
    expect(answers.slice(0, 3)).toEqual([[1_100], [''], ['']]);
    expect(errorOf(answers[3]![0])).toEqual({
      error: '#VALUE!',
      message: 'rating must be a number; given "x"',
    });
    expect(errorOf(answers[4]![0])).toMatchObject({ error: '#N/A' });
    expect(errorOf(answers[5]![0])).toEqual({ error: '#VALUE!', message: 'temperature is missing' });
    expect(call(cells.loadTestFloor, [[null], [''], [0], [-20]])).toEqual([
      [''],
      [''],
      [expect.closeTo(9.14, 9)],
      [{ error: '#N/A', message: expect.stringContaining('warm the battery') }],
    ]);
  });
});

describe('SPECIFIEDAMPS', () => {
  it('answers for each type', () => {
    expect(call(cells.specifiedAmps, [['6T AGM'], ['6t agm'], [''], ['8D']])).toEqual([
      [1_100],
      [1_100],
      [''],
      [{ error: '#N/A', message: expect.stringContaining('known: "6T AGM"') }],
    ]);
  });
});

describe('CONVERTRATING', () => {
  it('answers a table with its header row, a row for each rating', () => {
    expect(call(cells.convertRating, 400, 'DIN', 'SAE')).toEqual([
      ['low', 'high'],
      [640, 680],
    ]);
    const [header, first, blank, bad] = call(cells.convertRating, [[1_000], [''], [9]], 'SAE', 'CA');
    expect(header).toEqual(['low', 'high']);
    expect(first).toEqual([1_200, 1_300]);
    expect(blank).toEqual(['', '']);
    expect(bad!.map((cell) => errorOf(cell).error)).toEqual(['#VALUE!', '#VALUE!']);
  });

  it('puts what spoils the whole answer into the one cell of the formula', () => {
    expect(call(cells.convertRating, 400, 'JIS', 'SAE')).toEqual([
      [{ error: '#N/A', message: expect.stringContaining('JIS') }],
    ]);
    expect(call(cells.convertRating, [[400], [500]], 'DIN', 'EN')).toEqual([
      [{ error: '#N/A', message: expect.stringContaining('known, both ways') }],
    ]);
    expect(call(cells.convertRating, 'x', 'DIN', 'SAE')).toEqual([
      [{ error: '#VALUE!', message: 'value must be a number; given "x"' }],
    ]);
    expect(call(cells.convertRating, 400, null, 'SAE')).toEqual([
      [{ error: '#VALUE!', message: 'from is missing' }],
    ]);
    expect(call(cells.convertRating, '', 'DIN', 'SAE')).toEqual([['']]);
  });
});

describe('VERDICT and VERDICTREASON', () => {
  it('judge the cases of the contract, a load test among them', () => {
    expect(verdictOf(420, 980, 11.7, -9)).toBe('Not judged');
    expect(verdictOf(1_150, 980, 12.8, -25)).toBe('Serviceable');
    expect(verdictOf(9.4, call(cells.loadTestFloor, 5), 12.6, 5)).toBe('Serviceable');
  });

  it('take all eight arguments in order', () => {
    expect(verdictOf(500, 980, 12.8, 68, 'yes', 'AGM', 'F', null)).toBe('Condemned');
    expect(verdictOf(500, 980, 12.8, 20, 'no', 'AGM', 'C', '')).toBe('Awaiting charge');
    expect(verdictOf(1_150, 980, 12.8, 20, 0, 'AGM', null, 'cracked')).toBe('Condemned');
    expect(verdictOf(1_150, 980, 12.9, 20, 0, 'flooded')).toBe('Not judged');
    expect(verdictOf(1_150, 980, 12.8, 130, 0, '', 'F')).toBe('Not judged');
    expect(call(cells.verdictReason, 500, 980, 12.8, 68, 1, 'AGM', 'F', 'ok')).toEqual([
      [valueOf(verdictReason({ reading: 500, least: 980, volts: 12.8, celsius: 20, retest: 1 }))],
    ]);
  });

  it('answer nothing only where reading, volts and damage are all blank', () => {
    for (const run of [cells.verdict, cells.verdictReason]) {
      expect(call(run, '', 980, '', 5, 'second', 'AGM', 'C', 'none')).toEqual([['']]);
      expect(call(run, null, 980, 0)).toEqual([['']]);
    }
    expect(verdictOf('', 980, 12.8)).toBe('Not judged');
    expect(verdictOf('', '', '', '', '', '', '', true)).toBe('Condemned');
  });

  it('take a 0 for a reading and a temperature, but for no least and no volts', () => {
    expect(verdictOf(0, 980, 12.8, 20)).toBe('Awaiting charge');
    expect(verdictOf(0, 980, 0)).toBe('Not judged');
    expect(verdictOf('', '', 11.2, 0)).toBe('Not judged');
    expect(errorOf(verdictOf(500, 0, 12.8)).message).toContain('least is missing');
  });

  it('say what to do about what can not be', () => {
    const wrong: [unknown[], RegExp][] = [
      [['980 A', 980], /^reading must be a number/],
      [[9.4, 980, 12.8], /give both in amperes/],
      [[500, 980, 25.4], /whole 24 V set/],
      [[500, 980, 12.8, 'cold'], /^temperature must be a number/],
      [[500, 980, 12.8, 20, 'second'], /^retest is "second"/],
      [[500, 980, 12.8, 20, 0, 'lithium'], /^construction is "lithium"/],
      [[500, 980, 12.8, 20, 0, 'AGM', 'K'], /^unit is "K"/],
    ];
    for (const [given, text] of wrong) {
      const { error, message } = errorOf(verdictOf(...given));
      expect(error).toBe('#VALUE!');
      expect(message).toMatch(text);
    }
  });

  it('judge columns row by row, single cells for all rows, an error in its own row', () => {
    const broken = { error: '#DIV/0!', message: '' };
    const readings = [[1_150], [''], [500], [broken], ['x'], ['']];
    const volts = [[12.8], [12.8], [12.8], [12.8], [12.8], ['']];
    const answers = call(cells.verdict, readings, 980, volts, 20);
    expect(answers.map(([cell]) => (typeof cell === 'object' ? cell.error : cell))).toEqual([
      'Serviceable',
      'Not judged',
      'Awaiting charge',
      '#DIV/0!',
      '#VALUE!',
      '',
    ]);
    expect(errorOf(call(cells.verdict, [[1], [2]], 980, [[1], [2], [3]])[0]![0]).message).toContain(
      '2 x 1 and 3 x 1',
    );
  });

  it('judge 200,000 rows as a column', () => {
    const rows = Array.from({ length: 200_000 }, (_, row) => row);
    const column = (value: (row: number) => number): number[][] => rows.map((row) => [value(row)]);
    const answers = call(
      cells.verdict,
      column((row) => 400 + (row % 997)),
      980,
      column((row) => 11 + (row % 2_003) / 1_000),
      column((row) => (row % 71) - 30),
    );
    expect(new Set(answers.map(([cell]) => cell))).toEqual(
      new Set(['Serviceable', 'Awaiting charge', 'Not judged']),
    );
  });
});
