/** Integral of a density from the left end of an even grid, at any position on it [grid steps]. */
export type Cumulative = { readonly density: Float64Array; readonly sums: Float64Array };

/** The running integral of a density at equal steps, exact for cubics. */
export function cumulativeOf(density: Float64Array): Cumulative {
  const sums = new Float64Array(density.length);
  const at = (i: number): number => density[i] ?? 0;
  for (let i = 0; i + 1 < density.length; i += 1) {
    sums[i + 1] = sums[i]! + (13 * (at(i) + at(i + 1)) - at(i - 1) - at(i + 2)) / 24;
  }
  return { density, sums };
}

/** The integral up to a position: a cubic between two steps that has the density as its slope. */
export function cumulativeAt({ density, sums }: Cumulative, position: number): number {
  const last = density.length - 1;
  if (!(position > 0)) return 0;
  if (position >= last) return sums[last]!;
  const i = Math.floor(position);
  const t = position - i;
  const rise = sums[i + 1]! - sums[i]!;
  const [start, end] = [density[i]!, density[i + 1]!];
  return sums[i]! + t * (start + t * (3 * rise - 2 * start - end + t * (start + end - 2 * rise)));
}
