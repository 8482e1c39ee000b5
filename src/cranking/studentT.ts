import { rootBetween } from '../basics/solve.ts';

/**
 * Chance that Student's t lies under a value, by the finite sums for whole degrees of freedom. Right to about 1e-15 as
 * an absolute figure; it is not meant for chances smaller than that.
 * @param t value, any number, infinite ones too
 * @param degrees degrees of freedom, whole, 1 or more
 * @returns chance, 0 to 1
 * @source abramowitzStegun1964 26.7.3 and 26.7.4 (whole degrees of freedom)
 * @example studentTChance(-2.353363, 3) // 0.0500
 */
export function studentTChance(t: number, degrees: number): number {
  const angle = Math.atan(t / Math.sqrt(degrees));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const isOdd = degrees % 2 === 1;
  const sum = sine * cosineSum(cosine, degrees, isOdd ? 1 : 0);
  return (1 + (isOdd ? (2 / Math.PI) * (angle + sum) : sum)) / 2;
}

// Powers of the cosine from `first` to degrees - 2, each term (power - 1) / power times the one before it.
function cosineSum(cosine: number, degrees: number, first: 0 | 1): number {
  let [term, sum] = [first === 0 ? 1 : cosine, 0];
  for (let power = first; power <= degrees - 2; power += 2) {
    sum += term;
    term *= (cosine * cosine * (power + 1)) / (power + 2);
  }
  return sum;
}

/** Beyond any t that 95 % asks for: with one degree of freedom it is 6.31. */
const MOST_T = 7;

const limits = new Map<number, number>();

/**
 * The t that 95 of 100 values lie under: half the width of a two-sided 90 % band, in standard errors.
 * @param degrees degrees of freedom, whole, 1 or more
 * @returns t, 1.645 to 6.314
 * @source abramowitzStegun1964 26.7.3 and 26.7.4, solved for t
 * @example studentTLimit(10) // 1.812
 */
export function studentTLimit(degrees: number): number {
  const known = limits.get(degrees);
  if (known !== undefined) return known;
  const root = rootBetween((t) => studentTChance(t, degrees) - 0.95, 0, MOST_T, 1e-12, 't');
  if (!root.ok) throw new Error(`no t for ${degrees} degrees of freedom`);
  limits.set(degrees, root.value);
  return root.value;
}
