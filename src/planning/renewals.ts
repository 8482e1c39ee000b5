import { HALF_A_MONTH } from './countCells.ts';

/**
 * Failures of one place that starts with a new battery and gets another whenever one fails, at the times
 * 0, step, 2 step ...: mean count and second and third factorial moments, E[N], E[N(N-1)], E[N(N-1)(N-2)].
 */
export type RenewalTable = {
  readonly step: number;
  readonly mean: Float64Array;
  readonly second: Float64Array;
  readonly third: Float64Array;
};

/**
 * Renewal function of a Weibull life and the factorial moments beside it, by the renewal equation on a grid;
 * a failure within a step counts from the step's middle.
 * @param shape  Weibull shape, above 0
 * @param scale  Weibull scale [months]
 * @param steps  how many steps
 * @param step   length of one [months]; half a month keeps the mean within 1 in 10,000 for lives of years
 * @param goneRate  rate at which places are given up [per month]; no failure counts after that
 * @source smithLeadbetter1963 renewal function of the Weibull law (from memory; the equation is the textbook's)
 */
export function renewalTable(
  shape: number,
  scale: number,
  steps: number,
  step = HALF_A_MONTH,
  goneRate = 0,
): RenewalTable {
  const first = firstFailures(shape, scale, steps, step, goneRate);
  const mean = renewalMean(first);
  const growth = mean.subarray(1).map((value, i) => value - mean[i]!);
  const second = pairedWith(growth, mean, 2);
  return { step, mean, second, third: pairedWith(growth, second, 3) };
}

/** A table's value at any time from 0 to its end, linear between its steps. */
export function atTime(values: Float64Array, step: number, time: number): number {
  const position = time / step;
  const index = Math.min(Math.floor(position), values.length - 2);
  return values[index]! + (values[index + 1]! - values[index]!) * (position - index);
}

// Chance that a new battery fails within each step while its place is kept.
function firstFailures(
  shape: number,
  scale: number,
  steps: number,
  step: number,
  goneRate: number,
): Float64Array {
  const chances = new Float64Array(steps);
  let before = 0;
  for (let i = 0; i < steps; i += 1) {
    const hazard = (((i + 1) * step) / scale) ** shape;
    // Where the hazard has run out of numbers nothing is left to fail.
    if (before === Infinity) break;
    chances[i] = Math.exp(-before - goneRate * (i + 0.5) * step) * -Math.expm1(before - hazard);
    before = hazard;
  }
  return chances;
}

// M(t) = sum over first failures of 1 + M(t - u); the first step holds M(t) itself, so it is solved for.
function renewalMean(first: Float64Array): Float64Array {
  const mean = new Float64Array(first.length + 1);
  for (let i = 1; i < mean.length; i += 1) {
    let sum = first[0]! * (1 + mean[i - 1]! / 2);
    for (let c = 1; c < i; c += 1) sum += first[c]! * (1 + (mean[i - c]! + mean[i - c - 1]!) / 2);
    mean[i] = sum / (1 - first[0]! / 2);
  }
  return mean;
}

// order x sum of dM(x) later(t - x): ordered pairs, triples ... of failures up to t.
function pairedWith(growth: Float64Array, later: Float64Array, order: number): Float64Array {
  return later.map((_, i) => {
    let sum = 0;
    for (let c = 0; c < i; c += 1) sum += growth[c]! * (later[i - c]! + later[i - c - 1]!);
    return (order * sum) / 2;
  });
}
