import type { Outcome } from './outcome.ts';
import { answer, problem } from './outcome.ts';

const MOST_STEPS = 200;

/**
 * The root of an increasing or decreasing function between two ends that bracket it, by bisection with
 * regula-falsi steps (Illinois form), to a width of `tolerance`.
 * @problem noConvergence  when the ends don't bracket a root or 200 steps aren't enough
 */
export function rootBetween(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
  argument: string,
): Outcome<number> {
  let [a, b, fa, fb] = [low, high, f(low), f(high)];
  if (fa === 0) return answer(a);
  if (fb === 0) return answer(b);
  if (!(fa * fb < 0)) return problem('noConvergence', 'noConvergence', argument);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const guess = step % 3 === 2 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    const value = f(guess);
    if (value === 0 || Math.abs(b - a) < tolerance) return answer(guess);
    if (value * fb < 0) [a, fa] = [b, fb];
    else fa /= 2;
    [b, fb] = [guess, value];
  }
  return problem('noConvergence', 'noConvergence', argument);
}
