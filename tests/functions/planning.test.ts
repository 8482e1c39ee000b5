import { describe, expect, it } from 'vitest';
import * as cells from '../../functions/planning.ts';
import { lifePosterior } from '../../src/life/lifePosterior.ts';
import { replacementForecast } from '../../src/planning/replacementForecast.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { call, errorOf } from './call.ts';

const message = (...given: unknown[]) => errorOf(call(cells.replacementForecast, ...given)[0]![0]).message;

describe('REPLACEMENTFORECAST', () => {
  const ages = [[6], [30], [54]];
  const counts = [[40], [35], [10]];
  const bins = [
    { age: 6, count: 40 },
    { age: 30, count: 35 },
    { age: 54, count: 10 },
  ];

  it('takes shape and scale from two cells, side by side or one under the other, and says chance only', () => {
    const rows = valueOf(replacementForecast(bins, { shape: 2.4, scale: 60 }, 2, 6, 0.8));
    const expected = [
      ['period', 'expected', 'low, chance only', 'high, chance only', 'variance'],
      ...rows.map(({ period, expected: mean, low, high, variance }) => [period, mean, low, high, variance]),
    ];
    expect(expected.map(([first]) => first)).toEqual(['period', 1, 2, 'all']);
    expect(call(cells.replacementForecast, ages, [[2.4, 60]], 2, 6, 0.8, counts)).toEqual(expected);
    expect(call(cells.replacementForecast, ages, [[2.4], [60]], 2, 6, 0.8, counts)).toEqual(expected);
  });

  it('takes a removal history of two or three columns, and says low and high', () => {
    const history = [
      [40, 1, 20],
      [55, 0, ''],
      [null, 1, 5],
      [0, 1, 5],
      [30, '', 0],
    ];
    const belief = valueOf(
      lifePosterior([
        { kind: 'exact', entry: 20, from: 40, to: 40, count: 1 },
        { kind: 'right', entry: 0, from: 55, to: 55, count: 1 },
        { kind: 'right', entry: 0, from: 30, to: 30, count: 1 },
      ]),
    );
    const table = call(cells.replacementForecast, ages, history, 1, null, null, counts);
    expect(table[0]).toEqual(['period', 'expected', 'low', 'high', 'variance']);
    const [year] = valueOf(replacementForecast(bins, belief, 1));
    expect(table[1]).toEqual([1, year!.expected, year!.low, year!.high, year!.variance]);
    const twoColumns = history.map(([months, failed]) => [months, failed]);
    expect(call(cells.replacementForecast, ages, twoColumns, 1)[0]![2]).toBe('low');
  });

  it('leaves out rows without an age, and counts one battery an age unless told', () => {
    const plain = call(cells.replacementForecast, [[6], [30]], [[2.4, 60]], 1);
    expect(call(cells.replacementForecast, [[6], [''], [30], [null]], [[2.4, 60]], 1)).toEqual(plain);
    expect(
      call(cells.replacementForecast, [[6], [30], [54]], [[2.4, 60]], 1, 0, 0, [[1], [1], ['']]),
    ).toEqual(plain);
    expect(call(cells.replacementForecast, [[''], [null]], [[2.4, 60]], 1)).toEqual([['']]);
  });

  it('keeps every limit of its table free of errors for lives of a few days', () => {
    const table = call(cells.replacementForecast, [[0], [60]], [[200, 1]], 3);
    expect(
      table
        .slice(1)
        .flat()
        .every((cell) => cell === 'all' || Number.isFinite(cell)),
    ).toBe(true);
  });

  it('says what is wrong, in one cell', () => {
    const known = [[2.4, 60]];
    expect(message([['six']], known, 1)).toBe('ages must be a number; given "six"');
    expect(message(ages, [[1, 2, 3, 4]], 1)).toContain('life is 1 x 4 cells');
    expect(
      message(
        ages,
        [
          [5, 1],
          [5, 2],
        ],
        1,
      ),
    ).toContain('row 2');
    expect(
      message(
        ages,
        [
          [5, 1, 6],
          [9, 1, 0],
        ],
        1,
      ),
    ).toContain('row 1');
    expect(message(ages, [[0, 60]], 1)).toBe('shape is 0; allowed is 0.05 to 200');
    expect(message(ages, known, null)).toBe('periods is missing');
    expect(message(ages, known, 1, 12, 0.9, [[1]])).toContain('given 3 x 1 and 1 x 1');
    expect(message(ages, known, 1, 'x')).toBe('monthsEach must be a number; given "x"');
    const nothing = call(
      cells.replacementForecast,
      ages,
      [
        [0, 0],
        ['', 1],
      ],
      1,
    )[0]![0];
    expect(errorOf(nothing).error).toBe('#N/A');
    const error = { error: '#DIV/0!', message: '' };
    expect(call(cells.replacementForecast, [[6], [error]], known, 1)).toEqual([[error]]);
  });

  it('takes 200,000 ages under 200,000 lives', () => {
    const fleet = Array.from({ length: 200_000 }, (_, i) => [((i * 7919) % 100_000) / 1000]);
    const lives = fleet.map(([age], i) => [age! + 0.5, i % 3 === 0 ? 1 : 0, 0]);
    const table = call(cells.replacementForecast, fleet, lives, 3);
    expect(table).toHaveLength(5);
  });
});

describe('STOCKLEVEL expected, chance, variance', () => {
  it('answers for a cell and for a column', () => {
    expect(call(cells.stockLevel, 7.3)).toEqual([[12]]);
    expect(call(cells.stockLevel, [[7.3], [''], [0]], 0.95, [[20.6], [5], [0]])).toEqual([[16], [''], [0]]);
    expect(call(cells.stockLevel, 7.3, 0.5)).toEqual([[7]]);
    expect(call(cells.stockLevel, 7.3, 0, null)).toEqual([[12]]);
  });

  it('refuses in its own row', () => {
    const answers = call(cells.stockLevel, [[-1], [1]], 0.9);
    expect(errorOf(answers[0]![0])).toEqual({
      error: '#VALUE!',
      message: 'expected is -1; allowed is 0 to 1000000',
    });
    expect(answers[1]).toEqual([2]);
    expect(errorOf(call(cells.stockLevel, 1, 2)[0]![0]).message).toContain('chance is 2');
  });
});

describe('ORDERBY needed, leadMonths, safetyMonths', () => {
  it('answers a date for dates and text', () => {
    expect(call(cells.orderBy, [[46_296], ['2026-10-01'], [''], [0]], 4, 1)).toEqual([
      [46_143],
      [46_143],
      [''],
      [''],
    ]);
    expect(call(cells.orderBy, 46_296, 0)).toEqual([[46_296]]);
  });

  it('refuses a missing lead time and a date that reads two ways', () => {
    expect(errorOf(call(cells.orderBy, 46_296, null)[0]![0]).message).toBe('leadMonths is missing');
    expect(errorOf(call(cells.orderBy, '03/04/2026', 1)[0]![0]).message).toContain('reads two ways');
    expect(errorOf(call(cells.orderBy, 46_296, -1)[0]![0]).message).toContain('leadMonths is -1');
  });
});
