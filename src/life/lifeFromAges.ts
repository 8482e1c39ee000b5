import gammaln from '@stdlib/math-base-special-gammaln';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { LifePosterior } from './lifePosterior.ts';
import { gridNodes } from './lifePosterior.ts';
import type { LifePrior } from './lifePrior.ts';
import { DEFAULT_LIFE_PRIOR, logPriorDensity } from './lifePrior.ts';
import { posteriorGrid } from './posteriorGrid.ts';
import type { LogDensity } from './posteriorMode.ts';
import { peakOf } from './posteriorMode.ts';

/**
 * What the ages of the batteries now in service say about how long they stay, where no removal is on record. It
 * holds only while the number of places has been about the same for two battery lives: an age then comes up in
 * proportion to the share that stays so long. A fleet that grew looks short-lived, one that shrank long-lived. It
 * speaks of leaving for whatever reason, not of failing.
 * @param ages   ages of all batteries in service [months], above 0
 * @param prior  belief before the ages; default half gone by 54 months, wide
 * @returns weighted lives, the grid behind them and the most credible one; `failures` is 0, for none was seen
 * @problem notEnoughData  when there is no age
 * @problem outOfRange     when an age is not above 0
 * @source cox1962 ages in a renewal process that has run for long (from memory)
 * @example lifeFromAges([6, 12, 30, 44]).ok // true
 */
export function lifeFromAges(
  ages: readonly number[],
  prior: LifePrior = DEFAULT_LIFE_PRIOR,
): Outcome<LifePosterior> {
  if (ages.length === 0) return problem('notEnoughData', 'noLives', 'ages');
  const wrong = ages.find((age) => !(age > 0 && age < Infinity));
  if (wrong !== undefined) return problem('outOfRange', 'mustBeAboveZero', 'age', wrong);
  return answer(posteriorOfAges(ages, prior));
}

function posteriorOfAges(ages: readonly number[], prior: LifePrior): LifePosterior {
  const density = agesDensity(ages);
  const belief: LogDensity = (logSigma) => {
    const likelihood = density(logSigma);
    return (mu) => likelihood(mu) + logPriorDensity(prior, mu, logSigma);
  };
  const peak = peakOf(belief, { mu: Math.log(prior.medianMonths), logSigma: Math.log(prior.sigma) });
  const grid = posteriorGrid(belief, peak);
  return {
    prior,
    lives: ages.length,
    failures: 0,
    mode: { mu: peak.mu, sigma: Math.exp(peak.logSigma) },
    grid,
    nodes: gridNodes(grid),
    logMarginalLikelihood: grid.logIntegral,
  };
}

/** Log of the chance of the ages: for each, the share that stays so long over the mean stay. */
function agesDensity(ages: readonly number[]): LogDensity {
  const logs = ages.map(Math.log);
  const oldest = logs.reduce((a, b) => Math.max(a, b));
  return (logSigma) => {
    const sigma = Math.exp(logSigma);
    // Taken against the oldest age, so that no power runs over.
    const powers = logs.reduce((sum, log) => sum + Math.exp((log - oldest) / sigma), 0);
    const logMeanOverScale = gammaln(1 + sigma);
    return (mu) => -powers * Math.exp((oldest - mu) / sigma) - ages.length * (mu + logMeanOverScale);
  };
}
