import type { LifePosterior } from '../../../src/life/lifePosterior.ts';
import { lifePosterior, posteriorMean } from '../../../src/life/lifePosterior.ts';
import type { LifeKind, LifeRecord } from '../../../src/life/lifeRecord.ts';
import type { BeliefQuantile } from '../../../src/life/posteriorQuantiles.ts';
import { posteriorAge, posteriorScale, posteriorShape } from '../../../src/life/posteriorQuantiles.ts';
import { weibullQuantile } from '../../../src/life/weibull.ts';
import type { Demand } from '../../../src/planning/demand.ts';
import { forecastCounts, horizonsFrom } from '../../../src/planning/forecastCounts.ts';
import beliefs from '../../life/reference/posterior.json' with { type: 'json' };
import type { ReferenceRow } from '../../life/reference/referenceRow.ts';
import { once } from '../../life/reference/referenceRow.ts';
import { valueOf } from '../../published/check.ts';
import { sourceOfPublication } from './sourceOfPublication.ts';

type Case = (typeof beliefs.cases)[number];
type Limits = { readonly low: number; readonly middle: number; readonly high: number };
type RowMaker = (quantity: string, expected: number, within: number, ours: () => number) => ReferenceRow;

const recordsOf = ({ lives }: Case): LifeRecord[] =>
  lives.map(([kind, entry, from, to, count]) => ({
    kind: kind as LifeKind,
    entry: entry as number,
    from: from as number,
    to: to as number,
    count: count as number,
  }));

function rowMaker(method: string, index: number, given: Case, title: string): RowMaker {
  const id = `${method}-${String(index + 1).padStart(2, '0')}`;
  const source = sourceOfPublication(given.publication);
  return (quantity, expected, within, ours) => ({ id, title, source, quantity, expected, within, ours });
}

// Ours and the reference are sums over grids of unlike fineness: limits agree to 2 in 1000, means to 5.
function limitRows(row: RowMaker, name: string, limits: Limits, ours: () => BeliefQuantile): ReferenceRow[] {
  const chances = { low: 0.025, middle: 0.5, high: 0.975 };
  return (['low', 'middle', 'high'] as const).map((limit) =>
    row(`${name} at chance ${chances[limit]}`, limits[limit], 0.002 * limits[limit], () =>
      ours()(chances[limit]),
    ),
  );
}

function lifeRows(given: Case, index: number, belief: () => LifePosterior): ReferenceRow[] {
  const row = rowMaker('D-BL', index, given, `Belief about a life: ${given.name}`);
  const { shape, scale, tenth, half, logMarginalLikelihood } = given;
  const meanShape = once(() => posteriorMean(belief(), (each) => each));
  const meanAge = (share: number) => () => posteriorMean(belief(), (k, s) => weibullQuantile(share, k, s));
  return [
    row('mean shape', shape.mean, 0.002 * shape.mean, meanShape),
    row('deviation of the shape', shape.deviation, 0.005 * shape.deviation, () =>
      Math.sqrt(posteriorMean(belief(), (each) => (each - meanShape()) ** 2)),
    ),
    row('mean age of a tenth', tenth.mean, 0.005 * tenth.mean, meanAge(0.1)),
    row('mean age of a half', half.mean, 0.005 * half.mean, meanAge(0.5)),
    ...limitRows(row, 'shape', shape, () => posteriorShape(belief())),
    ...limitRows(row, 'scale', scale, () => posteriorScale(belief())),
    ...limitRows(row, 'age of a tenth', tenth, () => posteriorAge(belief(), 0.1)),
    ...limitRows(row, 'age of a half', half, () => posteriorAge(belief(), 0.5)),
    row('log marginal likelihood', logMarginalLikelihood, 0.002, () => belief().logMarginalLikelihood),
  ];
}

function countRows(given: Case, index: number, belief: () => LifePosterior): ReferenceRow[] {
  const row = rowMaker('D-BC', index, given, `Counts under a belief: ${given.name}`);
  const bins = recordsOf(given)
    .filter(({ kind }) => kind === 'right')
    .map(({ from, count }) => ({ age: from, count }));
  const windows = horizonsFrom(given.counts.map(({ horizon }) => horizon));
  const demands = once(() => forecastCounts(bins, { life: belief(), windows, renewals: false }).demands);
  return given.counts.flatMap((reference, i) => horizonRows(row, reference, () => demands()[i]!));
}

function horizonRows(row: RowMaker, reference: Case['counts'][number], demand: () => Demand): ReferenceRow[] {
  const { horizon, mean, deviation, count, cumulative, quantiles } = reference;
  return [
    row(`expected in ${horizon}`, mean, 0.005 * mean, () => demand().expected),
    row(`deviation in ${horizon}`, deviation, 0.01 * deviation, () => Math.sqrt(demand().variance)),
    ...count.map((units, i) =>
      row(`chance of at most ${units} in ${horizon}`, cumulative[i]!, 0.003, () => demand().cdf(units)),
    ),
    ...quantiles.map(([chance, units, allowed]) =>
      row(`count at chance ${chance} in ${horizon}`, units!, allowed!, () => demand().quantile(chance!)),
    ),
  ];
}

const cases = beliefs.cases.map((given, index) => {
  const belief = once(() => valueOf(lifePosterior(recordsOf(given), given.prior)));
  return { life: lifeRows(given, index, belief), counts: countRows(given, index, belief) };
});

/** Reference values for beliefs about a life, then for the counts under them, one list for each case. */
export const beliefCases: readonly (readonly ReferenceRow[])[] = [
  ...cases.map(({ life }) => life),
  ...cases.map(({ counts }) => counts),
];
