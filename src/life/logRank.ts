import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { LifeRecord } from './lifeRecord.ts';
import type { LifeSample } from './lifeSample.ts';
import { lifeSample } from './lifeSample.ts';
import type { ChiSquareTest } from './likelihoodRatio.ts';
import { chiSquareTest } from './likelihoodRatio.ts';
import { solvePositive } from './newtonAscent.ts';

/** A test of equal lives in groups, with the failures seen in each and those to expect if all were alike. */
export type LogRank = ChiSquareTest & {
  readonly observed: readonly number[];
  readonly expected: readonly number[];
};

/** How failures at different ages weigh: all alike, or as the share still good just before them (Peto and Peto). */
export type LogRankWeight = 'equal' | 'surviving';

/** What one age of failures adds. */
type AgeOfFailures = { readonly failed: readonly number[]; readonly atRisk: readonly number[] };

/**
 * Test of whether groups of lives last equally long, without assuming a form of life (log-rank). It needs lives seen
 * from new: with late records compare likelihoods instead (`compareGroups`).
 * @param groups  lives of each group, at least two
 * @param weight  `equal` (default) or `surviving`, which looks more at young failures
 * @returns chi-square, degrees of freedom, chance if the groups were alike, observed and expected failures
 * @problem badInput    when a record can't be a life, came under record late, or failed between two ages
 * @problem notEnoughData  when there are fewer than two groups or nothing failed
 * @source mantel1966 log-rank test
 * @source petoPeto1972 weight by the share still good
 * @example logRank([[10, 20], [30, 40]].map((ages) => ages.map((age) => ({ entry: 0, from: age, to: age, kind: 'exact', count: 1 })))).value.chiSquare // 2.882
 */
export function logRank(
  groups: readonly (readonly LifeRecord[])[],
  weight: LogRankWeight = 'equal',
): Outcome<LogRank> {
  if (groups.some((records) => records.some(({ entry }) => entry > 0))) {
    return problem('badInput', 'lateRecords', 'groups');
  }
  return andThen(lifeSample(groups.flat()), (all) => {
    if (all.spans.count.length > 0) return problem('badInput', 'agesNotExact', 'groups');
    if (groups.length < 2) return problem('notEnoughData', 'oneGroup', 'groups');
    if (all.failures === 0) return problem('notEnoughData', 'noFailures', 'groups');
    return answer(testOf(agesOfFailures(groups), groups.length, weight));
  });
}

function agesOfFailures(groups: readonly (readonly LifeRecord[])[]): AgeOfFailures[] {
  const samples = groups.flatMap((records) => {
    const sample = lifeSample(records);
    return sample.ok ? [sample.value] : [];
  });
  const ages = new Set(samples.flatMap(({ age, failed }) => [...age.filter((_, row) => failed[row]! > 0)]));
  return [...ages]
    .sort((a, b) => a - b)
    .map((age) => ({
      failed: samples.map((sample) => sample.failed[sample.age.indexOf(age)] ?? 0),
      atRisk: samples.map((sample) => livesFrom(sample, age)),
    }));
}

function livesFrom({ age, failed, outlived }: LifeSample, from: number): number {
  return age.reduce((sum, each, row) => (each >= from ? sum + failed[row]! + outlived[row]! : sum), 0);
}

function testOf(ages: readonly AgeOfFailures[], groups: number, weight: LogRankWeight): LogRank {
  const [observed, expected, excess] = [zeros(groups), zeros(groups), zeros(groups)];
  const variance = Array.from({ length: groups }, () => zeros(groups));
  let surviving = 1;
  for (const { failed, atRisk } of ages) {
    const [dead, among] = [total(failed), total(atRisk)];
    const weighs = weight === 'equal' ? 1 : surviving;
    // How far the failures among these could be shared out otherwise (hypergeometric).
    const spread = among > 1 ? (weighs * weighs * dead * (among - dead)) / (among - 1) : 0;
    failed.forEach((count, row) => {
      const share = atRisk[row]! / among;
      observed[row]! += weighs * count;
      expected[row]! += weighs * dead * share;
      excess[row]! += weighs * (count - dead * share);
      atRisk.forEach((other, column) => {
        variance[row]![column]! += spread * share * ((row === column ? 1 : 0) - other / among);
      });
    });
    surviving *= 1 - dead / among;
  }
  return { ...chiSquareTest(quadratic(excess, variance), groups - 1), observed, expected };
}

/** excess' variance^-1 excess, without the last group, which the others determine. */
function quadratic(excess: readonly number[], variance: readonly (readonly number[])[]): number {
  const few = excess.slice(0, -1);
  const solved = solvePositive(
    variance.slice(0, -1).map((row) => row.slice(0, -1)),
    few,
  );
  return solved === undefined ? 0 : few.reduce((sum, value, row) => sum + value * solved[row]!, 0);
}

const zeros = (length: number): number[] => new Array<number>(length).fill(0);
const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0);
