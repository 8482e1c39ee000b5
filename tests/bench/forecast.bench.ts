/** Times of the forecast, best of five runs: `tsx tests/bench/forecast.bench.ts`. */
import { lifePosterior } from '../../src/life/lifePosterior.ts';
import type { LifeRecord } from '../../src/life/lifeRecord.ts';
import { collapseRecords } from '../../src/life/lifeRecord.ts';
import { forecastCounts, forecastGroups, horizonsFrom } from '../../src/planning/forecastCounts.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';

const MOST_AGE = 120;
const TRUTH = { shape: 2.4, scale: 62 };

/** Lives in whole months, as returns by month give them: a few hundred distinct rows whatever the fleet's size. */
function monthlyLives(count: number, failing: number): LifeRecord[] {
  const uniform = uniformNumbers(count);
  const lives = Array.from({ length: count }, (): LifeRecord => {
    const watched = 1 + Math.floor(MOST_AGE * uniform());
    const entry = Math.max(0, watched - 24);
    const failed = Math.ceil(weibullLife(uniform, TRUTH.shape, TRUTH.scale, entry));
    const fails = failed <= watched && uniform() < failing;
    const age = Math.min(failed, watched);
    return {
      entry,
      from: fails ? age - 0.5 : watched,
      to: fails ? age - 0.5 : watched,
      kind: fails ? 'exact' : 'right',
      count: 1,
    };
  });
  return collapseRecords(lives.filter(({ entry, to }) => to > entry));
}

const bins = Array.from({ length: MOST_AGE }, (_, month) => ({ age: month + 0.5, count: 10 }));
const sites = Array.from({ length: 20 }, (_, site) =>
  bins.filter(({ age }) => Math.floor(age) % 20 !== site),
);

function best(label: string, work: () => unknown): void {
  const times = Array.from({ length: 5 }, () => {
    const begun = performance.now();
    work();
    return performance.now() - begun;
  });
  console.log(
    `${label.padEnd(68)} ${Math.min(...times)
      .toFixed(0)
      .padStart(6)} ms`,
  );
}

const limits =
  (life: Parameters<typeof forecastCounts>[1]['life'], horizons: number[], renewals: boolean) => () =>
    forecastCounts(bins, { life, windows: horizonsFrom(horizons), renewals }).demands.map((demand) => [
      demand.quantile(0.05),
      demand.quantile(0.95),
    ]);

/** Prints the times of belief and forecast, with many and with few failures. */
export function benchForecast(): void {
  for (const [name, count, failing] of [
    ['2,000 lives', 2000, 1],
    ['200,000 lives', 200_000, 1],
    ['2,000 lives, few of them failures', 2000, 0.01],
  ] as const) {
    const records = monthlyLives(count, failing);
    const posterior = lifePosterior(records);
    if (!posterior.ok) throw new Error(posterior.problem.because);
    const life = posterior.value;
    console.log(
      `${name}: ${records.length} distinct, ${life.failures} failures, ${life.nodes.length} weighted lives`,
    );
    best('  belief', () => lifePosterior(records));
    best('  limits at 12, 24 and 36 months, 120 ages', limits(life, [12, 24, 36], false));
    best('  the same with replacements that fail again', limits(life, [12, 24, 36], true));
    best(
      '  60 months one by one',
      limits(
        life,
        Array.from({ length: 60 }, (_, i) => i + 1),
        true,
      ),
    );
    best('  20 sites, three horizons', () =>
      forecastGroups(sites, { life, windows: horizonsFrom([12, 24, 36]) }),
    );
  }
}

if (process.argv[1]?.endsWith('forecast.bench.ts') === true) benchForecast();
