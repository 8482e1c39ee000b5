import { describe, expect, it } from 'vitest';
import type { LifeFit, LifeFigureName } from '../../src/index.ts';
import {
  fitModel,
  lifeEstimate,
  lifeFit,
  lifePosterior,
  posteriorAge,
  posteriorShape,
  weibullQuantile,
} from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { failedAt, goodAt } from './lives.ts';
import { readLives } from './reference/readLives.ts';

const figure = (fit: LifeFit, name: LifeFigureName) => fit.figures.find((each) => each.name === name)!;

describe('lifeFit from data', () => {
  it('tells the estimate as shape, scale and two ages', () => {
    const fit = valueOf(lifeFit(readLives('fleetLateRecords'), 'weibull', 0.95));
    const { mu, sigma, logLikelihood, failures, lives } = valueOf(
      lifeEstimate(readLives('fleetLateRecords')),
    );
    expect(fit).toMatchObject({ basis: 'data', model: 'weibull', failures, lives, logLikelihood });
    expect(fit.figures.map(({ name }) => name)).toEqual([
      'shape',
      'scale',
      'median life',
      'tenth-percentile life',
    ]);
    expect(figure(fit, 'shape').estimate).toBeCloseTo(1 / sigma, 12);
    expect(figure(fit, 'scale').estimate).toBeCloseTo(Math.exp(mu), 10);
    expect(figure(fit, 'median life').estimate).toBeCloseTo(
      weibullQuantile(0.5, 1 / sigma, Math.exp(mu)),
      10,
    );
    for (const { low, estimate, high } of fit.figures) {
      expect(low).toBeLessThan(estimate);
      expect(high).toBeGreaterThan(estimate);
    }
  });

  it('a lognormal life has mu and sigma instead, so that a look-up of shape fails', () => {
    const fit = valueOf(lifeFit(readLives('locomotiveControls'), 'lognormal'));
    expect(fit.figures.map(({ name }) => name)).toEqual([
      'mu',
      'sigma',
      'median life',
      'tenth-percentile life',
    ]);
    expect(Math.exp(figure(fit, 'mu').low!)).toBeCloseTo(figure(fit, 'median life').low!, 9);
    expect(figure(fit, 'sigma').low).toBeLessThan(figure(fit, 'sigma').estimate);
  });

  it('under 20 failures the limits lean to the side on which the records say less', () => {
    const fit = valueOf(lifeFit(readLives('bearingCages')));
    const { low, estimate, high } = figure(fit, 'scale');
    expect(high! / estimate).toBeGreaterThan(estimate / low!);
  });
});

describe('lifeFit from prior and data', () => {
  const few = [failedAt(30), failedAt(41), failedAt(38), failedAt(52), goodAt(60, 0, 20)];

  it('answers the medians and limits of the belief with one to four failures', () => {
    const fit = valueOf(lifeFit(few, 'weibull', 0.8));
    const posterior = valueOf(lifePosterior(few));
    expect(fit).toMatchObject({ basis: 'prior and data', failures: 4, lives: 24 });
    expect(fit.logLikelihood).toBeUndefined();
    expect(figure(fit, 'shape')).toEqual({
      name: 'shape',
      estimate: posteriorShape(posterior)(0.5),
      low: posteriorShape(posterior)(0.1),
      high: posteriorShape(posterior)(0.9),
    });
    expect(figure(fit, 'median life').estimate).toBe(posteriorAge(posterior, 0.5)(0.5));
  });

  it('turns to the data alone at the fifth failure', () => {
    expect(valueOf(lifeFit([...few, failedAt(45)])).basis).toBe('data');
  });

  it('also where many failures lie at the oldest age and the shape can’t be told', () => {
    const fit = valueOf(lifeFit([failedAt(36, 0, 9), goodAt(20, 0, 30)]));
    expect(fit).toMatchObject({ basis: 'prior and data', failures: 9 });
    for (const { low, estimate, high } of fit.figures) {
      expect(low).toBeLessThan(estimate);
      expect(high).toBeGreaterThan(estimate);
    }
  });
});

describe('refusals', () => {
  it.each([
    ['nothing failed', [goodAt(30)], 'weibull', 0.9, 'notEnoughData', 'noFailures'],
    ['no lives', [], 'weibull', 0.9, 'notEnoughData', 'noLives'],
    ['a level of 1', [failedAt(3)], 'weibull', 1, 'outOfRange', 'mustBeProperShare'],
    [
      'too few for lognormal',
      [failedAt(3), failedAt(5)],
      'lognormal',
      0.9,
      'notEnoughData',
      'tooFewForLognormal',
    ],
    ['no spread for lognormal', [failedAt(3, 0, 9)], 'lognormal', 0.9, 'notEnoughData', 'oneAgeFitsAll'],
    ['an impossible life', [failedAt(-3)], 'weibull', 0.9, 'badInput', 'impossibleLife'],
  ] as const)('%s', (_, lives, model, level, kind, because) => {
    expect(lifeFit(lives, model, level)).toMatchObject({ problem: { kind, because } });
  });

  it('a model has one of two names', () => {
    expect(valueOf(fitModel(null))).toBe('weibull');
    expect(valueOf(fitModel(' Lognormal '))).toBe('lognormal');
    expect(fitModel('gamma')).toMatchObject({ problem: { kind: 'badInput', because: 'notAWord' } });
    expect(fitModel(3)).toMatchObject({ problem: { because: 'notAWord' } });
  });
});
