import { HALF_A_MONTH } from './countCells.ts';

/**
 * Renewals of one place that starts with a new battery and gets another whenever one fails or reaches the age of
 * planned renewal, at the times 0, step, 2 step ...: mean count and second and third factorial moments, E[N],
 * E[N(N-1)], E[N(N-1)(N-2)].
 */
export type RenewalTable = {
  readonly step: number;
  readonly mean: Float64Array;
  readonly second: Float64Array;
  readonly third: Float64Array;
  /** Mean count of failures alone; `mean` where nothing is renewed by plan. */
  readonly failures: Float64Array;
};

/** How places are kept: given up at a rate [per month], renewed by plan at an age [months]. */
export type Upkeep = { readonly goneRate?: number; readonly plannedAge?: number };

/**
 * Renewal function of a Weibull life and the factorial moments beside it, by the renewal equation on a grid;
 * a failure within a step counts from the step's middle, a planned renewal falls on the nearest step.
 * @param shape  Weibull shape, above 0
 * @param scale  Weibull scale [months]
 * @param steps  how many steps
 * @param step   length of one [months]; half a month keeps the mean within 1 in 10,000 for lives of years
 * @param upkeep  rate at which places are given up (no failure counts after that), age of planned renewal
 * @source smithLeadbetter1963 renewal function of the Weibull law (from memory; the equation is the textbook's)
 */
export function renewalTable(
  shape: number,
  scale: number,
  steps: number,
  step = HALF_A_MONTH,
  upkeep: Upkeep = {},
): RenewalTable {
  const first = firstRenewal(shape, scale, steps, step, upkeep);
  const mean = renewalMean(first, steps, 1);
  const second = pairedWith(mean, first, mean, 2);
  const third = pairedWith(mean, first, second, 3);
  const failures = first.plannedChance === 0 ? mean : renewalMean(first, steps, 0);
  return { step, mean, second, third, failures };
}

/** A table's value at any time from 0 to its end, linear between its steps. */
export function atTime(values: Float64Array, step: number, time: number): number {
  const position = time / step;
  const index = Math.min(Math.floor(position), values.length - 2);
  return values[index]! + (values[index + 1]! - values[index]!) * (position - index);
}

/** Chance that a new battery fails within each step, and that it lives to its planned renewal. */
type FirstRenewal = {
  readonly failing: Float64Array;
  readonly plannedStep: number;
  readonly plannedChance: number;
};

function firstRenewal(
  shape: number,
  scale: number,
  steps: number,
  step: number,
  upkeep: Upkeep,
): FirstRenewal {
  const { goneRate = 0, plannedAge = Infinity } = upkeep;
  const plannedStep = Math.max(1, Math.round(plannedAge / step));
  const failing = new Float64Array(Math.min(steps, plannedStep));
  let before = 0;
  for (let i = 0; i < failing.length; i += 1) {
    const hazard = (((i + 1) * step) / scale) ** shape;
    // Where the hazard has run out of numbers nothing is left to fail.
    if (before === Infinity) break;
    failing[i] = Math.exp(-before - goneRate * (i + 0.5) * step) * -Math.expm1(before - hazard);
    before = hazard;
  }
  const plannedChance = plannedStep > steps ? 0 : Math.exp(-before - goneRate * plannedStep * step);
  return { failing, plannedStep, plannedChance };
}

// M(t) = sum over first renewals of 1 + M(t - u); the first step holds M(t) itself, so it is solved for.
function renewalMean({ failing, plannedStep, plannedChance }: FirstRenewal, steps: number, planned: 0 | 1) {
  const mean = new Float64Array(steps + 1);
  for (let i = 1; i <= steps; i += 1) {
    let sum = failing[0]! * (1 + mean[i - 1]! / 2);
    const known = Math.min(i, failing.length);
    for (let c = 1; c < known; c += 1) sum += failing[c]! * (1 + (mean[i - c]! + mean[i - c - 1]!) / 2);
    if (i >= plannedStep) sum += plannedChance * (planned + mean[i - plannedStep]!);
    mean[i] = sum / (1 - failing[0]! / 2);
  }
  return mean;
}

// order x sum of dM(x) later(t - x): ordered pairs, triples ... of renewals up to t. Places on which every
// renewal so far was planned renew on the step itself, all others count from a step's middle.
function pairedWith(
  mean: Float64Array,
  first: FirstRenewal,
  later: Float64Array,
  order: number,
): Float64Array {
  const growth = mean.subarray(1).map((value, i) => value - mean[i]!);
  const planned: [step: number, chance: number][] = [];
  let chance = first.plannedChance;
  for (let at = first.plannedStep; chance > 0 && at < mean.length; at += first.plannedStep) {
    planned.push([at, chance]);
    growth[at - 1]! -= chance;
    chance *= first.plannedChance;
  }
  return later.map((_, i) => {
    let sum = 0;
    for (let c = 0; c < i; c += 1) sum += (growth[c]! * (later[i - c]! + later[i - c - 1]!)) / 2;
    for (const [at, each] of planned) if (at <= i) sum += each * later[i - at]!;
    return order * sum;
  });
}
