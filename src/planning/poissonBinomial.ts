import type { Pmf } from './pmf.ts';
import { certain, convolve, pmfFromRatios } from './pmf.ts';

/** Some units that each fail with one chance, independently. */
export type ChanceGroup = { readonly chance: number; readonly count: number };

/** Distribution of the number that fail of `count` units with one chance each. */
export function binomialPmf(count: number, chance: number): Pmf {
  if (chance <= 0 || count === 0) return certain(0);
  if (chance >= 1) return certain(count);
  const odds = chance / (1 - chance);
  const mode = Math.min(count, Math.floor((count + 1) * chance));
  return pmfFromRatios(mode, (k) => ((count - k) / (k + 1)) * odds, 0, count);
}

/**
 * Distribution of the number of failures among independent units of unequal chances, exact.
 * @param groups  units of equal chance, each with its chance 0 to 1 and its whole count
 * @returns the chance of each count; counts whose chance is below 1e-20 are left out at both ends
 * @source wang1993 the number of successes in independent trials of unequal chance
 */
export function poissonBinomial(groups: readonly ChanceGroup[]): Pmf {
  return groups.reduce<Pmf>(
    (sum, { chance, count }) => convolve(sum, binomialPmf(count, chance)),
    certain(0),
  );
}
