import { logLikelihood } from './lifeLikelihood.ts';
import type { LifeSample } from './lifeSample.ts';
import type { StandardLife } from './standardLife.ts';

/** Where an ascent may begin: mu and log sigma. */
export type LifeStart = readonly [mu: number, logSigma: number];

// Shapes 0.1 to 250, each half as large again as the last.
const SIGMAS = Array.from({ length: 20 }, (_, index) => 10 * 1.5 ** -index);
const MIDDLING_SIGMA = 0.5;
const ENOUGH_AGES = 1_000;

/**
 * Good places to begin an ascent: every local summit of the likelihood among a range of sigmas, each with the
 * mu that suits it.
 */
export function lifeStarts(sample: LifeSample, law: StandardLife): LifeStart[] {
  const heights = SIGMAS.map((sigma) => logLikelihood(sample, law, muFor(sample, sigma), sigma));
  const summits = SIGMAS.filter((_, index) => isSummit(heights, index));
  return summits.length === 0 ? [middlingStart(sample)] : summits.map((sigma) => startAt(sample, sigma));
}

/** A start that needs no search: a shape of 2. */
export function middlingStart(sample: LifeSample): LifeStart {
  return startAt(sample, MIDDLING_SIGMA);
}

/**
 * Every so many ages of a long sample that was not counted, or undefined where it is short: its fit costs
 * little and is a start close to the whole one's.
 */
export function thinned(sample: LifeSample): LifeSample | undefined {
  const every = Math.ceil(sample.logAge.length / ENOUGH_AGES);
  if (every <= 4) return undefined;
  const kept = Math.floor(sample.logAge.length / every);
  const thin = (column: Float64Array) =>
    Float64Array.from({ length: kept }, (_, row) => column[row * every]!);
  const failed = thin(sample.failed);
  const exact = failed.reduce((sum, count) => sum + count, 0);
  const failures = exact + sample.spans.count.reduce((sum, count) => sum + count, 0);
  const columns = {
    age: thin(sample.age),
    logAge: thin(sample.logAge),
    failed,
    outlived: thin(sample.outlived),
  };
  return { ...sample, ...columns, failures };
}

const startAt = (sample: LifeSample, sigma: number): LifeStart => [muFor(sample, sigma), Math.log(sigma)];

/**
 * The mu of greatest Weibull likelihood for a known sigma, in closed form: exact where no failure lies in a
 * span; a span counts at its middle. Powers are relative to the oldest age, so that none overflows.
 */
export function muFor({ logAge, failed, outlived, spans, failures }: LifeSample, sigma: number): number {
  const middles = spans.logTo.map((to, row) => middle(spans.logFrom[row]!, to));
  const oldest = largest(middles, largest(logAge, Number.NEGATIVE_INFINITY));
  let hazard = 0;
  for (let row = 0; row < logAge.length; row += 1) {
    hazard += (failed[row]! + outlived[row]!) * Math.exp((logAge[row]! - oldest) / sigma);
  }
  middles.forEach((age, row) => (hazard += spans.count[row]! * Math.exp((age - oldest) / sigma)));
  return oldest + sigma * Math.log(Math.max(hazard, Number.MIN_VALUE) / failures);
}

const middle = (logFrom: number, logTo: number): number =>
  logFrom === Number.NEGATIVE_INFINITY ? logTo - Math.LN2 : (logFrom + logTo) / 2;

function largest(values: Float64Array, start: number): number {
  let most = start;
  for (let row = 0; row < values.length; row += 1) if (values[row]! > most) most = values[row]!;
  return most;
}

function isSummit(heights: readonly number[], index: number): boolean {
  const height = heights[index]!;
  const below = heights[index - 1] ?? Number.NEGATIVE_INFINITY;
  const above = heights[index + 1] ?? Number.NEGATIVE_INFINITY;
  return Number.isFinite(height) && !(below > height) && !(above >= height);
}
