import type { IndexedBin } from './placeTable.ts';
import type { Pmf } from './pmf.ts';
import { certain, convolve, convolutionPower, inLots } from './pmf.ts';
import { binomialPmf } from './poissonBinomial.ts';

/**
 * Exact distribution of a group's count in one window for one life, in lots: the counts of its places added.
 * @returns undefined where a place may need more than three batteries, which three moments can't tell apart
 */
export function exactCounts(
  bins: readonly IndexedBin[],
  moments: Float64Array,
  window: number,
  windows: number,
): Pmf | undefined {
  let sum = certain(0);
  for (const { index, count, lots } of bins) {
    const at = 3 * (index * windows + window);
    const [one, two, three] = [moments[at]!, moments[at + 1]!, moments[at + 2]!];
    const bin = two === 0 ? binomialPmf(count, one) : severalFailures(one, two, three, count);
    if (bin === undefined) return undefined;
    sum = convolve(sum, inLots(bin, lots));
  }
  return sum;
}

// Three factorial moments fix the chances of 0, 1, 2 and 3.
function severalFailures(one: number, two: number, three: number, count: number): Pmf | undefined {
  const mass = Float64Array.of(
    1 - one + two / 2 - three / 6,
    one - two + three / 2,
    two / 2 - three / 2,
    three / 6,
  );
  if (mass.some((chance) => chance < -1e-9)) return undefined;
  return convolutionPower({ first: 0, mass: mass.map((chance) => Math.max(0, chance)) }, count);
}
