import type { LifePosterior, PosteriorNode } from './lifePosterior.ts';
import { gridNodes } from './lifePosterior.ts';
import { weibullHazardGain } from './weibull.ts';

// The chance changes slowly over the belief, so lives half a standard deviation apart give the same mean.
const STRIDE = 2;

/**
 * Chance that one battery in service fails within the next months, averaged over what is believed about its life.
 * @param age     age in service [months], 0 or more
 * @param months  months from now, 0 or more
 * @param posterior  belief about the life
 * @returns chance, 0 to 1
 * @example failureChance(48, 12, lifePosterior([]).value) // 0.416
 */
export function failureChance(age: number, months: number, posterior: LifePosterior): number {
  return meanChance(gridNodes(posterior.grid, STRIDE), age, months);
}

/** Width of the steps of age between which chances are read off a straight line [months]. */
const AGE_STEP = 0.5;

/**
 * The same for a whole fleet: a function of age that computes at half months of age, once each, and reads off
 * between them, so that 200,000 units cost no more than their distinct ages. Within 0.0002 of `failureChance`
 * from an age of one month on.
 */
export function failureChanceByAge(months: number, posterior: LifePosterior): (age: number) => number {
  const nodes = gridNodes(posterior.grid, STRIDE);
  const known: number[] = [];
  const at = (step: number): number => (known[step] ??= meanChance(nodes, step * AGE_STEP, months));
  return (age) => {
    const step = Math.floor(age / AGE_STEP);
    const part = age / AGE_STEP - step;
    return part === 0 ? at(step) : at(step) * (1 - part) + at(step + 1) * part;
  };
}

function meanChance(nodes: readonly PosteriorNode[], age: number, months: number): number {
  return nodes.reduce(
    (sum, { mu, sigma, weight }) =>
      sum - weight * Math.expm1(-weibullHazardGain(age, months, 1 / sigma, Math.exp(mu))),
    0,
  );
}
