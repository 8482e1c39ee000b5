import type { Demand } from '../../../src/planning/demand.ts';
import {
  demandFromPmf,
  expectedShortage,
  negativeBinomialDemand,
  poissonDemand,
} from '../../../src/planning/demand.ts';
import { forecastCounts, horizonsFrom } from '../../../src/planning/forecastCounts.ts';
import { poissonBinomial } from '../../../src/planning/poissonBinomial.ts';
import { atTime, renewalTable } from '../../../src/planning/renewals.ts';
import type { ReferenceRow } from '../../life/reference/referenceRow.ts';
import { once } from '../../life/reference/referenceRow.ts';
import agedRenewals from './agedRenewals.json' with { type: 'json' };
import knownLives from './knownLife.json' with { type: 'json' };
import poissonBinomials from './poissonBinomial.json' with { type: 'json' };
import renewals from './renewals.json' with { type: 'json' };
import spares from './spares.json' with { type: 'json' };
import { sourceOfPublication } from './sourceOfPublication.ts';

type Head = Pick<ReferenceRow, 'id' | 'title' | 'source'>;
type SpareDemand = { poisson?: number; negativeBinomial?: number[]; poissonBinomial?: number[][] };

const headOf = (method: string, index: number, title: string, source = 'madeUp'): Head => ({
  id: `${method}-${String(index + 1).padStart(2, '0')}`,
  title,
  source,
});

const groupsOf = (pairs: readonly (readonly number[])[]) =>
  pairs.map(([chance, count]) => ({ chance: chance!, count: count! }));

// As the reference's own digits allow: masses far out in a tail are held to their size alone.
const nearly = (expected: number): number => 1e-14 + 1e-8 * Math.abs(expected);

/** Rows for the counts below which a demand stays with given chances; they are whole and agree exactly. */
const quantileRows = (
  head: Head,
  pairs: readonly (readonly number[])[],
  demand: () => Demand,
): ReferenceRow[] =>
  pairs.map(([chance, count]) => ({
    ...head,
    quantity: `count at chance ${chance}`,
    expected: count!,
    within: 0,
    ours: () => demand().quantile(chance!),
  }));

const poissonBinomialCases = poissonBinomials.cases.map((given, index): ReferenceRow[] => {
  const head = headOf('D-PB', index, `Units that fail with their own chances: ${given.name}`);
  const pmf = once(() => poissonBinomial(groupsOf(given.groups)));
  const demand = once(() => demandFromPmf(pmf()));
  const row = (quantity: string, expected: number, ours: () => number, within = nearly(expected)) => ({
    ...head,
    quantity,
    expected,
    within,
    ours,
  });
  return [
    row('mean', given.mean, () => demand().expected),
    row('variance', given.variance, () => demand().variance, 5e-11),
    ...given.count.flatMap((count, i) => [
      row(`chance of ${count}`, given.chance[i]!, () => pmf().mass[count - pmf().first] ?? 0),
      row(`chance of at most ${count}`, given.cumulative[i]!, () => demand().cdf(count)),
    ]),
    ...quantileRows(head, given.quantiles, demand),
  ];
});

const renewalCases = renewals.cases.map(({ name, shape, scale, times, mean }, index): ReferenceRow[] => {
  const head = headOf('D-RN', index, name, 'smithLeadbetter1963');
  const table = once(() => renewalTable(shape, scale, 2 * Math.max(...times) + 1));
  return times.map((time, i) => ({
    ...head,
    quantity: `failures of one place in ${time} months`,
    expected: mean[i]!,
    within: 1e-4 * mean[i]! + 1e-8,
    ours: () => atTime(table().mean, table().step, time),
  }));
});

const agedRenewalCase = agedRenewals.rows.map((row): ReferenceRow => {
  const [age, horizon, expected] = row as [number, number, number];
  const life = { shape: agedRenewals.shape, scale: agedRenewals.scale };
  const forecast = () =>
    forecastCounts([{ age, count: 1 }], { life, windows: horizonsFrom([horizon]) }).demands[0]!;
  return {
    ...headOf('D-AR', 0, 'Failures of one place whose battery has an age'),
    quantity: `age ${age}, ${horizon} months`,
    expected,
    within: 2e-4 * expected + 1e-7,
    ours: () => forecast().expected,
  };
});

function spareDemand(given: SpareDemand): Demand {
  if (given.poisson !== undefined) return poissonDemand(given.poisson);
  const [mean, size] = given.negativeBinomial ?? [];
  if (mean !== undefined) return negativeBinomialDemand(mean, mean + mean ** 2 / size!);
  return demandFromPmf(poissonBinomial(groupsOf(given.poissonBinomial!)));
}

const spareCases = spares.cases.map(({ name, demand: given, ...figures }, index): ReferenceRow[] => {
  const head = headOf('D-SP', index, name);
  const demand = once(() => spareDemand(given));
  const row = (quantity: string, expected: number, ours: () => number) => ({
    ...head,
    quantity,
    expected,
    within: 5e-9 * expected,
    ours,
  });
  return [
    ...quantileRows(head, figures.levels, demand),
    ...figures.stock.flatMap((units, i) => [
      row(`chance that ${units} are enough`, figures.enough[i]!, () => demand().cdf(units)),
      row(`expected shortage with ${units}`, figures.shortage[i]!, () => expectedShortage(demand(), units)),
    ]),
  ];
});

const knownLifeCases = knownLives.cases.map((given, index): ReferenceRow[] => {
  const head = headOf('D-KC', index, `Known life: ${given.name}`, sourceOfPublication(given.publication));
  const bins = given.ages.map(([age, count]) => ({ age: age!, count: count! }));
  const windows = horizonsFrom(given.horizons.map(({ horizon }) => horizon));
  const life = { shape: given.shape, scale: given.scale };
  const demands = once(() => forecastCounts(bins, { life, windows, renewals: false }).demands);
  return given.horizons.flatMap(({ horizon, expected, deviation, none, quantiles }, i): ReferenceRow[] => {
    const demand = () => demands()[i]!;
    const ahead = `in ${horizon}`;
    const row = (quantity: string, value: number, allowed: number, ours: () => number) => ({
      ...head,
      quantity: `${quantity} ${ahead}`,
      expected: value,
      within: allowed,
      ours,
    });
    return [
      row('expected', expected, 5e-9 * expected, () => demand().expected),
      row('deviation', deviation, 5e-9 * deviation, () => Math.sqrt(demand().variance)),
      row('chance of none', none, 1e-15 + 1e-7 * none, () => demand().cdf(0)),
      ...quantileRows(head, quantiles, demand).map((each) => ({
        ...each,
        quantity: `${each.quantity} ${ahead}`,
      })),
    ];
  });
});

/** Reference values for the laws of counts, renewals and stock, one list for each case. */
export const countCases: readonly (readonly ReferenceRow[])[] = [
  ...poissonBinomialCases,
  ...renewalCases,
  agedRenewalCase,
  ...spareCases,
  ...knownLifeCases,
];
