import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { rootBetween } from '../basics/solve.ts';
import { aboveZero, every } from './lifeArguments.ts';
import type { ParametricLife } from './parametricLife.ts';

/** When to replace by age, and what it saves against waiting for failure. */
export type ReplacementPolicy = {
  /** Age of least long-run cost. */
  readonly age: number;
  /** Money per unit of time at that age, and when always waiting for failure. */
  readonly costRate: number;
  readonly costRateWaiting: number;
  /** Share of the waiting cost that is saved, 0 to 1. */
  readonly saving: number;
  /** Ages that cost at most 2 % more than the best; no end where even waiting does. */
  readonly nearlyBestFrom: number;
  readonly nearlyBestTo?: number;
};

const NEARLY_BEST = 1.02;
const SETTLED = 1e-13;
// Under this saving the best age is one that practically no battery reaches.
const LEAST_SAVING = 1e-9;

/**
 * The age at which planned replacement costs least in the long run, where it beats waiting for failure. It assumes that
 * each battery is followed by one of the same kind, at once and without end, and that money later counts as money now.
 * @param life         a life with known parameters
 * @param plannedCost  cost of one planned replacement, above 0
 * @param failureCost  cost of one failure in service, towing and all, above 0, in the same money
 * @returns the age, the cost rates and the ages nearly as good
 * @problem badInput    when a cost is no number
 * @problem outOfRange  when a cost is not above 0
 * @problem notEnoughData  when waiting for failure is always cheaper: no wear-out, or a failure costs no more
 * @source barlowHunter1960 replacement by age: least cost per unit of time
 * @example replacementPolicy(weibullLife(2.5, 1000), 1, 5).value.age // 493.047
 */
export function replacementPolicy(
  life: ParametricLife,
  plannedCost: number,
  failureCost: number,
): Outcome<ReplacementPolicy> {
  return andThen(every(aboveZero(plannedCost, 'plannedCost'), aboveZero(failureCost, 'failureCost')), () => {
    if (plannedCost >= failureCost) return problem('notEnoughData', 'waitingNotDearer', 'plannedCost');
    const costRate = costRateOf(life, plannedCost, failureCost);
    const waiting = failureCost / life.mean;
    const best = bestAge(life, plannedCost / (failureCost - plannedCost));
    if (best === undefined || !(costRate(best) < waiting * (1 - LEAST_SAVING))) {
      return problem('notEnoughData', 'waitingIsCheaper', 'life');
    }
    return answer(policyAt(best, costRate, waiting));
  });
}

type CostRate = (age: number) => number;

/** Expected cost of one battery over its expected time in service. */
function costRateOf(life: ParametricLife, planned: number, failure: number): CostRate {
  return (age) => (planned - (failure - planned) * Math.expm1(life.logSurvival(age))) / life.meanToAge(age);
}

/**
 * Where hazard x mean time - share failed meets the planned cost over what a failure costs more: the cost rate's one
 * low point while the hazard rises.
 */
function bestAge(life: ParametricLife, costShare: number): number | undefined {
  const excess = (logAge: number): number => {
    const age = Math.exp(logAge);
    return life.hazard(age) * life.meanToAge(age) + Math.expm1(life.logSurvival(age)) - costShare;
  };
  if (life.hazardRisesTo === 0) return undefined;
  const low = walk(excess, Math.log(life.quantile(0.5)), -1, (value) => value < 0);
  const top = Math.min(Math.log(life.hazardRisesTo), Math.log(life.quantile(1 - 1e-15)) + 3);
  if (low === undefined || !(excess(top) > 0)) return undefined;
  const root = rootBetween(excess, low, top, SETTLED, 'age');
  return root.ok ? Math.exp(root.value) : undefined;
}

function policyAt(age: number, costRate: CostRate, waiting: number): ReplacementPolicy {
  const least = costRate(age);
  const dearer = (logAge: number): number => costRate(Math.exp(logAge)) / (NEARLY_BEST * least) - 1;
  const from = side(dearer, Math.log(age), -1);
  const to = waiting > NEARLY_BEST * least ? side(dearer, Math.log(age), 1) : undefined;
  return {
    ...{ age, costRate: least, costRateWaiting: waiting, saving: 1 - least / waiting },
    nearlyBestFrom: from ?? 0,
    ...(to === undefined ? {} : { nearlyBestTo: to }),
  };
}

function side(dearer: (logAge: number) => number, centre: number, way: 1 | -1): number | undefined {
  const end = walk(dearer, centre, way, (value) => value > 0);
  if (end === undefined) return undefined;
  const root = rootBetween(dearer, centre, end, SETTLED, 'age');
  return root.ok ? Math.exp(root.value) : undefined;
}

/** The first point, going one way in growing steps, at which a condition holds. */
function walk(
  f: (x: number) => number,
  start: number,
  way: 1 | -1,
  holds: (value: number) => boolean,
): number | undefined {
  for (let step = 0.05, x = start; Math.abs(x - start) < 200; step *= 1.5, x += way * step) {
    if (holds(f(x))) return x;
  }
  return undefined;
}
