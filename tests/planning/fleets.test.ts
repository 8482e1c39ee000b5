import { describe, expect, it } from 'vitest';
import { lifePosterior } from '../../src/life/lifePosterior.ts';
import { forecastCounts, horizonsFrom } from '../../src/planning/forecastCounts.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import type { FleetFigures } from '../fleets/readFleet.ts';
import { fleets, readFleet } from '../fleets/readFleet.ts';

const HORIZONS = ['12', '24', '36'] as const;
const NARROW_PRIOR = { medianMonths: 54, spreadLogMedian: 0.6, sigma: 0.4, spreadLogSigma: 0.4 };

// With 12 and 3 failures the reference itself has ages to the day, ours by month of age.
const FEW_FAILURES = ['fleet06', 'fleet07'];

const windows = horizonsFrom(HORIZONS.map(Number));

describe('limits of the ten fleets, against a separate program', () => {
  it.each(fleets)('$fleet $label', (figures) => {
    const { records, bins } = readFleet(figures);
    const life = valueOf(lifePosterior(records, NARROW_PRIOR));
    const { demands } = forecastCounts(bins, { life, windows, renewals: false });
    const share = FEW_FAILURES.includes(figures.fleet) ? 0.03 : 0.01;
    HORIZONS.forEach((horizon, i) => {
      for (const [chance, count] of Object.entries(figures.pooledCounts[horizon].quantiles)) {
        const difference = Math.abs(demands[i]!.quantile(Number(chance)) - count);
        expect(difference, `${horizon} months, ${chance}`).toBeLessThanOrEqual(Math.max(1, share * count));
      }
    });
  });
});

describe('what happened next, against 90 % limits', () => {
  const kinds = [
    ['firstPlacesKept', false, false],
    ['firstPlacesGivenUp', false, true],
    ['totalPlacesKept', true, false],
    ['totalPlacesGivenUp', true, true],
  ] as const;

  it.each(kinds)('%s lies inside in at least 8 of 10 fleets at 12 months', (kind, renewals, givenUp) => {
    const inside = fleets.filter((figures) => {
      const { records, bins } = readFleet(figures);
      const goneRate = givenUp ? rateGivenUp(figures, records) : 0;
      const life = valueOf(lifePosterior(records));
      const [demand] = forecastCounts(bins, {
        life,
        windows: horizonsFrom([12]),
        renewals,
        goneRate,
      }).demands;
      const happened = figures.future[kind]['12'];
      return happened >= demand!.quantile(0.05) && happened <= demand!.quantile(0.95);
    });
    expect(inside.length).toBeGreaterThanOrEqual(8);
  });
});

function rateGivenUp(figures: FleetFigures, records: ReturnType<typeof readFleet>['records']): number {
  const watched = records.reduce((sum, { entry, to, count }) => sum + (to - entry) * count, 0);
  return figures.removedOtherwise / watched;
}
