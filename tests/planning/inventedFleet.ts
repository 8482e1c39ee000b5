import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import { dayFromParts } from '../../src/basics/calendar.ts';
import type { Battery, Life } from '../../src/service/battery.ts';

/** The day of the invented fleet's plan. */
export const AS_OF = dayFromParts(2026, 6, 30)!;

const RECORDS_SINCE = dayFromParts(2021, 4, 1)!;
const SITES = ['North', 'East', 'Pass'];

/** A battery in service, or on a shelf without an age; only what a test needs has to be said. */
export function battery(row: number, more: Partial<Battery> = {}): Battery {
  return {
    row,
    serial: `S${row}`,
    stockNumber: '',
    maker: '9ZZ98',
    lot: '',
    type: row % 5 === 0 ? '6T flooded' : '6T AGM',
    site: SITES[Math.floor(row / 6) % SITES.length]!,
    vehicle: `V${Math.floor(row / 6)}`,
    // Sets of three beside batteries by themselves: counts come in batches of both sizes.
    set: row % 6 < 3 ? 'set A' : '',
    construction: 'AGM',
    whereabouts: 'inService',
    monthsOut: 0,
    ...more,
  };
}

/** A life of so many months that ended at as-of or, removed, before it. */
export function life(row: number, months: number, more: Partial<Life> = {}): Life {
  const end = more.removed ?? AS_OF;
  const installed = Math.round(end - months * DAYS_PER_MONTH);
  const watchedFrom = Math.max(installed, RECORDS_SINCE);
  const { type, site, maker, vehicle } = battery(row);
  return {
    ...{ row, serial: `S${row}`, type, site, maker, lot: '', vehicle, installed, watchedFrom },
    entry: (watchedFrom - installed) / DAYS_PER_MONTH,
    from: (end - installed) / DAYS_PER_MONTH,
    to: (end - installed) / DAYS_PER_MONTH,
    ...more,
  };
}

/** 120 batteries in service and 60 removed ones, 40 of which failed, ages spread by a fixed rule. */
export function inventedFleet(): { batteries: Battery[]; lives: Life[] } {
  const inService = Array.from({ length: 120 }, (_, i) => ({ row: i, months: 2 + ((i * 37) % 83) }));
  const removed = Array.from({ length: 60 }, (_, i) => ({ row: 200 + i, months: 20 + ((i * 29) % 61), i }));
  return {
    batteries: inService.map(({ row, months }) => battery(row, { ageMonths: months })),
    lives: [
      ...inService.map(({ row, months }) => life(row, months)),
      ...removed.map(({ row, months, i }) =>
        life(row, months, { removed: AS_OF - 30 * i, meaning: i % 3 === 0 ? 'good' : 'failed' }),
      ),
    ],
  };
}
