/** From values to places on a picture. */
export type Scale = (value: number) => number;

/** A straight scale: `from` lies at `start`, `to` at `end`. */
export function linearScale(
  [from, to]: readonly [number, number],
  [start, end]: readonly [number, number],
): Scale {
  const span = to - from || 1;
  return (value) => start + ((value - from) / span) * (end - start);
}

const NICE_STEPS = [1, 2, 5, 10];

/**
 * Round whole marks from 0 (or below, where there are values below) to the first one that is not under the largest value.
 * @param low    smallest value
 * @param high   largest value
 * @param about  how many steps are wished
 */
export function niceTicks(low: number, high: number, about = 4): readonly number[] {
  const span = Math.max(high, 0) - Math.min(low, 0) || 1;
  const raw = Math.max(1, span / about);
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * NICE_STEPS.find((nice) => nice * power >= raw * (1 - 1e-9))!;
  const first = Math.floor(Math.min(low, 0) / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(Math.max(high, 0) / step - 1e-9));
  return Array.from({ length: last - first + 1 }, (_, index) =>
    Number(((first + index) * step).toPrecision(12)),
  );
}

/** Which of so many labels are written, so that at most `most` stand beside each other: every first, second, … */
export function everyNth(count: number, most: number): number {
  return Math.max(1, Math.ceil(count / most));
}

/** The path of a line through points. */
export function linePath(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${place(x)} ${place(y)}`).join('');
}

/** The path of the area between a lower and an upper line. */
export function bandPath(
  low: readonly (readonly [number, number])[],
  high: readonly (readonly [number, number])[],
): string {
  return low.length === 0 ? '' : `${linePath(high)}${linePath([...low].reverse()).replace('M', 'L')}Z`;
}

const place = (value: number): string => String(Number(value.toFixed(1)));
