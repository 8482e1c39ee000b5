import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_LIFE_PRIOR, logPriorDensity, priorFromRules } from '../../src/life/lifePrior.ts';
import { weibullQuantile } from '../../src/life/weibull.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';

describe('priorFromRules', () => {
  it('lays its middle through both rules', () => {
    const share = fc.double({ min: 0.01, max: 0.45, noNaN: true });
    const month = fc.double({ min: 1, max: 50, noNaN: true });
    fc.assert(
      fc.property(share, month, fc.double({ min: 1.1, max: 5, noNaN: true }), (first, early, factor) => {
        const { medianMonths, sigma } = valueOf(priorFromRules(first, early, 0.5, early * factor));
        expect(medianMonths / (early * factor)).toBeCloseTo(1, 9);
        const scale = medianMonths / Math.log(2) ** sigma;
        expect(weibullQuantile(first, 1 / sigma, scale) / early).toBeCloseTo(1, 9);
      }),
      { seed: 14, numRuns: 100 },
    );
  });

  it('keeps the wide spreads unless its owner is sure', () => {
    expect(valueOf(priorFromRules(0.1, 25, 0.5, 54))).toMatchObject({
      spreadLogMedian: 1,
      spreadLogSigma: 0.5,
    });
    expect(valueOf(priorFromRules(0.1, 25, 0.5, 54, true))).toMatchObject({
      spreadLogMedian: 0.3,
      spreadLogSigma: 0.2,
    });
  });
});

describe('priorFromRules refuses', () => {
  it('rules that contradict each other, and shares that are none', () => {
    expect(refusal(priorFromRules(0.5, 30, 0.1, 54))[0]).toBe('badInput');
    expect(refusal(priorFromRules(0, 30, 0.5, 54))[0]).toBe('outOfRange');
  });
});

describe('logPriorDensity', () => {
  it('is two normal laws at their middle', () => {
    // median 54 at mu = log 54 - sigma log log 2; 1 / (2 pi x 1 x 0.5)
    const mu = Math.log(54) - 0.4 * Math.log(Math.log(2));
    expect(logPriorDensity(DEFAULT_LIFE_PRIOR, mu, Math.log(0.4))).toBeCloseTo(-Math.log(Math.PI), 12);
  });
});
