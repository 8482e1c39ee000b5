import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { LifePrior } from './lifePrior.ts';
import { DEFAULT_LIFE_PRIOR, logPriorDensity } from './lifePrior.ts';
import type { LifeRecord } from './lifeRecord.ts';
import type { LifeSample } from './lifeSample.ts';
import { lifeSample } from './lifeSample.ts';
import type { PosteriorGrid } from './posteriorGrid.ts';
import { gridMu, gridSigma, posteriorGrid } from './posteriorGrid.ts';
import type { LogDensity } from './posteriorMode.ts';
import { peakOf } from './posteriorMode.ts';
import { weibullLogLikelihoodAt } from './weibull.ts';

/** One Weibull life (mu = log scale, sigma = 1/shape) and how much it is believed; weights sum to 1. */
export type PosteriorNode = { readonly mu: number; readonly sigma: number; readonly weight: number };

/** What is believed about a Weibull life after its records. */
export type LifePosterior = {
  readonly prior: LifePrior;
  /** Lives that carry weight and failures among them. */
  readonly lives: number;
  readonly failures: number;
  /** The most credible life. */
  readonly mode: { readonly mu: number; readonly sigma: number };
  readonly grid: PosteriorGrid;
  /** The grid as weighted lives, without those that carry less than 1e-8 of the largest. */
  readonly nodes: readonly PosteriorNode[];
  /** Log of the chance of the records under the prior. */
  readonly logMarginalLikelihood: number;
};

const DROPPED = Math.log(1e-8);

/**
 * What is believed about a Weibull life: a prior and the records of lives, on a grid, without random numbers.
 * It assumes one life law for all records; it stands with few failures and with none.
 * @param records  lives, ages in months; collapse equal rows first, time then doesn't grow with the fleet
 * @param prior    belief before the records; default half gone by 54 months, wide
 * @returns weighted lives, the grid behind them and the most credible one
 * @problem badInput  when a record can't be a life, or the prior's figures aren't above 0
 * @source gelmanEtAl2013 posterior by summation over a grid (textbook; from memory)
 * @example lifePosterior([{ entry: 0, from: 30, to: 30, kind: 'exact', count: 4 }]).ok // true
 */
export function lifePosterior(
  records: readonly LifeRecord[],
  prior: LifePrior = DEFAULT_LIFE_PRIOR,
): Outcome<LifePosterior> {
  const { medianMonths, spreadLogMedian, sigma, spreadLogSigma } = prior;
  const given = [medianMonths, spreadLogMedian, sigma, spreadLogSigma, prior.share ?? 0.5];
  const wrong = given.find((figure) => !(figure > 0 && Number.isFinite(figure)));
  if (wrong !== undefined) return problem('badInput', 'priorFigure', 'prior', wrong);
  return andThen(lifeSample(records), (sample) => answer(posteriorOfSample(sample, prior)));
}

/** The same for lives that are already counted by age. */
export function posteriorOfSample(sample: LifeSample, prior: LifePrior = DEFAULT_LIFE_PRIOR): LifePosterior {
  const density: LogDensity = (logSigma) => {
    // Without a life that carries weight the belief stays what it was.
    const likelihood = sample.lives === 0 ? () => 0 : weibullLogLikelihoodAt(sample, Math.exp(logSigma));
    return (mu) => likelihood(mu) + logPriorDensity(prior, mu, logSigma);
  };
  const start = { mu: Math.log(prior.medianMonths), logSigma: Math.log(prior.sigma) };
  const peak = peakOf(density, start);
  const grid = posteriorGrid(density, peak);
  return {
    prior,
    lives: sample.lives,
    failures: sample.failures,
    mode: { mu: peak.mu, sigma: Math.exp(peak.logSigma) },
    grid,
    nodes: gridNodes(grid),
    logMarginalLikelihood: grid.logIntegral,
  };
}

/** The grid, or every `stride`th row and column of it, as weighted lives. */
export function gridNodes(grid: PosteriorGrid, stride = 1): PosteriorNode[] {
  const kept: PosteriorNode[] = [];
  for (let row = 0; row < grid.rows; row += stride) {
    for (let column = 0; column < grid.columns; column += stride) {
      const logDensity = grid.logDensity[row * grid.columns + column]!;
      if (logDensity < DROPPED) continue;
      kept.push({ mu: gridMu(grid, row, column), sigma: gridSigma(grid, row), weight: Math.exp(logDensity) });
    }
  }
  const total = kept.reduce((sum, node) => sum + node.weight, 0);
  return kept.map((node) => ({ ...node, weight: node.weight / total }));
}

/** Posterior mean of a quantity of the life, given as a function of Weibull shape and scale. */
export function posteriorMean(
  posterior: LifePosterior,
  quantity: (shape: number, scale: number) => number,
): number {
  return posterior.nodes.reduce(
    (sum, { mu, sigma, weight }) => sum + weight * quantity(1 / sigma, Math.exp(mu)),
    0,
  );
}
