import type { LifeEstimate, LifeSample, Limits } from '../../../src/index.ts';
import {
  lifeQuantile,
  lognormalMean,
  quantileProfileLimits,
  quantileWaldLimits,
  sigmaProfileLimits,
  sigmaWaldLimits,
  survivalLimits,
  weibullMean,
} from '../../../src/index.ts';
import { lawOf } from '../../../src/index.ts';

const LEVEL = 0.95;

/** A figure of a fit by the name that the reference files give it, such as "B10 wald low" or "S(500)". */
export function fitFigure(sample: LifeSample, fit: LifeEstimate, name: string): number | undefined {
  const plain = plainFigures(fit)[name];
  if (plain !== undefined) return plain;
  const survival = /^S\(([\d.]+)\)( low| high)?$/.exec(name);
  if (survival !== null) return survivalFigure(fit, Number(survival[1]), survival[2]?.trim());
  const [quantity, method, side] = name.split(' ');
  if (method === undefined) return lifeQuantile(fit, shareOf(quantity!));
  const limits = limitsOf(sample, fit, quantity!, method);
  return side === 'low' ? limits.low : limits.high;
}

function plainFigures(fit: LifeEstimate): Record<string, number> {
  const { mu, sigma, varianceMu, covariance, varianceLogSigma } = fit;
  const [shape, scale] = [1 / sigma, Math.exp(mu)];
  const [seMu, seLogSigma] = [Math.sqrt(varianceMu), Math.sqrt(varianceLogSigma)];
  return {
    ...{ lives: fit.lives, failures: fit.failures, 'log-likelihood': fit.logLikelihood },
    ...{ mu, sigma, shape, scale, covariance, 'se mu': seMu, 'se log sigma': seLogSigma },
    ...{ 'se sigma': sigma * seLogSigma, 'se shape': shape * seLogSigma, 'se scale': scale * seMu },
    AIC: 2 * (fit.model === 'exponential' ? 1 : 2) - 2 * fit.logLikelihood,
    'mean life': fit.model === 'lognormal' ? lognormalMean(mu, sigma) : weibullMean(shape, scale),
  };
}

function survivalFigure(fit: LifeEstimate, age: number, side?: string): number | undefined {
  if (side === undefined) return Math.exp(lawOf(fit.model).logSurvival((Math.log(age) - fit.mu) / fit.sigma));
  const limits = survivalLimits(fit, age, LEVEL);
  return side === 'low' ? limits.low : limits.high;
}

// B10 is the age by which 10 % have failed; the scale of a Weibull life is the age of 1 - 1/e.
const shareOf = (quantity: string): number =>
  quantity === 'scale' ? -Math.expm1(-1) : Number(quantity.slice(1)) / 100;

function limitsOf(sample: LifeSample, fit: LifeEstimate, quantity: string, method: string): Limits {
  if (quantity === 'shape') return inverse(limitsOf(sample, fit, 'sigma', method));
  if (quantity === 'sigma') {
    return method === 'wald' ? sigmaWaldLimits(fit, LEVEL) : sigmaProfileLimits(sample, fit, LEVEL);
  }
  const share = shareOf(quantity);
  if (method === 'wald') return quantileWaldLimits(fit, share, LEVEL);
  return quantileProfileLimits(sample, fit, share, LEVEL);
}

const inverse = ({ low, high }: Limits): Limits => ({
  ...(high === undefined ? {} : { low: 1 / high }),
  ...(low === undefined ? {} : { high: 1 / low }),
});
