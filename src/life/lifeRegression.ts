import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { LifeModel } from './lifeEstimate.ts';
import { estimateOfSample, lawOf } from './lifeEstimate.ts';
import { zSums } from './lifeLikelihood.ts';
import type { LifeRecord } from './lifeRecord.ts';
import type { LifeSample } from './lifeSample.ts';
import { lifeSample } from './lifeSample.ts';
import type { ChiSquareTest } from './likelihoodRatio.ts';
import { likelihoodRatio } from './likelihoodRatio.ts';
import type { Peak, Surface } from './newtonAscent.ts';
import { newtonAscent } from './newtonAscent.ts';
import type { StandardLife } from './standardLife.ts';

/** A life with the covariates that may lengthen or shorten it (a group is one covariate of 0 or 1 for each but the first). */
export type CovariateLife = { readonly record: LifeRecord; readonly covariates: readonly number[] };

/** An accelerated-life regression: log age = intercept + coefficients x covariates + sigma x error. */
export type LifeRegression = {
  readonly intercept: number;
  readonly interceptError: number;
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  readonly sigma: number;
  readonly errorLogSigma: number;
  readonly logLikelihood: number;
  /** Against one life for all, whatever the covariates. */
  readonly againstNone: ChiSquareTest;
  readonly logLikelihoodNone: number;
};

/** Lives that share their covariates. */
type Cell = { readonly covariates: readonly number[]; readonly sample: LifeSample };
type Scaling = { readonly mean: number; readonly spread: number };

const LONGEST_STEP = 3;
const LONGEST_LOG_SIGMA = 0.7;
// In units of a covariate's spread: effects, and errors of them, beyond any that records can show.
const LARGEST_COEFFICIENT = 40;
const LARGEST_ERROR = 50;

/**
 * How covariates lengthen or shorten lives: a Weibull or lognormal life whose log scale is linear in the covariates,
 * with one sigma for all, by maximum likelihood for all kinds of record with late entry.
 * @param lives  lives, each with its covariates, as many for each
 * @param model  `weibull` (default) or `lognormal`
 * @returns coefficients in the covariates' own units, standard errors, and the test against no effect at all
 * @problem badInput    when a record can't be a life, or the rows differ in their number of covariates
 * @problem notEnoughData  when all lives together give no estimate, or a covariate is constant or its effect without
 * bounds (a group in which nothing failed)
 * @source meekerEscobar1998 chapter 17 (location-scale regression; from memory)
 * @example lifeRegression([20, 30, 40, 60].map((age, i) => ({ record: { entry: 0, from: age, to: age, kind: 'exact', count: 1 }, covariates: [i >> 1] }))).value.coefficients[0] // 0.693
 */
export function lifeRegression(
  lives: readonly CovariateLife[],
  model: Exclude<LifeModel, 'exponential'> = 'weibull',
): Outcome<LifeRegression> {
  const width = lives[0]?.covariates.length ?? 0;
  const odd = lives.findIndex(
    ({ covariates }) => covariates.length !== width || !covariates.every(Number.isFinite),
  );
  if (odd >= 0) return problem('badInput', 'covariatesDiffer', 'life', odd + 1);
  return andThen(lifeSample(lives.map(({ record }) => record)), (all) => {
    const scalings = Array.from({ length: width }, (_, index) => scalingOf(lives, index));
    if (scalings.some(({ spread }) => !(spread > 0)))
      return problem('notEnoughData', 'covariateConstant', 'life');
    return andThen(estimateOfSample(all, model), (pooled) => {
      const start = [pooled.mu, ...scalings.map(() => 0), Math.log(pooled.sigma)];
      const peak = newtonAscent(regressionSurface(cellsOf(lives, scalings), lawOf(model)), start, {
        longestStep: [...start.slice(1).map(() => LONGEST_STEP), LONGEST_LOG_SIGMA],
        mayEnter: (point) => point.slice(1).every((value) => Math.abs(value) < LARGEST_COEFFICIENT),
      });
      if (peak === undefined || isUnbounded(peak)) return problem('notEnoughData', 'effectUnbounded', 'life');
      return answer(inOwnUnits(peak, scalings, pooled.logLikelihood));
    });
  });
}

/** Whether the summit is only where the slope became too gentle to go on. */
const isUnbounded = ({ spread }: Peak): boolean =>
  spread.slice(1, -1).some((row, index) => row[index + 1]! > LARGEST_ERROR * LARGEST_ERROR);

function scalingOf(lives: readonly CovariateLife[], index: number): Scaling {
  const values = lives.map(({ covariates }) => covariates[index]!);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  return { mean, spread: Math.sqrt(square) };
}

/** Lives of equal covariates together; covariates measured from their mean in units of their spread, after a 1. */
function cellsOf(lives: readonly CovariateLife[], scalings: readonly Scaling[]): Cell[] {
  const byCovariates = new Map<string, CovariateLife[]>();
  for (const life of lives) {
    const key = life.covariates.join();
    const members = byCovariates.get(key);
    if (members === undefined) byCovariates.set(key, [life]);
    else members.push(life);
  }
  return [...byCovariates.values()].flatMap((members) => {
    const sample = lifeSample(members.map(({ record }) => record));
    const scaled = scalings.map(
      ({ mean, spread }, index) => (members[0]!.covariates[index]! - mean) / spread,
    );
    return sample.ok ? [{ covariates: [1, ...scaled], sample: sample.value }] : [];
  });
}

/** Log-likelihood in (intercept, coefficients, log sigma) with both derivatives, cell by cell. */
function regressionSurface(cells: readonly Cell[], law: StandardLife): (point: readonly number[]) => Surface {
  return (point) => {
    const last = point.length - 1;
    const sigma = Math.exp(point[last]!);
    const gradient = point.map(() => 0);
    const hessian = point.map(() => point.map(() => 0));
    let value = 0;
    for (const { covariates, sample } of cells) {
      const sums = zSums(sample, law, dot(covariates, point), sigma);
      value += sums.value;
      covariates.forEach((x, row) => {
        gradient[row]! -= (sums.slope * x) / sigma;
        covariates.forEach((y, column) => (hessian[row]![column]! += (sums.curve * x * y) / (sigma * sigma)));
        hessian[row]![last]! += ((sums.slope + sums.curveZ) * x) / sigma;
        hessian[last]![row]! = hessian[row]![last]!;
      });
      gradient[last]! -= sums.slopeZ + sums.exact;
      hessian[last]![last]! += sums.slopeZ + sums.curveZZ;
    }
    return { value, gradient, hessian };
  };
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, index) => sum + value * b[index]!, 0);

function inOwnUnits(
  { point, value, spread }: Peak,
  scalings: readonly Scaling[],
  none: number,
): LifeRegression {
  // The intercept at covariates of 0 is this combination of the scaled parameters.
  const toIntercept = [1, ...scalings.map((each) => -each.mean / each.spread)];
  const coefficients = scalings.map((each, index) => point[index + 1]! / each.spread);
  const last = point.length - 1;
  const variance = dot(
    toIntercept,
    toIntercept.map((_, row) => dot(toIntercept, spread[row]!)),
  );
  return {
    intercept: dot(toIntercept, point),
    interceptError: Math.sqrt(variance),
    coefficients,
    standardErrors: scalings.map((each, index) => Math.sqrt(spread[index + 1]![index + 1]!) / each.spread),
    sigma: Math.exp(point[last]!),
    errorLogSigma: Math.sqrt(spread[last]![last]!),
    logLikelihood: value,
    logLikelihoodNone: none,
    againstNone: likelihoodRatio(none, value, scalings.length),
  };
}
