/** Distribution of a whole number on a stretch: `mass[i]` is the chance of the count `first + i`. */
export type Pmf = { readonly first: number; readonly mass: Float64Array };

/** One unit or one certain count. */
export function certain(count: number): Pmf {
  return { first: count, mass: Float64Array.of(1) };
}

// What is left out on both sides together stays far below any digit that is shown.
const NEGLIGIBLE = 1e-20;

/** The same distribution without the ends whose mass is below 1e-20. */
export function trimmed(pmf: Pmf): Pmf {
  let low = 0;
  let high = pmf.mass.length;
  while (low < high - 1 && pmf.mass[low]! < NEGLIGIBLE) low += 1;
  while (high > low + 1 && pmf.mass[high - 1]! < NEGLIGIBLE) high -= 1;
  return low === 0 && high === pmf.mass.length
    ? pmf
    : { first: pmf.first + low, mass: pmf.mass.subarray(low, high) };
}

/** Distribution of the sum of two independent counts. */
export function convolve(a: Pmf, b: Pmf): Pmf {
  const [long, short] = a.mass.length >= b.mass.length ? [a.mass, b.mass] : [b.mass, a.mass];
  const mass = new Float64Array(long.length + short.length - 1);
  for (let j = 0; j < short.length; j += 1) {
    const factor = short[j]!;
    for (let i = 0; i < long.length; i += 1) mass[i + j]! += factor * long[i]!;
  }
  return trimmed({ first: a.first + b.first, mass });
}

/** Distribution of the sum of `times` independent counts of one distribution, by repeated squaring. */
export function convolutionPower(pmf: Pmf, times: number): Pmf {
  let result = certain(0);
  let square = pmf;
  for (let left = times; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) result = convolve(result, square);
    if (left > 1) square = convolve(square, square);
  }
  return result;
}

/** Distribution of a count that comes in lots of one size. */
export function inLots({ first, mass }: Pmf, size: number): Pmf {
  if (size === 1) return { first, mass };
  const spaced = new Float64Array((mass.length - 1) * size + 1);
  mass.forEach((chance, i) => (spaced[i * size] = chance));
  return { first: first * size, mass: spaced };
}

/**
 * Distribution from the ratios of neighbouring chances, P(k + 1) / P(k), which must fall; built outwards
 * from its mode so that neither end under- or overflows.
 * @param mode   a count near the largest chance
 * @param ratio  P(k + 1) / P(k) for a count k
 * @param least  smallest and largest count that can happen
 */
export function pmfFromRatios(mode: number, ratio: (k: number) => number, least: number, most: number): Pmf {
  const above: number[] = [];
  for (let k = mode, mass = 1; k < most && mass > NEGLIGIBLE; k += 1) above.push((mass *= ratio(k)));
  const below: number[] = [];
  for (let k = mode, mass = 1; k > least && mass > NEGLIGIBLE; k -= 1) below.push((mass /= ratio(k - 1)));
  const mass = Float64Array.from([...below.reverse(), 1, ...above]);
  const total = mass.reduce((sum, each) => sum + each, 0);
  return { first: mode - below.length, mass: mass.map((each) => each / total) };
}

/** Mean of a count. */
export function pmfMean(pmf: Pmf): number {
  return pmf.mass.reduce((sum, mass, i) => sum + mass * (pmf.first + i), 0);
}

/** Variance of a count. */
export function pmfVariance(pmf: Pmf): number {
  const mean = pmfMean(pmf);
  return pmf.mass.reduce((sum, mass, i) => sum + mass * (pmf.first + i - mean) ** 2, 0);
}
