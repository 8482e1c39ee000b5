import { describe, expect, it } from 'vitest';
import { crankingTrend } from '../../src/cranking/crankingTrend.ts';
import type { Battery } from '../../src/service/battery.ts';
import type { Row } from './sheets.ts';
import { AS_OF, day, fleet, inventoryFrom, plain, sheetOf } from './sheets.ts';

const test = (date: string, amps: number | null, change: Row = {}): Row => ({
  ...{ Date: day(date), Serial: 'A1001', 'Rest volts': 12.8, Temperature: 15 },
  ...{ Reading: amps, 'Load volts': null, Least: 880 },
  ...change,
});

function tested(tests: readonly Row[], own: Row = {}): Battery {
  const sheets = { tests: sheetOf(tests, { name: 'Tests' }) };
  return inventoryFrom([plain(own), ...fleet(3)], sheets).batteries[0]!;
}

const three = [test('2024-06-10', 1100), test('2025-06-10', 1040), test('2026-06-10', 1000)];

describe('the trend of a battery’s tests', () => {
  it('is that of all of them, however old, against the last least', () => {
    const readings = [
      { day: day('2024-06-10'), amps: 1100 },
      { day: day('2025-06-10'), amps: 1040 },
      { day: day('2026-06-10'), amps: 1000 },
    ];
    const core = crankingTrend(readings, 880, AS_OF);
    const { trend } = tested([test('2024-06-10', 1100, { Least: 700 }), ...three.slice(1)]);
    expect(core.ok && trend).toEqual({
      crossingMonths: core.ok && core.value.crossing,
      chance12: core.ok && core.value.chanceWithin(12),
      chance24: core.ok && core.value.chanceWithin(24),
    });
    expect(trend!.crossingMonths!.best).toBeGreaterThan(12);
  });

  it('takes the least of the row where the tests have none', () => {
    const without = three.map((row) => ({ ...row, Least: null }));
    const own = { 'Min CCA': 880, 'CCA meas.': 1010, Tested: day('2026-06-01') };
    expect(tested(without, own).trend).toEqual(tested(three).trend);
    expect(tested(without).trend).toBeUndefined();
  });

  it.each([
    ['cold', { Temperature: -8 }],
    ['not charged', { 'Rest volts': 12.2 }],
    ['not rested', { 'Rest volts': 13.4 }],
    ['of another unit', { Reading: 9.7, Least: 9.6 }],
  ])('passes over a reading that is %s', (_, change) => {
    const odd = test('2026-02-01', 500, change);
    expect(tested([...three, odd]).trend).toEqual(tested(three).trend);
    expect(tested([...three.slice(1), odd]).trend).toBeUndefined();
  });

  it('is none where the tests are few, close together or long ago', () => {
    expect(tested(three.slice(1)).trend).toBeUndefined();
    const close = [test('2026-04-10', 1100), test('2026-05-10', 1040), test('2026-06-10', 1000)];
    expect(tested(close).trend).toBeUndefined();
    const old = [test('2023-03-10', 1100), test('2024-03-10', 1040), test('2025-03-10', 1000)];
    expect(tested(old).trend).toBeUndefined();
  });

  it('is none for a battery that is out of service', () => {
    expect(tested(three, { Removed: day('2026-06-20') })).toMatchObject({ whereabouts: 'removed' });
    expect(tested(three, { Removed: day('2026-06-20') }).trend).toBeUndefined();
  });
});
