import { describe, expect, it } from 'vitest';
import { collapseRecords, lifeSample, lifeSampleFromColumns } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { failedAt, failedBefore, failedBetween, goodAt } from './lives.ts';

describe('lifeSample by hand', () => {
  it('counts equal ages together and takes late entries from them', () => {
    const sample = valueOf(lifeSample([failedAt(30), failedAt(30, 12), goodAt(30), goodAt(48, 30)]));
    expect([...sample.age]).toEqual([12, 30, 48]);
    expect([...sample.failed]).toEqual([0, 2, 0]);
    expect([...sample.outlived]).toEqual([-1, 0, 1]);
    expect(sample).toMatchObject({ lives: 4, failures: 2 });
  });

  it('keeps spans apart; one without width is an exact age, one before the record began is cut to it', () => {
    const sample = valueOf(
      lifeSample([failedBetween(6, 12), failedBetween(9, 9), failedBetween(3, 12, 8), failedBefore(4)]),
    );
    expect([...sample.age]).toEqual([8, 9]);
    expect([...sample.spans.logFrom].map(Math.exp)).toEqual([
      0,
      expect.closeTo(6, 12),
      expect.closeTo(8, 12),
    ]);
    expect(sample.failures).toBe(4);
  });

  it('leaves out lives that say nothing: under record since today, none counted', () => {
    const sample = valueOf(lifeSample([goodAt(20, 20), failedAt(10, 0, 0), goodAt(0), failedAt(12)]));
    expect(sample).toMatchObject({ lives: 1, failures: 1 });
  });

  it('takes a failure on the day on which the battery came under record', () => {
    expect(lifeSample([failedAt(20, 20)]).ok).toBe(true);
  });

  it('tells the ages that decide whether there is an estimate', () => {
    const { bounds } = valueOf(lifeSample([failedAt(30, 2), failedBetween(10, 20, 3), goodAt(25, 1)]));
    expect(bounds).toEqual({ latestFrom: 30, earliestTo: 20, allEnteredLate: true });
  });
});

describe('columns', () => {
  const months = Float64Array.from([30, 30, 48, 12]);
  const failed = [1, 0, 0, 1];
  const entry = Float64Array.from([0, 12, 30, 0]);

  it('make the sample that rows make', () => {
    const rows = [failedAt(30), goodAt(30, 12), goodAt(48, 30), failedAt(12)];
    expect(lifeSampleFromColumns({ months, failed, entry })).toEqual(valueOf(lifeSample(rows)));
    expect(lifeSampleFromColumns({ months, failed, entry })).toEqual(
      valueOf(lifeSample(collapseRecords(rows))),
    );
  });

  it('with too many ages to count stay as they are', () => {
    const many = Float64Array.from({ length: 20_000 }, (_, row) => 1 + row / 7);
    const sample = lifeSampleFromColumns({
      months: many,
      failed: many.map((_, row) => row % 2),
      entry: many.map((age) => age - 1),
    });
    expect(sample).toMatchObject({ lives: 20_000, failures: 10_000, counted: false });
    expect(sample.age).toHaveLength(39_999);
    expect(sample.bounds).toEqual({ latestFrom: many[19_999], earliestTo: many[1], allEnteredLate: false });
  });
});

describe('refusals name the row', () => {
  it.each([
    ['a negative age', failedAt(-3)],
    ['a negative entry', goodAt(12, -1)],
    ['an end before the entry', goodAt(12, 13)],
    ['an interval that ends as the record begins', failedBetween(3, 12, 12)],
    ['an interval that runs backwards', failedBetween(12, 3)],
    ['a failure at age 0', failedAt(0)],
    ['an age that is no number', goodAt(Number.NaN)],
    ['a count that is no number', goodAt(12, 0, Number.NaN)],
    ['a negative count', goodAt(12, 0, -1)],
  ])('%s', (_, wrong) => {
    expect(lifeSample([failedAt(10), wrong])).toMatchObject({
      problem: { kind: 'badInput', because: 'impossibleLife', more: { row: 2 } },
    });
  });
});
