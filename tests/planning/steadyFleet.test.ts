import { describe, expect, it } from 'vitest';
import { DEFAULT_LIFE_PRIOR } from '../../src/life/lifePrior.ts';
import { steadyFleet } from '../../src/planning/steadyFleet.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';
import { battery } from './inventedFleet.ts';

describe('steadyFleet', () => {
  it('by hand: all leave at 48 months, so ages are spread evenly up to it and a quarter is bought each year', () => {
    const fleet = Array.from({ length: 480 }, (_, i) => battery(i, { ageMonths: (i + 0.5) / 10 }));
    const { purchasesAYear, halfGone, aged } = valueOf(steadyFleet(fleet, DEFAULT_LIFE_PRIOR));
    expect(aged).toBe(480);
    expect(purchasesAYear / 120).toBeCloseTo(1, 1);
    expect(halfGone.best / 48).toBeCloseTo(1, 1);
  });

  it('fills every place, those of unknown age too, and no shelf', () => {
    const known = Array.from({ length: 100 }, (_, i) => battery(i, { ageMonths: 1 + (i % 48) }));
    const alone = valueOf(steadyFleet(known, DEFAULT_LIFE_PRIOR)).purchasesAYear;
    const more = [...known, ...known.map(({ row }) => battery(row + 500))];
    const shelf = battery(2000, { whereabouts: 'inStock', ageMonths: 200 });
    expect(valueOf(steadyFleet([...more, shelf], DEFAULT_LIFE_PRIOR)).purchasesAYear).toBeCloseTo(
      2 * alone,
      9,
    );
  });

  it('takes a battery that was fitted today', () => {
    expect(steadyFleet([battery(1, { ageMonths: 0 })], DEFAULT_LIFE_PRIOR).ok).toBe(true);
  });

  it('refuses where no battery in service has an age', () => {
    expect(refusal(steadyFleet([battery(1)], DEFAULT_LIFE_PRIOR))[0]).toBe('notEnoughData');
  });
});
