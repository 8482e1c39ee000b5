import { describe, expect, it } from 'vitest';
import {
  chiSquareTest,
  compareGroups,
  lifeEstimate,
  lifeRegression,
  likelihoodRatio,
  logRank,
  weibullQuantile,
} from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { failedAt, failedBetween, goodAt } from './lives.ts';

const site = (shape: number, scale: number) =>
  Array.from({ length: 40 }, (_, row) => failedAt(weibullQuantile((row + 0.5) / 40, shape, scale)));

describe('compareGroups', () => {
  it('the same lives twice differ in nothing', () => {
    const {
      equalLives,
      equalShape,
      logRank: ranks,
    } = valueOf(compareGroups(['a', 'b'].map((name) => ({ name, lives: site(2, 60) }))));
    for (const test of [equalLives, equalShape, ranks!]) {
      expect(test.chiSquare).toBeCloseTo(0, 8);
      expect(test.chance).toBeCloseTo(1, 3);
    }
  });

  it('another scale shows in the lives and not in the shape; another shape in both', () => {
    const harsh = valueOf(
      compareGroups([
        { name: 'mild', lives: site(2, 60) },
        { name: 'harsh', lives: site(2, 30) },
      ]),
    );
    expect(harsh.equalLives.chance).toBeLessThan(1e-6);
    expect(harsh.equalShape.chance).toBeGreaterThan(0.9);
    const other = valueOf(
      compareGroups([
        { name: 'even', lives: site(1, 60) },
        { name: 'wearing', lives: site(4, 60) },
      ]),
    );
    expect(other.equalShape.chance).toBeLessThan(1e-6);
  });

  it('late records leave out the log-rank test, not the likelihoods', () => {
    const late = site(2, 60).map((life) => ({ ...life, entry: life.to / 3 }));
    const compared = valueOf(
      compareGroups([
        { name: 'a', lives: late },
        { name: 'b', lives: site(2, 50) },
      ]),
    );
    expect(compared.logRank).toBeUndefined();
    expect(compared.equalLives.degreesOfFreedom).toBe(2);
    const together = valueOf(lifeEstimate([...late, ...site(2, 50)]));
    expect(compared.pooled).toBeCloseTo(together.logLikelihood, 8);
  });

  it('names the group that gives no life', () => {
    const none = compareGroups([
      { name: 'north', lives: site(2, 60) },
      { name: 'south', lives: [goodAt(12)] },
    ]);
    expect(none).toMatchObject({
      problem: { kind: 'notEnoughData', because: 'groupWithoutLife', given: 'south' },
    });
    expect(compareGroups([{ name: 'north', lives: site(2, 60) }])).toMatchObject({
      problem: { because: 'oneGroup' },
    });
    expect(
      compareGroups([
        { name: 'a', lives: [failedAt(-1)] },
        { name: 'b', lives: [] },
      ]),
    ).toMatchObject({
      problem: { because: 'impossibleLife' },
    });
  });
});

describe('logRank', () => {
  it('by hand: failures at 10 and 20 against 30 and 40', () => {
    const test = valueOf(
      logRank([
        [failedAt(10), failedAt(20)],
        [failedAt(30), failedAt(40)],
      ]),
    );
    const expected = 2 / 4 + 1 / 3;
    const variance = 1 / 4 + (1 / 3) * (2 / 3);
    expect(test.expected[0]).toBeCloseTo(expected, 14);
    expect(test.observed).toEqual([2, 2]);
    expect(test.chiSquare).toBeCloseTo((2 - expected) ** 2 / variance, 12);
  });

  it('by hand: a failure before a censoring at the same age, weights by the share still good', () => {
    const groups = [
      [failedAt(10), goodAt(20)],
      [goodAt(10), failedAt(20)],
    ];
    const test = valueOf(logRank(groups, 'surviving'));
    // At 10: one of four at risk; at 20: one of two, each group with one, and three quarters still good.
    expect(test.observed).toEqual([1, 0.75]);
    expect(test.expected[0]).toBeCloseTo(0.5 + 0.75 / 2, 14);
  });

  it.each([
    ['late records', [[failedAt(10, 5)], [failedAt(20)]], 'lateRecords'],
    ['spans', [[failedBetween(5, 10)], [failedAt(20)]], 'agesNotExact'],
    ['one group', [[failedAt(10)]], 'oneGroup'],
    ['no failure', [[goodAt(10)], [goodAt(20)]], 'noFailures'],
    ['an impossible life', [[failedAt(-10)], [goodAt(20)]], 'impossibleLife'],
  ])('refuses %s', (_, groups, because) => {
    expect(logRank(groups)).toMatchObject({ problem: { because } });
  });
});

describe('lifeRegression', () => {
  it('by hand: twice the ages in one group are log 2, with the same sigma', () => {
    const [short, long] = [site(2, 30), site(2, 60)];
    const lives = [
      ...short.map((record) => ({ record, covariates: [0] })),
      ...long.map((record) => ({ record, covariates: [1] })),
    ];
    const fit = valueOf(lifeRegression(lives));
    expect(fit.coefficients[0]).toBeCloseTo(Math.LN2, 8);
    const alone = valueOf(lifeEstimate(short));
    expect(fit.intercept).toBeCloseTo(alone.mu, 8);
    expect(fit.sigma).toBeCloseTo(alone.sigma, 8);
    expect(fit.againstNone.degreesOfFreedom).toBe(1);
  });

  it('a covariate in other units changes its coefficient and nothing else', () => {
    const lives = site(2, 60).map((record, row) => ({ record, covariates: [20 + ((row * 7) % 15)] }));
    const celsius = valueOf(lifeRegression(lives, 'lognormal'));
    const fahrenheit = valueOf(
      lifeRegression(
        lives.map(({ record, covariates }) => ({ record, covariates: [covariates[0]! * 1.8 + 32] })),
        'lognormal',
      ),
    );
    expect(fahrenheit.coefficients[0]! * 1.8).toBeCloseTo(celsius.coefficients[0]!, 10);
    expect(fahrenheit.standardErrors[0]! * 1.8).toBeCloseTo(celsius.standardErrors[0]!, 10);
    expect(fahrenheit.logLikelihood).toBeCloseTo(celsius.logLikelihood, 9);
  });

  it.each([
    ['rows of different width', [[0], [0, 1]], 'covariatesDiffer'],
    ['a covariate that is no number', [[0], [Number.NaN]], 'covariatesDiffer'],
    ['a covariate that never changes', [[3], [3]], 'covariateConstant'],
    [
      'covariates that repeat each other',
      [
        [0, 0],
        [1, 2],
      ],
      'effectUnbounded',
    ],
  ])('refuses %s', (_, pattern, because) => {
    const lives = site(2, 60).map((record, row) => ({ record, covariates: pattern[row % 2]! }));
    expect(lifeRegression(lives)).toMatchObject({ problem: { because } });
  });

  it('refuses a group in which nothing failed, and lives without an estimate', () => {
    const lives = [
      ...site(2, 60).map((record) => ({ record, covariates: [0] })),
      { record: goodAt(12), covariates: [1] },
    ];
    expect(lifeRegression(lives)).toMatchObject({
      problem: { kind: 'notEnoughData', because: 'effectUnbounded' },
    });
    expect(lifeRegression([{ record: goodAt(12), covariates: [] }])).toMatchObject({
      problem: { because: 'noFailures' },
    });
  });
});

describe('chi-square tests', () => {
  it('by hand: two degrees of freedom are exponential; a loss to rounding is nothing', () => {
    expect(chiSquareTest(2 * Math.log(20), 2).chance).toBeCloseTo(0.05, 12);
    expect(chiSquareTest(3.841458820694124, 1).chance).toBeCloseTo(0.05, 9);
    expect(likelihoodRatio(-10, -10 - 1e-12, 1)).toEqual({ chiSquare: 0, degreesOfFreedom: 1, chance: 1 });
  });
});
