import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A stream of numbers between 0 and 1, above 0, the same for one seed. */
export function uniformNumbers(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  return () => 1 - uniformFloat64(generator);
}

/** A Weibull life that has already reached an age. */
export function weibullLife(uniform: () => number, shape: number, scale: number, age = 0): number {
  return scale * ((age / scale) ** shape - Math.log(uniform())) ** (1 / shape);
}
