import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { aboveZero, every, zeroOrMore } from './lifeArguments.ts';
import { weibullHazardGain } from './weibull.ts';

/** How a battery's next months may end, where it may also leave while good. */
export type CompetingRemoval = {
  /** Chance that it fails, in service, within the time. */
  readonly failed: number;
  /** Chance that it is taken out for another reason first. */
  readonly removedGood: number;
  /** Mean months in service within the time. */
  readonly monthsInService: number;
};

// Gauss-Legendre, four points a panel (abscissa and weight of the positive half).
const POINTS = [
  [0.3399810435848563, 0.6521451548625461],
  [0.8611363115940526, 0.3478548451374538],
] as const;
const PANELS = 200;

/**
 * Chances that a battery of an age fails, or is taken out good, within the next months, where good ones leave at a
 * constant rate that has nothing to do with their state (vehicles handed back, damage). The integral is numerical, to 1e-7 from shape 1 on.
 * @param age        age in service [months], 0 or more
 * @param months     months from now, 0 or more
 * @param shape      Weibull shape, above 0
 * @param scale      Weibull scale [months], above 0
 * @param otherRate  other removals per battery and month, 0 or more
 * @returns both chances and the mean time in service [months]
 * @problem badInput    when a figure is no number
 * @problem outOfRange  when a figure is not allowed
 * @example competingRemoval(0, 12, 2.4, 60, 0.006).value.removedGood // 0.06905
 */
export function competingRemoval(
  age: number,
  months: number,
  shape: number,
  scale: number,
  otherRate: number,
): Outcome<CompetingRemoval> {
  const given = every(
    zeroOrMore(age, 'age'),
    zeroOrMore(months, 'months'),
    aboveZero(shape, 'shape'),
    aboveZero(scale, 'scale'),
    zeroOrMore(otherRate, 'otherRate'),
  );
  return andThen(given, () => {
    const logStay = (time: number) => -weibullHazardGain(age, time, shape, scale) - otherRate * time;
    const monthsInService = integral((time) => Math.exp(logStay(time)), months);
    const removedGood = otherRate * monthsInService;
    return answer({ failed: -Math.expm1(logStay(months)) - removedGood, removedGood, monthsInService });
  });
}

/** Integral from 0 to an end; panels grow like squares, finest where a young hazard bends most. */
function integral(f: (x: number) => number, end: number): number {
  let sum = 0;
  for (let panel = 0; panel < PANELS; panel += 1) {
    const [from, to] = [end * (panel / PANELS) ** 2, end * ((panel + 1) / PANELS) ** 2];
    const [middle, half] = [(from + to) / 2, (to - from) / 2];
    for (const [point, weight] of POINTS)
      sum += half * weight * (f(middle - half * point) + f(middle + half * point));
  }
  return sum;
}
