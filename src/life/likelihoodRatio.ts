import gammainc from '@stdlib/math-base-special-gammainc';

/** A test's chi-square value, its degrees of freedom and the chance of so large a value if nothing differs. */
export type ChiSquareTest = {
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  readonly chance: number;
};

/** A chi-square value with the chance of one so large. */
export function chiSquareTest(chiSquare: number, degreesOfFreedom: number): ChiSquareTest {
  const value = Math.max(0, chiSquare);
  return {
    chiSquare: value,
    degreesOfFreedom,
    chance: gammainc(value / 2, degreesOfFreedom / 2, true, true),
  };
}

/** Likelihood-ratio test of a model against one with more parameters that contains it. */
export function likelihoodRatio(
  logLikelihood: number,
  richer: number,
  moreParameters: number,
): ChiSquareTest {
  return chiSquareTest(2 * (richer - logLikelihood), moreParameters);
}
