import { dayFromParts } from '../../src/basics/calendar.ts';
import type { Battery } from '../../src/service/battery.ts';

const AS_OF = dayFromParts(2026, 6, 30)!;

/** A battery on the shelf that is fit for issue; only what a test needs has to be said. */
export function stocked(serial: string, more: Partial<Battery> = {}): Battery {
  return {
    ...{ row: 1, serial, stockNumber: '6140-99-000-0123', maker: '9ZZ98', lot: '', type: '6T AGM' },
    ...{ site: 'Depot', vehicle: '', set: '', construction: 'AGM', whereabouts: 'inStock', monthsOut: 0 },
    ...{ made: dayFromParts(2025, 9, 1)!, verdict: 'Serviceable', charge: 0.95, chargeBy: AS_OF + 90 },
    readings: { testedOn: AS_OF - 60, chargedOn: AS_OF - 90, restVolts: 12.75, reading: 1100, least: 935 },
    ...more,
  } as Battery;
}

/** A shelf with something for each list of the storekeeper. */
export function shelfStock(): Battery[] {
  const read = (restVolts: number, reading: number) => ({
    readings: { testedOn: AS_OF - 60, chargedOn: AS_OF - 90, restVolts, reading, least: 935 },
  });
  const stock = [
    stocked('S1', read(12.78, 1100)),
    stocked('S2', { ...read(12.7, 1060), type: '6T-AGM' }),
    stocked('S3', { ...read(12.74, 1120), made: dayFromParts(2025, 11, 1)! }),
    stocked('S4', { ...read(12.76, 1080), made: dayFromParts(2026, 1, 1)! }),
    stocked('S5', { ...read(12.75, 9.9), storagePlace: 'A-1-1' }),
    stocked('=1+1', { chargeBy: AS_OF - 12, verdict: undefined, readings: { chargedOn: AS_OF - 200 } }),
    stocked('S7', {
      chargeBy: undefined,
      made: dayFromParts(2023, 3, 1)!,
      verdict: undefined,
      readings: undefined,
    }),
    stocked('S8', { installed: AS_OF - 800, verdict: undefined, readings: { chargedOn: AS_OF - 20 } }),
    stocked('S9', {
      ...read(12.2, 900),
      charge: 0.45,
      verdict: 'Awaiting charge',
      verdictReason: 'Charge first',
    }),
    stocked('', { verdict: 'Condemned', verdictReason: 'Failed again after a full charge' }),
    stocked('V1', { ...read(11.9, 700), charge: 0.1, whereabouts: 'inService', vehicle: 'DP-1' }),
    stocked('G1', { whereabouts: 'removed' }),
  ];
  return stock.map((battery, index) => ({ ...battery, row: index + 2 }));
}
