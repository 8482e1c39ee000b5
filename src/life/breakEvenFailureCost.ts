import type { ParametricLife } from './parametricLife.ts';

// What is left of zero after rounding.
const DUST = 1e-12;

/**
 * What a failure in service must cost in all, so that renewal at an age costs no more in the long run than waiting
 * for failure: planned x S(age) / (mean time to that age / mean life - share failed by then).
 * @param life         a life with known parameters
 * @param age          age of planned renewal [months], above 0
 * @param plannedCost  cost of one planned renewal, above 0
 * @returns cost of one failure in the same money; Infinity where no cost is high enough (no wear-out)
 * @source barlowHunter1960 replacement by age: the two costs per unit of time set equal
 */
export function breakEvenFailureCost(life: ParametricLife, age: number, plannedCost: number): number {
  const survives = Math.exp(life.logSurvival(age));
  const gain = life.meanToAge(age) / life.mean - (1 - survives);
  return gain > DUST ? (plannedCost * survives) / gain : Number.POSITIVE_INFINITY;
}
