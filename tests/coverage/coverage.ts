/**
 * How often 90 % limits hold, on generated fleets whose truth is known: `npm run coverage`. A fleet's coverage is
 * computed exactly, as the chance under the truth that the count lies within the limits.
 */
import { writeFileSync } from 'node:fs';
import { lifeEstimate } from '../../src/life/lifeEstimate.ts';
import { lifePosterior } from '../../src/life/lifePosterior.ts';
import { collapseRecords } from '../../src/life/lifeRecord.ts';
import type { AgeBin } from '../../src/planning/ageBins.ts';
import { ageBins } from '../../src/planning/ageBins.ts';
import { forecastCounts, horizonsFrom } from '../../src/planning/forecastCounts.ts';
import type { LifeBelief } from '../../src/planning/lattice.ts';
import type { FleetStory, GeneratedFleet } from './generateFleet.ts';
import { generateFleet } from './generateFleet.ts';

const HORIZONS = [12, 24, 36];
const LIMITS = [0.05, 0.95] as const;

type Scenario = {
  readonly name: string;
  readonly fleets: number;
  /** Mean coverage at each horizon has to lie between these. */
  readonly bounds: readonly [number, number];
  readonly story: FleetStory;
};

const SCENARIOS: readonly Scenario[] = [
  {
    name: '500 places, records of 14 months',
    fleets: 200,
    bounds: [0.88, 0.94],
    story: {
      places: 500,
      truth: { shape: 2.4, scale: 60 },
      filledFrom: 132,
      filledTo: 0,
      recorded: 14,
      goneRate: 0.004,
    },
  },
  {
    name: 'young fleet of 500 places',
    fleets: 100,
    bounds: [0.88, 0.99],
    story: {
      places: 500,
      truth: { shape: 3, scale: 42 },
      filledFrom: 18,
      filledTo: 2,
      recorded: 18,
      goneRate: 0.003,
    },
  },
];

/** Coverage and width of 90 % limits in one fleet, horizon by horizon. */
type FleetCoverage = { readonly covered: number[]; readonly width: number[] };

function coverage(bins: readonly AgeBin[], life: LifeBelief, truth: LifeBelief): FleetCoverage {
  const request = { windows: horizonsFrom(HORIZONS), renewals: false };
  const forecast = forecastCounts(bins, { ...request, life }).demands;
  const actual = forecastCounts(bins, { ...request, life: truth }).demands;
  const limits = forecast.map((demand) => LIMITS.map((chance) => demand.quantile(chance)));
  return {
    covered: limits.map(([low, high], i) => actual[i]!.cdf(high!) - actual[i]!.cdf(low! - 1)),
    width: limits.map(([low, high]) => high! - low!),
  };
}

function fleetCoverages({ records, ages }: GeneratedFleet, { truth }: FleetStory) {
  const collapsed = collapseRecords(records);
  const belief = lifePosterior(collapsed);
  if (!belief.ok) throw new Error(belief.problem.because);
  const bins = ageBins(ages);
  const fit = lifeEstimate(collapsed);
  return {
    belief: coverage(bins, belief.value, truth),
    // With too few failures there is no fit to plug in.
    plugIn: fit.ok
      ? coverage(bins, { shape: 1 / fit.value.sigma, scale: Math.exp(fit.value.mu) }, truth)
      : undefined,
  };
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const rounded = (value: number) => Number(value.toFixed(3));
const middle = (values: readonly number[]) =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

function summary(coverages: readonly FleetCoverage[]) {
  return {
    fleets: coverages.length,
    coverage: HORIZONS.map((_, i) => rounded(mean(coverages.map(({ covered }) => covered[i]!)))),
    medianWidth: HORIZONS.map((_, i) => middle(coverages.map(({ width }) => width[i]!))),
  };
}

function run({ name, fleets, bounds, story }: Scenario, index: number) {
  const generated = Array.from({ length: fleets }, (_, i) => generateFleet(story, 1000 * (index + 1) + i));
  const results = generated.map((fleet) => fleetCoverages(fleet, story));
  const failures = generated.map((fleet) => fleet.failures);
  const belief = summary(results.map((result) => result.belief));
  return {
    name,
    truth: story.truth,
    failures: { median: middle(failures), least: Math.min(...failures), most: Math.max(...failures) },
    horizons: HORIZONS,
    bounds,
    belief,
    plugIn: summary(results.flatMap((result) => result.plugIn ?? [])),
    holds: belief.coverage.every((each) => each >= bounds[0] && each <= bounds[1]),
  };
}

const begun = performance.now();
const rows = SCENARIOS.map(run);
const about =
  'Mean chance, under the truth, that the count lies within 90 % limits; made by npm run coverage.';
const file = new URL('coverage.json', import.meta.url);
writeFileSync(file, `${JSON.stringify({ about, scenarios: rows }, undefined, 2)}\n`);
for (const row of rows) {
  console.log(`${row.name}: ${row.failures.median} failures (${row.failures.least} to ${row.failures.most})`);
  console.log(`  shown   ${row.belief.coverage.join(' ')}, widths ${row.belief.medianWidth.join(' ')}`);
  console.log(
    `  plug-in ${row.plugIn.coverage.join(' ')}, widths ${row.plugIn.medianWidth.join(' ')} (${row.plugIn.fleets} fleets)`,
  );
}
console.log(`${((performance.now() - begun) / 1000).toFixed(0)} s`);
if (rows.some((row) => !row.holds)) {
  console.error('the coverage lies outside its bounds');
  process.exitCode = 1;
}
