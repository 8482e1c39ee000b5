import chisquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import gammainc from '@stdlib/math-base-special-gammainc';
import gammaln from '@stdlib/math-base-special-gammaln';
import {
  logOneMinusExp,
  normalLogSurvival,
  normalQuantile,
  smallestExtremeValue,
} from '../../../src/index.ts';
import type { ReferenceRow } from './referenceRow.ts';
import values from './specialFunctions.json' with { type: 'json' };

/** What the fits stand on, each in the form in which they use it. */
const ours: Readonly<Record<string, (x: number, y: number) => number>> = {
  log_gamma: gammaln,
  norm_cdf: (z) => Math.exp(normalLogSurvival(-z)),
  log_norm_sf: normalLogSurvival,
  norm_quantile: normalQuantile,
  sev_quantile: smallestExtremeValue.quantile,
  log1mexp: logOneMinusExp,
  chi2_quantile: chisquareQuantile,
  reg_lower_gamma: (shape, x) => gammainc(x, shape),
  poisson_cdf: (count, mean) => gammainc(mean, count + 1, true, true),
};

/** Special functions against 40-digit values. */
export const specialFunctionRows: readonly ReferenceRow[] = values.map(([name, given, expected, within]) => {
  const [x, y] = given as [number, number];
  return {
    ...{ id: 'D-NUM-01', title: 'Special functions', source: 'computed here' },
    ...{ quantity: `${String(name)}(${[x, y].filter((each) => each !== undefined).join(', ')})` },
    ...{ expected: expected as number, within: within as number },
    ours: () => ours[name as string]!(x, y),
  };
});
