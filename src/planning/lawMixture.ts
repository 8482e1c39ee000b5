import type { SkewedLaw } from './countLaws.ts';

/** A law of counts and how much it is believed. */
export type WeightedLaw = SkewedLaw & { readonly weight: number };

/** Laws in the order of their means, with what tells which of them are neither 0 nor 1 at a count. */
export type LawMixture = {
  readonly laws: readonly WeightedLaw[];
  /** Below this count a law and all after it are 0. */
  readonly lowest: Float64Array;
  /** Above this count a law and all before it are 1. */
  readonly highest: Float64Array;
  /** Weight of all laws before one. */
  readonly before: Float64Array;
};

/** A mixture of laws; they may come in any order, but near the order of their means it is asked fastest. */
export function lawMixture(laws: readonly WeightedLaw[]): LawMixture {
  const lowest = Float64Array.from(laws, ({ low }) => low);
  const highest = Float64Array.from(laws, ({ high }) => high);
  const before = new Float64Array(laws.length + 1);
  laws.forEach(({ weight }, i) => {
    highest[i] = Math.max(highest[i]!, highest[i - 1] ?? -Infinity);
    before[i + 1] = before[i]! + weight;
  });
  for (let i = laws.length - 2; i >= 0; i -= 1) lowest[i] = Math.min(lowest[i]!, lowest[i + 1]!);
  return { laws, lowest, highest, before };
}

/** Sum of the weighted chances of at most `count`. */
export function mixedChance({ laws, lowest, highest, before }: LawMixture, count: number): number {
  const begin = firstReaching(highest, count);
  let sum = before[begin]!;
  for (let i = begin; i < laws.length && lowest[i]! <= count; i += 1) {
    const { cdf, low, high, weight } = laws[i]!;
    if (count > high) sum += weight;
    else if (count >= low) sum += weight * cdf(count);
  }
  return sum;
}

/** The first place at which rising numbers reach a bound; their number where none does. */
function firstReaching(rising: Float64Array, bound: number): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle]! < bound) low = middle + 1;
    else high = middle;
  }
  return low;
}
