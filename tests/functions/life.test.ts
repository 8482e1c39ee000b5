import { describe, expect, it } from 'vitest';
import * as cells from '../../functions/life.ts';
import {
  failureWithin,
  lifeFit,
  lifeFromRules,
  lifeTable,
  remainingLife,
  replacementAge,
  survival,
} from '../../src/index.ts';
import { failedAt, goodAt } from '../life/lives.ts';
import { valueOf } from '../published/check.ts';
import { call, errorOf } from './call.ts';

const column = (...values: unknown[]) => values.map((value) => [value]);

const months = column(20, 30, 40, 50, 60, 36, 48);
const failed = column(1, 1, 1, 1, 1, 0, '');
const lives = [...[20, 30, 40, 50, 60].map((age) => failedAt(age)), goodAt(36), goodAt(48)];

describe('LIFEFIT months, failed, ageAtRecordStart, model, level', () => {
  const heads = ['name', 'estimate', 'low', 'high'];

  it('answers the rows of the contract, in their order and spelling', () => {
    const fit = valueOf(lifeFit(lives));
    expect(call(cells.lifeFit, months, failed)).toEqual([
      heads,
      ...fit.figures.map(({ name, estimate, low, high }) => [name, estimate, low, high]),
      ['failures', 5, '', ''],
      ['lives', 7, '', ''],
      ['log-likelihood', fit.logLikelihood, '', ''],
      ['basis', 'data', '', ''],
    ]);
    expect(call(cells.lifeFit, months, failed).map(([name]) => name)).toEqual(
      'name,shape,scale,median life,tenth-percentile life,failures,lives,log-likelihood,basis'.split(','),
    );
  });

  it('takes late entry, model and level from their places', () => {
    const start = column(0, 10, '', 0, 20, 0, 0);
    const late = [
      failedAt(20),
      failedAt(30, 10),
      failedAt(40),
      failedAt(50),
      failedAt(60, 20),
      goodAt(36),
      goodAt(48),
    ];
    const fit = valueOf(lifeFit(late, 'lognormal', 0.5));
    const answers = call(cells.lifeFit, months, failed, start, 'Lognormal', 0.5);
    expect(answers.slice(1, 5)).toEqual(
      fit.figures.map(({ name, estimate, low, high }) => [name, estimate, low, high]),
    );
    expect(answers[1]![0]).toBe('mu');
  });

  it('leaves out rows without months, and takes TRUE and FALSE', () => {
    const more = column(...months.flat(), '', 0, null);
    const flags = column(true, true, true, true, true, false, false, 1, 1, 'x');
    expect(call(cells.lifeFit, more, flags)).toEqual(call(cells.lifeFit, months, failed));
  });

  it('a single cell stands for its column; a row of cells is a range too', () => {
    const all = call(cells.lifeFit, [months.flat().slice(0, 5)], 1);
    expect(all[6]).toEqual(['lives', 5, '', '']);
  });

  it('says prior and data under five failures, with an empty log-likelihood', () => {
    const answers = call(cells.lifeFit, months, column(1, 1, 0, 0, 0, 0, 0));
    expect(answers[7]).toEqual(['log-likelihood', '', '', '']);
    expect(answers[8]).toEqual(['basis', 'prior and data', '', '']);
    expect(answers.slice(1, 5).every((row) => row.slice(1).every(Number.isFinite))).toBe(true);
  });

  it('says where the records set no limit', () => {
    const young = call(
      cells.lifeFit,
      column(30, 31, 32, 33, 34, 34.5),
      column(1, 1, 1, 1, 1, 0),
      null,
      null,
      0.999999,
    );
    const limits = young.slice(1, 5).flatMap((row) => row.slice(2));
    expect(limits.every((limit) => limit === 'not reached' || Number.isFinite(limit))).toBe(true);
  });

  it('blank in, blank out', () => {
    expect(call(cells.lifeFit, column('', 0, null), column(1, 1, 1))).toEqual([['']]);
    expect(call(cells.lifeTable, null, null)).toEqual([['']]);
  });

  it.each([
    ['a failed that is neither', [months, column(1, 1, 'yes', 0, 0, 0, 0)], '#VALUE!', 'failed in row 3'],
    ['a failed of 2', [months, column(1, 2, 1, 0, 0, 0, 0)], '#VALUE!', 'row 2'],
    [
      'a record that starts after the end',
      [months, failed, column(0, 30, 0, 0, 0, 0, 0)],
      '#VALUE!',
      'row 2',
    ],
    ['a negative record start', [months, failed, column(0, 0, 0, -1, 0, 0, 0)], '#VALUE!', 'row 4'],
    ['negative months', [column(20, -30, 40), column(1, 1, 1)], '#VALUE!', 'months in row 2'],
    ['text for months', [column('age', 30, 40), column(1, 1, 1)], '#VALUE!', 'months in row 1'],
    [
      'text for a start',
      [column(20, 30), column(1, 1), column(0, 'new')],
      '#VALUE!',
      'ageAtRecordStart in row 2',
    ],
    ['ranges of two shapes', [months, column(1, 1)], '#VALUE!', '7 x 1 and 2 x 1'],
    ['an unknown model', [months, failed, null, 'gamma'], '#VALUE!', '"weibull" or "lognormal"'],
    ['a level of 90', [months, failed, null, null, 90], '#VALUE!', 'level is 90'],
    ['a level in words', [months, failed, null, null, 'high'], '#VALUE!', 'level must be a number'],
    ['no failure', [months, 0], '#N/A', 'no failure'],
    ['too few for lognormal', [months, column(1, 1, 0, 0, 0, 0, 0), null, 'lognormal'], '#N/A', '2 failures'],
  ])('refuses %s', (_, given, error, words) => {
    const answers = call(cells.lifeFit, ...given);
    expect(answers).toHaveLength(1);
    expect(errorOf(answers[0]![0]).error).toBe(error);
    expect(errorOf(answers[0]![0]).message).toContain(words);
  });

  it('an error in the range comes back as it is', () => {
    const error = { error: '#REF!', message: '' };
    expect(call(cells.lifeFit, column(20, error, 40), column(1, 1, 1))).toEqual([[error]]);
  });
});

describe('LIFETABLE months, failed, ageAtRecordStart, level', () => {
  it('answers a line for each age of failures', () => {
    const rows = valueOf(lifeTable(lives, { level: 0.5 })).rows;
    expect(call(cells.lifeTable, months, failed, null, 0.5)).toEqual([
      ['month', 'at risk', 'failed', 'surviving', 'low', 'high'],
      ...rows.map(({ month, atRisk, failed: dead, surviving, low, high }) => [
        month,
        atRisk,
        dead,
        surviving,
        low ?? '',
        high ?? '',
      ]),
    ]);
    expect(call(cells.lifeTable, months, failed).at(-1)).toEqual([60, 1, 1, 0, '', '']);
  });

  it('says nothing after it fell to 0 while other lives came under record later', () => {
    const answers = call(cells.lifeTable, column(10, 60, 70, 80), column(1, 1, 0, 0), column(0, 50, 50, 50));
    expect(answers.slice(1)).toEqual([
      [10, 1, 1, '', '', ''],
      [60, 3, 1, '', '', ''],
    ]);
  });

  it('refuses as LIFEFIT does', () => {
    expect(errorOf(call(cells.lifeTable, months, 0)[0]![0]).error).toBe('#N/A');
    expect(errorOf(call(cells.lifeTable, months, 3)[0]![0]).message).toContain('failed in row 1');
    expect(errorOf(call(cells.lifeTable, months, failed, null, 2)[0]![0]).message).toContain('level is 2');
  });
});

describe('LIFEFROMRULES share1, month1, share2, month2', () => {
  it('answers shape and scale under their heads, a line for each line', () => {
    const { shape, scale } = valueOf(lifeFromRules(0.1, 36, 0.5, 54));
    expect(call(cells.lifeFromRules, 0.1, 36, 0.5, 54)).toEqual([
      ['shape', 'scale'],
      [shape, scale],
    ]);
    expect(call(cells.lifeFromRules, column(0.1, '', 0.2), column(36, '', 36), 0.5, 54)).toMatchObject([
      ['shape', 'scale'],
      [shape, scale],
      ['', ''],
      [expect.any(Number), expect.any(Number)],
    ]);
  });

  it('refuses rules that contradict each other; blank stays blank', () => {
    expect(errorOf(call(cells.lifeFromRules, 0.5, 36, 0.1, 54)[0]![0]).message).toContain('contradict');
    expect(errorOf(call(cells.lifeFromRules, column(0.5, 0.1), 36, 0.1, 54)[1]![0]).error).toBe('#VALUE!');
    expect(call(cells.lifeFromRules, '', '', '', '')).toEqual([['']]);
  });
});

describe('functions of a known life', () => {
  it('SURVIVAL month, shape, scale', () => {
    const expected = valueOf(survival(36, 3, 60));
    expect(call(cells.survival, 36, 3, 60)).toEqual([[expected]]);
    expect(call(cells.survival, column(36, '', 0), 3, 60)).toEqual([[expected], [''], [1]]);
    expect(errorOf(call(cells.survival, column(36, -1), 3, 60)[1]![0]).message).toContain('month is -1');
    expect(errorOf(call(cells.survival, 36, '', 60)[0]![0]).message).toBe('shape is missing');
  });

  it('FAILUREWITHIN age, months, shape, scale', () => {
    const expected = valueOf(failureWithin(36, 12, 3, 60));
    expect(call(cells.failureWithin, 36, 12, 3, 60)).toEqual([[expected]]);
    expect(call(cells.failureWithin, [[36, 36]], 12, [[3, 'x']], 60)[0]).toMatchObject([
      expected,
      { error: '#VALUE!' },
    ]);
  });

  it('REMAININGLIFE age, shape, scale, share', () => {
    expect(call(cells.remainingLife, 36, 3, 60)).toEqual([[valueOf(remainingLife(36, 3, 60))]]);
    expect(call(cells.remainingLife, column(36, ''), 3, 60, 0.1)).toEqual([
      [valueOf(remainingLife(36, 3, 60, 0.1))],
      [''],
    ]);
    expect(errorOf(call(cells.remainingLife, 36, 3, 60, 1.5)[0]![0]).message).toContain('share is 1.5');
  });

  it('REPLACEMENTAGE shape, scale, plannedCost, failureCost', () => {
    expect(call(cells.replacementAge, 2.4, 60, 350, 900)).toEqual([
      [valueOf(replacementAge(2.4, 60, 350, 900))],
    ]);
    const answers = call(cells.replacementAge, column(2.4, 0, 1), 60, 350, 900);
    expect(answers[1]).toEqual(['']);
    expect(errorOf(answers[2]![0])).toMatchObject({ error: '#N/A' });
    expect(errorOf(answers[2]![0]).message).toContain('waiting for failure is always cheaper');
  });

  it('take 200,000 rows as a column', () => {
    const ages = Array.from({ length: 200_000 }, (_, row) => [row % 150]);
    expect(call(cells.failureWithin, ages, 12, 2.4, 60)).toHaveLength(200_000);
    expect(
      call(
        cells.lifeFit,
        ages,
        ages.map(([age]) => [age! % 3 === 0 ? 1 : 0]),
      ),
    ).toHaveLength(9);
  });
});
