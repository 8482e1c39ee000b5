import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lifeSample, smallestExtremeValue, standardNormal } from '../../src/index.ts';
import { likelihoodSlopes, spanLogChance } from '../../src/life/lifeLikelihood.ts';
import { valueOf } from '../published/check.ts';
import { anyFleet, SEED } from './lives.ts';

const STEP = 1e-4;

describe.each([
  ['weibull', smallestExtremeValue],
  ['lognormal', standardNormal],
])('derivatives of the %s likelihood', (_, law) => {
  it('agree with differences of the value and of the gradient', () => {
    fc.assert(
      fc.property(
        anyFleet,
        fc.double({ min: 3.2, max: 4.6, noNaN: true }),
        fc.double({ min: -1.5, max: 0.4, noNaN: true }),
        (fleet, mu, logSigma) => {
          const sample = valueOf(lifeSample(fleet));
          const at = (m: number, s: number) => likelihoodSlopes(sample, law, m, s);
          const { gradient, hessian, value } = at(mu, logSigma);
          const [right, left] = [at(mu + STEP, logSigma), at(mu - STEP, logSigma)];
          const [up, down] = [at(mu, logSigma + STEP), at(mu, logSigma - STEP)];
          const near = (ours: number, difference: number) =>
            expect(Math.abs(ours - difference) / (1 + Math.abs(ours) + 1e-3 * Math.abs(value))).toBeLessThan(
              3e-5,
            );
          near(gradient[0], (right.value - left.value) / (2 * STEP));
          near(gradient[1], (up.value - down.value) / (2 * STEP));
          near(hessian[0], (right.gradient[0] - left.gradient[0]) / (2 * STEP));
          near(hessian[1], (up.gradient[0] - down.gradient[0]) / (2 * STEP));
          near(hessian[1], (right.gradient[1] - left.gradient[1]) / (2 * STEP));
          near(hessian[2], (up.gradient[1] - down.gradient[1]) / (2 * STEP));
        },
      ),
      SEED,
    );
  });
});

describe('chance of a span', () => {
  it('from age 0 is the share failed; far out it is still a log', () => {
    expect(spanLogChance(standardNormal, Number.NEGATIVE_INFINITY, 0)).toBeCloseTo(Math.log(0.5), 14);
    expect(spanLogChance(standardNormal, -1, 1)).toBeCloseTo(Math.log(0.6826894921370859), 13);
    // log(Phi(-40) - Phi(-41)): the second is nothing beside the first, -804.608442013754 by a 40-digit program.
    expect(spanLogChance(standardNormal, 40, 41)).toBeCloseTo(-804.608442013754, 9);
  });
});
