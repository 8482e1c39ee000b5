import { describe, expect, it } from 'vitest';
import { lifeFromAges } from '../../src/life/lifeFromAges.ts';
import { DEFAULT_LIFE_PRIOR } from '../../src/life/lifePrior.ts';
import { posteriorAge, posteriorShape } from '../../src/life/posteriorQuantiles.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';

/** The age below which a share of the batteries of a long-steady fleet lie, summed in small steps. */
function steadyAges(shape: number, scale: number, count: number): number[] {
  const step = 0.01;
  const stays: number[] = [];
  for (let age = step / 2; age < 5 * scale; age += step) stays.push(Math.exp(-((age / scale) ** shape)));
  const mean = stays.reduce((sum, share) => sum + share, 0);
  const ages: number[] = [];
  let below = 0;
  stays.forEach((share, index) => {
    below += share / mean;
    while (ages.length < count && below >= (ages.length + 0.5) / count) ages.push((index + 0.5) * step);
  });
  return ages;
}

describe('lifeFromAges', () => {
  it('by hand: without wear-out the ages are spread as the lives are, so the mean age is the mean life', () => {
    const ages = [3, 8, 13, 30, 46];
    const noWear = { ...DEFAULT_LIFE_PRIOR, sigma: 1, spreadLogSigma: 0.0001, spreadLogMedian: 100 };
    const { mode } = valueOf(lifeFromAges(ages, noWear));
    expect(mode.sigma).toBeCloseTo(1, 3);
    expect(Math.exp(mode.mu)).toBeCloseTo((3 + 8 + 13 + 30 + 46) / 5, 1);
  });

  it('finds the life behind the ages of a fleet that has long been steady', () => {
    // Ages at equal steps of the equilibrium distribution (Cox 1962): density = share that stays so long / mean stay.
    const [shape, scale] = [2.5, 60];
    const ages = steadyAges(shape, scale, 2000);
    expect(ages.length).toBe(2000);
    const life = valueOf(lifeFromAges(ages));
    expect(posteriorShape(life)(0.5)).toBeCloseTo(shape, 1);
    const half = posteriorAge(life, 0.5);
    const truth = scale * Math.LN2 ** (1 / shape);
    expect(half(0.5) / truth).toBeCloseTo(1, 2);
    expect(half(0.05)).toBeLessThan(truth);
    expect(half(0.95)).toBeGreaterThan(truth);
  });

  it('twice as old a fleet lasts twice as long', () => {
    const ages = [4, 9, 15, 22, 30, 41, 58];
    const wide = { ...DEFAULT_LIFE_PRIOR, spreadLogMedian: 100 };
    const once = posteriorAge(valueOf(lifeFromAges(ages, wide)), 0.5)(0.5);
    const twice = posteriorAge(
      valueOf(
        lifeFromAges(
          ages.map((age) => 2 * age),
          wide,
        ),
      ),
      0.5,
    )(0.5);
    expect(twice / once).toBeCloseTo(2, 3);
  });

  it('takes a very large fleet', () => {
    const ages = Array.from({ length: 250_000 }, (_, index) => 1 + (index % 60));
    expect(valueOf(lifeFromAges(ages)).lives).toBe(250_000);
  });

  it('refuses no ages, and an age that is none', () => {
    expect(refusal(lifeFromAges([]))[0]).toBe('notEnoughData');
    expect(refusal(lifeFromAges([12, 0]))).toEqual(['outOfRange', 'age is 0; allowed is any number above 0']);
  });
});
