import { describe, expect, it } from 'vitest';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { DEFAULT_SETTINGS } from '../../src/inventory/settings.ts';
import { storeList } from '../../src/inventory/storeList.ts';
import type { Battery } from '../../src/service/battery.ts';
import { shelfStock, stocked } from './shelfStock.ts';

const AS_OF = dayFromParts(2026, 6, 30)!;
const LIMITS = DEFAULT_SETTINGS.store;
const SITES = { Depot: { coldest: -30, heated: false, parked: false } };
const listed = (batteries: readonly Battery[], limits = LIMITS) => storeList(batteries, AS_OF, limits, SITES);
const serials = (batteries: readonly Battery[]): string[] => batteries.map(({ serial }) => serial);

describe('charge next', () => {
  it('what its test sends to the charger, overdue, without a charge on record, due soon; no condemned one', () => {
    const { chargeNext } = listed([
      stocked('soon', { chargeBy: AS_OF + 30 }),
      stocked('later', { chargeBy: AS_OF + 31 }),
      stocked('unknown', { chargeBy: undefined }),
      stocked('today', { chargeBy: AS_OF }),
      stocked('overdue', { chargeBy: AS_OF - 40 }),
      stocked('awaiting', {
        verdict: 'Awaiting charge',
        readings: { testedOn: AS_OF - 9, chargedOn: AS_OF - 90 },
      }),
      stocked('charged since', {
        verdict: 'Awaiting charge',
        readings: { testedOn: AS_OF - 9, chargedOn: AS_OF - 8 },
      }),
      stocked('condemned', { verdict: 'Condemned', chargeBy: AS_OF - 400 }),
      stocked('fitted', { whereabouts: 'inService', chargeBy: AS_OF - 9 }),
      stocked('gone', { whereabouts: 'removed', chargeBy: AS_OF - 9 }),
    ]);
    expect(chargeNext.map(({ battery, reason, days }) => [battery.serial, reason, days])).toEqual([
      ['awaiting', 'awaiting charge', 90],
      ['overdue', 'due', -40],
      ['today', 'due', 0],
      ['unknown', 'no charge on record', undefined],
      ['soon', 'due soon', 30],
    ]);
  });
});

describe('the settings of the store', () => {
  it('say how soon a charge has to come to be listed; what is overdue is listed with none', () => {
    const stock = [-1, 0, 1, 7, 8].map((days) => stocked(`${days}`, { chargeBy: AS_OF + days }));
    const within = (chargeSoonDays: number) =>
      listed(stock, { ...LIMITS, chargeSoonDays }).chargeNext.map(({ battery }) => battery.serial);
    expect(within(0)).toEqual(['-1', '0']);
    expect(within(7)).toEqual(['-1', '0', '1', '7']);
  });

  it('part fit batteries into sets by the limits that were given, and into none where these are too narrow', () => {
    const reads = (reading: number) => ({ readings: { reading, restVolts: 12.8 } });
    const stock = [stocked('one', reads(1000)), stocked('other', reads(900))];
    const sets = (setReading: number) =>
      listed(stock, { ...LIMITS, setReading }).sets.map(({ batteries }) => serials(batteries));
    expect(sets(0.1)).toEqual([['one', 'other']]);
    expect(sets(0.09)).toEqual([]);
  });
});

describe('turn-ins', () => {
  it('stand together by site and storage place, then in the order of the sheet', () => {
    const back = { installed: AS_OF - 900, verdict: undefined } as const;
    const at = (serial: string, site: string, storagePlace: string) =>
      stocked(serial, { ...back, site, storagePlace });
    const stock = [
      at('4', 'North', 'A'),
      at('2', 'Depot', 'B'),
      at('3', 'Depot', 'B'),
      at('1', 'Depot', 'A'),
    ];
    expect(serials(listed(stock).turnIns)).toEqual(['1', '2', '3', '4']);
  });
});

describe('issue next', () => {
  it('the oldest made first, of those tested good, charged and within the shelf limit', () => {
    const list = listed([
      stocked('new', { made: dayFromParts(2026, 2, 1)! }),
      stocked('old', { made: dayFromParts(2024, 7, 1)! }),
      stocked('no date', { made: undefined }),
      stocked('too long', { made: dayFromParts(2024, 5, 1)! }),
      stocked('used', { made: dayFromParts(2023, 5, 1)!, installed: AS_OF - 900 }),
      stocked('untested', { verdict: undefined }),
      stocked('due', { chargeBy: AS_OF }),
      stocked('condemned', { verdict: 'Condemned' }),
    ]);
    expect(serials(list.issueNext)).toEqual(['used', 'old', 'new', 'no date']);
    expect(list.notIssued).toEqual({ condemned: 1, notTested: 1, toCharge: 1, overShelf: 1 });
  });

  it('every battery in stock is either fit for issue or counted with its reason', () => {
    const list = listed(shelfStock());
    const counted = Object.values(list.notIssued).reduce((sum, count) => sum + count, 0);
    expect(list.issueNext.length + counted).toBe(list.inStock);
  });
});

describe('turn-ins, frost and shelf time', () => {
  it('a turn-in is in stock after service and has no verdict that says how it is', () => {
    const used = { installed: AS_OF - 900 };
    const { turnIns } = listed([
      stocked('b', { ...used, verdict: undefined, storagePlace: 'B' }),
      stocked('a', { ...used, verdict: 'Not judged', storagePlace: 'A' }),
      stocked('judged', used),
      stocked('never fitted', { verdict: undefined }),
    ]);
    expect(serials(turnIns)).toEqual(['a', 'b']);
  });

  it('frost: by the weakest acid that the reading allows, stock before vehicles, not where no temperature is given', () => {
    const weak = { charge: 0.35, readings: { restVolts: 12.1 } };
    const { mayFreeze } = listed([
      stocked('in a vehicle', { ...weak, whereabouts: 'inService' }),
      stocked('on the shelf', weak),
      stocked('strong', { charge: 1, readings: { restVolts: 12.85 } }),
      stocked('elsewhere', { ...weak, site: 'Harbour' }),
      stocked('gone', { ...weak, whereabouts: 'removed' }),
    ]);
    expect(serials(mayFreeze.map(({ battery }) => battery))).toEqual(['on the shelf', 'in a vehicle']);
    expect(mayFreeze[0]!.freezesAt).toBeLessThan(0);
    expect(mayFreeze[0]!.freezesAt).toBeGreaterThan(-25);
  });

  it('flooded batteries have a shorter limit, and the limits can be changed', () => {
    const made = dayFromParts(2025, 5, 1)!;
    const stock = [stocked('AGM', { made }), stocked('flooded', { made, construction: 'flooded' })];
    expect(listed(stock).overShelf.map(({ battery, limit }) => [battery.serial, limit])).toEqual([
      ['flooded', 12],
    ]);
    const changed = { ...LIMITS, shelfMonths: 6, shelfMonthsFlooded: 18 };
    expect(listed(stock, changed).overShelf.map(({ battery }) => battery.serial)).toEqual(['AGM']);
  });
});
