/** Times of life statistics, best of five runs: `tsx tests/bench/life.bench.ts`. */
import { spawnSync } from 'node:child_process';
import type { LifeColumns, LifeRecord } from '../../src/index.ts';
import {
  estimateOfSample,
  lifeEstimate,
  lifeSampleFromColumns,
  lifeTableOfSample,
  quantileProfileLimits,
} from '../../src/index.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';

const MOST_AGE = 80;
const TRUTH = { shape: 2.4, scale: 60 };
/** Seconds that R's survreg takes in this run for a Weibull fit of a million such lives; nothing where R isn't installed. */
function secondsByR(): number | undefined {
  const script = `library(survival); set.seed(1); t <- rweibull(1e6, ${TRUTH.shape}, ${TRUTH.scale}); w <- ${MOST_AGE} * runif(1e6)
y <- Surv(pmin(t, w), t <= w); cat(min(replicate(3, system.time(survreg(y ~ 1))[["elapsed"]])))`;
  const run = spawnSync('Rscript', ['-e', script], { encoding: 'utf8' });
  const seconds = Number(run.stdout);
  return run.status === 0 && seconds > 0 ? seconds : undefined;
}

/** Lives of every age, or in whole months as returns by month give them. */
function fleet(count: number, wholeMonths: boolean, late: boolean): LifeColumns {
  const uniform = uniformNumbers(count);
  const months = new Float64Array(count);
  const failed = new Uint8Array(count);
  const entry = new Float64Array(count);
  for (let row = 0; row < count; row += 1) {
    entry[row] = late ? Math.max(0, 60 * uniform() - 30) : 0;
    const watched = entry[row]! + 0.01 + MOST_AGE * uniform();
    const life = weibullLife(uniform, TRUTH.shape, TRUTH.scale, entry[row]!);
    failed[row] = life <= watched ? 1 : 0;
    const age = Math.min(life, watched);
    months[row] = wholeMonths ? Math.ceil(age) : age;
    if (wholeMonths) entry[row] = Math.floor(entry[row]!);
  }
  return { months, failed, ...(late ? { entry } : {}) };
}

function best(label: string, work: () => unknown): number {
  const times = Array.from({ length: 5 }, () => {
    const begun = performance.now();
    work();
    return performance.now() - begun;
  });
  const least = Math.min(...times);
  console.log(`${label.padEnd(60)} ${least.toFixed(1).padStart(8)} ms`);
  return least;
}

function printRatioToR(milliseconds: number): void {
  const byR = secondsByR();
  const ratio =
    byR === undefined
      ? 'R is not installed: no ratio'
      : `R took ${byR.toFixed(2)} s, ${((1000 * byR) / milliseconds).toFixed(0)} times as long`;
  console.log(`  ${ratio}`);
}

/** Prints the times, and the ratio to R's for a million rows. */
export function benchLife(): void {
  for (const count of [1e3, 1e4, 1e5, 1e6]) {
    const [exact, late, months] = [
      fleet(count, false, false),
      fleet(count, false, true),
      fleet(count, true, true),
    ];
    const rows = count.toLocaleString('en');
    const fit = best(`Weibull fit, ${rows} rows`, () => estimateOfSample(lifeSampleFromColumns(exact)));
    if (count === 1e6) printRatioToR(fit);
    best(`Weibull fit, ${rows} rows, half under record late`, () =>
      estimateOfSample(lifeSampleFromColumns(late)),
    );
    best(`Weibull fit, ${rows} rows, whole months`, () => estimateOfSample(lifeSampleFromColumns(months)));
    best(`lognormal fit, ${rows} rows, whole months`, () =>
      estimateOfSample(lifeSampleFromColumns(months), 'lognormal'),
    );
    best(`life table, ${rows} rows, whole months`, () => lifeTableOfSample(lifeSampleFromColumns(months)));
  }
  const few: LifeRecord[] = [30, 34, 41, 47, 55, 58].map((age) => ({
    ...{ kind: 'exact', entry: 0, from: age, to: age, count: 1 },
  }));
  best('six failures: fit', () => lifeEstimate(few));
  const sample = lifeSampleFromColumns({
    months: Float64Array.from([30, 34, 41, 47, 55, 58]),
    failed: [1, 1, 1, 1, 1, 1],
  });
  const estimate = estimateOfSample(sample);
  best(
    'six failures: profile limits of one figure',
    () => estimate.ok && quantileProfileLimits(sample, estimate.value, 0.1, 0.9),
  );
}

if (process.argv[1]?.endsWith('life.bench.ts') === true) benchLife();
