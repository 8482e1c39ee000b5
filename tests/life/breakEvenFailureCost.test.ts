import { describe, expect, it } from 'vitest';
import { breakEvenFailureCost } from '../../src/life/breakEvenFailureCost.ts';
import { weibullLife } from '../../src/life/parametricLife.ts';
import { replacementPolicy } from '../../src/life/replacementPolicy.ts';

describe('the failure cost from which renewal by age pays', () => {
  it('sets both costs per month equal, summed month by month by hand', () => {
    const [shape, scale, age, planned] = [2.5, 60, 48, 100];
    const alive = (month: number): number => Math.exp(-((month / scale) ** shape));
    const step = 0.01;
    const months = (to: number): number =>
      Array.from({ length: to / step }, (_, index) => alive((index + 0.5) * step) * step).reduce(
        (a, b) => a + b,
      );
    const failure = breakEvenFailureCost(weibullLife(shape, scale), age, planned);
    const byAge = (planned * alive(age) + failure * (1 - alive(age))) / months(age);
    expect(byAge).toBeCloseTo(failure / months(600), 4);
  });

  it('at the age of least cost it is no more than the cost for which that age is best', () => {
    const life = weibullLife(3, 70);
    const best = replacementPolicy(life, 100, 500);
    if (!best.ok) throw new Error('no best age');
    expect(breakEvenFailureCost(life, best.value.age, 100)).toBeLessThan(500);
  });

  it('without wear-out no cost is high enough', () => {
    expect(breakEvenFailureCost(weibullLife(1, 60), 48, 100)).toBe(Infinity);
    expect(breakEvenFailureCost(weibullLife(0.8, 60), 48, 100)).toBe(Infinity);
  });
});
