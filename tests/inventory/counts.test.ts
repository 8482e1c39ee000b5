import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/inventory/inventory.ts';
import { accounted, day, inventoryFrom } from './sheets.ts';

const HEADS = [
  'Serial',
  'NSN',
  'Maker',
  'Type',
  'Date code',
  'Site',
  'Vehicle',
  'Position',
  'Installed',
  'Removed',
  'Reason',
  'Status',
  'OCV',
  'Temp',
  'CCA meas.',
  'Min CCA',
  'Damage',
  'Tested',
  'Charged',
];

const anything = fc.constantFrom<Cell>(
  null,
  '',
  'N/A',
  'TBD',
  9999,
  0,
  -1,
  true,
  { error: '#N/A' },
  '??',
  'Total',
  '–',
  1e17,
);
const date = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: day('2019-01-01'), max: day('2026-08-15') }) },
  fc.constantFrom(
    '2024-02-10',
    '03/04/2024',
    '31.12.2023',
    'Mar-24',
    2024,
    20240210,
    1,
    '1900-01-01',
    'soon',
  ),
);
const number = (low: number, high: number) =>
  fc.oneof(
    { weight: 6, arbitrary: fc.double({ min: low, max: high, noNaN: true }) },
    fc.constantFrom<Cell>('12,6', '12.6V', '54 F', 25.2, '1,100'),
  );
const orOdd = (cell: fc.Arbitrary<Cell>): fc.Arbitrary<Cell> =>
  fc.oneof({ weight: 9, arbitrary: cell }, anything);

const battery: fc.Arbitrary<Cell[]> = fc
  .tuple(
    ...[
      fc.integer({ min: 1, max: 25 }).map((serial) => `A${100 + serial}`),
      fc.constantFrom('6140-99-000-0123', 6140990000123, '6.14E+12', '6140-99'),
      fc.constantFrom('9ZZ98', '9ZZ97', 'Norr Works'),
      fc.constantFrom('6T AGM', '6T flooded', '6T'),
      fc.constantFrom('1023-117', 324, '2403-1', 'C4', '0125–9', '1299-1'),
      fc.constantFrom('North', 'Fell'),
      fc.integer({ min: 1, max: 9 }).map((vehicle) => `NF-${vehicle}`),
      fc.integer({ min: 1, max: 4 }),
      date,
      fc.oneof(fc.constant(null), date),
      fc.constantFrom(null, 'failed', 'sold', 'zebra', 'unknown'),
      fc.constantFrom(null, 'in service', 'in store', 'removed', 'qwerty'),
      number(10, 14),
      number(-40, 90),
      number(0, 1300),
      number(600, 900),
      fc.constantFrom(null, 'none', 'cracked'),
      date,
      date,
    ].map((cell) => orOdd(cell as fc.Arbitrary<Cell>)),
  )
  .map((cells) => [...cells]);

const noBattery: fc.Arbitrary<Cell[]> = fc.constantFrom<Cell[][]>(
  [],
  [null, null],
  ['North depot'],
  ['Subtotal', null, 12],
  HEADS,
  [null, null, null, null, null, 'North', 'NF-4'],
);

const body = fc.array(fc.oneof({ weight: 5, arbitrary: battery }, noBattery), {
  minLength: 1,
  maxLength: 40,
});
const start = fc.constantFrom(undefined, 'never', 'unknown', '2022-01-01');

describe('whatever stands in the sheet', () => {
  it('every row has one fate, every life its bounds, and nothing else is a number', () => {
    fc.assert(
      fc.property(body, start, (rows, recordsSince) => {
        const anchor: Cell[] = [
          'Z1',
          '6140-99-000-0123',
          '9ZZ98',
          '6T AGM',
          '1023-117',
          'North',
          'NF-0',
          1,
          day('2024-02-10'),
        ];
        const settings = recordsSince === undefined ? {} : { recordsSince };
        const inventory = inventoryFrom({ rows: [HEADS, anchor, ...rows] }, { settings });
        expect(accounted(inventory)).toBe(inventory.rows.read);
        expect(Object.values(inventory.leftOutReasons).reduce((sum, count) => sum + count, 0)).toBe(
          inventory.rows.leftOut,
        );
        expect(inventory.lives.length).toBeLessThanOrEqual(inventory.batteries.length);
        for (const { entry, from, to, watchedFrom, installed, removed } of inventory.lives) {
          expect(entry).toBeGreaterThanOrEqual(0);
          expect(from).toBeGreaterThanOrEqual(entry);
          expect(to).toBeGreaterThanOrEqual(from);
          expect(watchedFrom).toBeGreaterThanOrEqual(installed);
          if (removed !== undefined) expect(removed).toBeGreaterThanOrEqual(installed);
        }
        for (const { ageMonths, charge } of inventory.batteries) {
          if (ageMonths !== undefined) expect(ageMonths).toBeGreaterThanOrEqual(0);
          if (charge !== undefined) expect(charge).toBeGreaterThanOrEqual(0);
          if (charge !== undefined) expect(charge).toBeLessThanOrEqual(1);
        }
        expect(JSON.stringify(inventory)).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { seed: 20260630, numRuns: 400 },
    );
  });

  it('a shuffled sheet gives the same counts', () => {
    fc.assert(
      fc.property(fc.array(battery, { minLength: 2, maxLength: 25 }), (rows) => {
        const whole = rows.map((row, index) => [`B${index}`, ...row.slice(1)]);
        const one = inventoryFrom({ rows: [HEADS, ...whole] });
        const other = inventoryFrom({ rows: [HEADS, ...[...whole].reverse()] });
        expect(other.rows).toEqual(one.rows);
        expect(other.lives.length).toBe(one.lives.length);
      }),
      { seed: 20260630, numRuns: 100 },
    );
  });
});
