import chisquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import { rootBetween } from '../basics/solve.ts';
import { ascendMu, ascendSigma } from './lifeAscent.ts';
import type { LifeEstimate } from './lifeEstimate.ts';
import { lawOf } from './lifeEstimate.ts';
import type { LifeSample } from './lifeSample.ts';
import { muFor } from './lifeStarts.ts';
import type { Peak } from './newtonAscent.ts';
import { normalQuantile } from './standardLife.ts';

/** The limits of a figure; undefined where the records set none on that side. */
export type Limits = { readonly low?: number; readonly high?: number };

// Failures from which on the likelihood is near enough to a parabola in logs (Wald); below it, its own shape.
const FAILURES_FOR_WALD = 20;
const FURTHEST_LOG_MOVE = 20;
const SETTLED = 1e-10;

/** The age by which a share of fitted lives has ended. */
export function lifeQuantile({ model, mu, sigma }: LifeEstimate, share: number): number {
  return Math.exp(mu + sigma * lawOf(model).quantile(share));
}

/**
 * Limits of the age by which a share has failed, at a confidence level: profile likelihood under 20 failures,
 * from 20 on Wald limits on the log scale.
 */
export function quantileLimits(
  sample: LifeSample,
  estimate: LifeEstimate,
  share: number,
  level: number,
): Limits {
  if (estimate.failures >= FAILURES_FOR_WALD || estimate.varianceLogSigma === 0) {
    return quantileWaldLimits(estimate, share, level);
  }
  return quantileProfileLimits(sample, estimate, share, level);
}

/** Limits of sigma, at a confidence level, by the same rule; those of a Weibull shape are 1 / these. */
export function sigmaLimits(sample: LifeSample, estimate: LifeEstimate, level: number): Limits {
  if (estimate.failures >= FAILURES_FOR_WALD) return sigmaWaldLimits(estimate, level);
  return sigmaProfileLimits(sample, estimate, level);
}

/** Wald limits of a quantile, on the log scale. */
export function quantileWaldLimits(estimate: LifeEstimate, share: number, level: number): Limits {
  const lever = estimate.sigma * lawOf(estimate.model).quantile(share);
  return around(lifeQuantile(estimate, share), waldReach(level) * standardErrorAt(estimate, lever));
}

/** Wald limits of sigma, on the log scale. */
export function sigmaWaldLimits({ sigma, varianceLogSigma }: LifeEstimate, level: number): Limits {
  return around(sigma, waldReach(level) * Math.sqrt(varianceLogSigma));
}

/** Limits of the share still good at an age, through z = (log age - mu) / sigma, which is nearly normal. */
export function survivalLimits(estimate: LifeEstimate, age: number, level: number): Limits {
  const z = (Math.log(age) - estimate.mu) / estimate.sigma;
  const reach = (waldReach(level) * standardErrorAt(estimate, z * estimate.sigma)) / estimate.sigma;
  const { logSurvival } = lawOf(estimate.model);
  return { low: Math.exp(logSurvival(z + reach)), high: Math.exp(logSurvival(z - reach)) };
}

/** Profile-likelihood limits of a quantile: the lives that the records don't rule out at this level. */
export function quantileProfileLimits(
  sample: LifeSample,
  estimate: LifeEstimate,
  share: number,
  level: number,
): Limits {
  const law = lawOf(estimate.model);
  const z = law.quantile(share);
  let start = Math.log(estimate.sigma);
  const profile = (logAge: number): Peak | undefined => {
    const peak = ascendSigma(sample, law, { logAge, z }, start);
    if (peak !== undefined) start = peak.point[0]!;
    return peak;
  };
  const centre = Math.log(lifeQuantile(estimate, share));
  return exponentials(
    crossings(profile, estimate, level, { centre, spread: standardErrorAt(estimate, z * estimate.sigma) }),
  );
}

/** Profile-likelihood limits of sigma. */
export function sigmaProfileLimits(sample: LifeSample, estimate: LifeEstimate, level: number): Limits {
  const law = lawOf(estimate.model);
  const profile = (logSigma: number) => ascendMu(sample, law, logSigma, muFor(sample, Math.exp(logSigma)));
  const spread = Math.sqrt(estimate.varianceLogSigma);
  return exponentials(crossings(profile, estimate, level, { centre: Math.log(estimate.sigma), spread }));
}

/** Standard error of mu + lever, where the lever is a multiple of sigma. */
export function standardErrorAt(
  { varianceMu, covariance, varianceLogSigma }: LifeEstimate,
  lever: number,
): number {
  return Math.sqrt(varianceMu + 2 * lever * covariance + lever * lever * varianceLogSigma);
}

const waldReach = (level: number): number => normalQuantile((1 + level) / 2);

const around = (middle: number, logReach: number): Limits => ({
  low: middle * Math.exp(-logReach),
  high: middle * Math.exp(logReach),
});

const exponentials = ({ low, high }: Limits): Limits => ({
  ...(low === undefined ? {} : { low: Math.exp(low) }),
  ...(high === undefined ? {} : { high: Math.exp(high) }),
});

type Search = { readonly centre: number; readonly spread: number };

/** Where twice the fall of a profile from its summit meets the chi-square quantile, on either side. */
function crossings(
  profile: (x: number) => Peak | undefined,
  estimate: LifeEstimate,
  level: number,
  search: Search,
): Limits {
  const allowed = chisquareQuantile(level, 1) / 2;
  // NaN where the profile can't be climbed: such a point ends the search.
  const fall = (x: number) => estimate.logLikelihood - (profile(x)?.value ?? Number.NaN) - allowed;
  const low = crossing(fall, search, -1);
  const high = crossing(fall, search, 1);
  return { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
}

function crossing(fall: (x: number) => number, { centre, spread }: Search, side: 1 | -1): number | undefined {
  let inside = centre;
  for (let move = spread; ; move *= 1.6) {
    const outside = centre + side * Math.min(move, FURTHEST_LOG_MOVE);
    const height = fall(outside);
    if (Number.isNaN(height)) return undefined;
    if (height >= 0) {
      const root = rootBetween(fall, inside, outside, SETTLED, 'limit');
      return root.ok ? root.value : undefined;
    }
    if (move >= FURTHEST_LOG_MOVE) return undefined;
    inside = outside;
  }
}
