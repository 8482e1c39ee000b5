import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { collapseRecords } from '../../src/life/lifeRecord.ts';
import { csvRows } from '../../taskpane/host/xlsx/csv.ts';
import { fleets, readFleet } from '../fleets/readFleet.ts';
import type { Row } from './sheets.ts';
import { day, fleet, found, inventoryFrom, plain } from './sheets.ts';

const month = 30.4375;
const out = (change: Row = {}, number = 1): Row =>
  plain({ Removed: day('2025-02-10'), Reason: 'failed', ...change }, number);
const since = (recordsSince: string) => ({ settings: { recordsSince } });

describe('ages', () => {
  it('are days over 30.4375 at as-of for those in service', () => {
    const { batteries, lives } = inventoryFrom(fleet());
    expect(batteries[0]!.ageMonths).toBeCloseTo(871 / month, 12);
    expect(lives[0]).toMatchObject({ from: 871 / month, to: 871 / month, installed: day('2024-02-10') });
  });

  it('at removal are exact where both days are known', () => {
    const { lives } = inventoryFrom([...fleet(), out()], since('2024-01-01'));
    const life = lives.at(-1)!;
    expect(life).toMatchObject({ meaning: 'failed', entry: 0, removed: day('2025-02-10') });
    expect([life.from, life.to]).toEqual([366 / month, 366 / month]);
  });

  it('at removal are an interval where a date is known to the month', () => {
    const { lives } = inventoryFrom(
      [...fleet(), out({ Removed: '2025-02' }, 2), out({ Installed: '2024-02' }, 3)],
      since('2024-01-01'),
    );
    const [byRemoval, byInstallation] = lives.slice(-2);
    expect([byRemoval!.from * month, byRemoval!.to * month]).toEqual([357, 385]);
    expect(byInstallation!.from * month).toBeCloseTo(347, 9);
    expect(byInstallation!.to * month).toBeCloseTo(375, 9);
  });

  it('come from the code where nobody wrote the installation down, for those in and those out', () => {
    const { batteries, lives } = inventoryFrom(
      [...fleet(), plain({ Installed: null }, 2), out({ Installed: null }, 3)],
      since('2023-01-01'),
    );
    expect(batteries.at(-2)).toMatchObject({ installed: day('2023-10-01'), installedFromMade: true });
    expect(batteries.at(-2)!.ageMonths).toBeCloseTo(1003 / month, 12);
    expect(lives.at(-1)).toMatchObject({ installed: day('2023-10-01'), meaning: 'failed' });
    expect([lives.at(-1)!.from * month, lives.at(-1)!.to * month].map(Math.round)).toEqual([468, 498]);
  });

  it('are unknown where neither is known: no life, still a battery', () => {
    const { batteries, lives, rows } = inventoryFrom([
      ...fleet(2),
      plain({ Installed: null, 'Date code': null }),
    ]);
    expect(batteries.at(-1)!.ageMonths).toBeUndefined();
    expect(batteries.at(-1)!.whereabouts).toBe('inService');
    expect(lives).toHaveLength(2);
    expect(rows).toMatchObject({ used: 2, ageUnknown: 1 });
  });

  it('of one day at most where a battery failed on the day it was fitted', () => {
    const { lives } = inventoryFrom([...fleet(), out({ Removed: day('2024-02-10') })], since('2024-01-01'));
    expect([lives.at(-1)!.from, lives.at(-1)!.to]).toEqual([0, 1 / month]);
  });
});

describe('one battery', () => {
  const first = out({ Reason: 'transferred' });
  const second = plain({ Installed: day('2025-06-10'), Vehicle: 'NF-77' });

  it('is one life from its first installation, months out between', () => {
    const { batteries, lives, rows } = inventoryFrom([...fleet(2), second, first], since('2024-01-01'));
    expect(batteries).toHaveLength(3);
    expect(rows).toMatchObject({ read: 4, used: 4 });
    const battery = batteries.at(-1)!;
    expect(battery).toMatchObject({ vehicle: 'NF-77', installed: day('2024-02-10'), row: 4 });
    expect(battery.monthsOut).toBeCloseTo(120 / month, 12);
    expect(battery.ageMonths).toBeCloseTo((871 - 120) / month, 12);
    expect(lives.filter(({ serial }) => serial === 'A1001')).toHaveLength(1);
  });

  it('comes under record with its months out taken off', () => {
    const { lives } = inventoryFrom([first, second, ...fleet(2)], since('2025-12-31'));
    const life = lives.find(({ serial }) => serial === 'A1001')!;
    expect(life.entry).toBeCloseTo((day('2025-12-31') - day('2024-02-10') - 120) / month, 12);
  });

  it('is two where one serial was used by two makers', () => {
    const { batteries } = inventoryFrom([plain(), plain({ Maker: '8YY97', Vehicle: 'NF-9' }), ...fleet(2)]);
    expect(batteries.filter(({ serial }) => serial === 'A1001')).toHaveLength(2);
  });

  it('on a shelf after a removal is stock, and its life ended when it was taken out', () => {
    const shelf = plain({ Installed: null, Vehicle: null, Status: 'in store' });
    const { batteries, lives } = inventoryFrom([first, shelf, ...fleet(2)], since('2024-01-01'));
    expect(batteries[0]).toMatchObject({ serial: 'A1001', whereabouts: 'inStock', row: 3 });
    expect(lives[0]).toMatchObject({ serial: 'A1001', meaning: 'good', removed: day('2025-02-10') });
  });

  it('is each row where one text stands in place of serials', () => {
    const inventory = inventoryFrom(
      fleet(120).map((row, index) => ({ ...row, Serial: index < 51 ? 'see label' : row.Serial! })),
    );
    expect(inventory.batteries).toHaveLength(120);
    expect(found(inventory, 'in two places at once')[0]).toMatchObject({
      given: 'see label in 51 rows',
      count: 51,
    });
  });

  it('in stock and never fitted has no life', () => {
    const { batteries, lives } = inventoryFrom([plain({ Installed: null, Status: 'new' }), ...fleet(2)]);
    expect(batteries[0]).toMatchObject({ whereabouts: 'inStock', made: day('2023-10-01') });
    expect(lives).toHaveLength(2);
  });
});

describe('the record start', () => {
  const rows = [...fleet(3), out({ Removed: day('2025-05-20') }, 8), out({}, 9)];

  it('is what the option says, and lives enter at it', () => {
    const { recordStart, lives } = inventoryFrom(rows, since('2024-06-30'));
    expect(recordStart).toEqual({ date: day('2024-06-30'), from: 'option' });
    expect(lives).toHaveLength(5);
    for (const { entry } of lives) expect(entry).toBeCloseTo(141 / month, 12);
  });

  it('is the month of the earliest removal where nobody knows, and is said to be assumed', () => {
    for (const asked of [{}, since('unknown')]) {
      const inventory = inventoryFrom(rows, asked);
      expect(inventory.recordStart).toEqual({ date: day('2025-02-01'), from: 'assumed' });
      expect(found(inventory, 'record start assumed')).toHaveLength(1);
    }
  });

  it('never: survivors only, each entering at its age of today', () => {
    const { recordStart, lives } = inventoryFrom(rows, since('never'));
    expect(recordStart).toEqual({ date: undefined, from: 'never' });
    expect(lives).toHaveLength(3);
    for (const { entry, from, to } of lives) expect([from, to]).toEqual([entry, entry]);
  });

  it('is never where no row was removed, whatever the option says', () => {
    expect(inventoryFrom(fleet(), since('2024-06-30')).recordStart.from).toBe('never');
  });

  it('is overridden by the row that says since when it was watched', () => {
    const watched = rows.map((row, index) =>
      index === 0 ? { ...row, 'Watched since': day('2025-01-10') } : row,
    );
    const { lives } = inventoryFrom(watched, since('2024-06-30'));
    expect(lives[0]!.entry).toBeCloseTo(335 / month, 12);
    expect(lives[1]!.entry).toBeCloseTo(141 / month, 12);
  });
});

describe('a removal', () => {
  it('after as-of counts as in service at as-of', () => {
    const { batteries, lives } = inventoryFrom([...fleet(30), out({ Removed: day('2026-08-01') })]);
    expect(batteries.at(-1)).toMatchObject({ whereabouts: 'inService' });
    expect(lives.at(-1)!.removed).toBeUndefined();
  });

  it('without a date is a failure somewhere before as-of, or no life at all', () => {
    const { lives, rows } = inventoryFrom(
      [
        ...fleet(),
        out({}, 7),
        out({ Removed: 'lost page' }, 8),
        out({ Removed: 'lost page', Reason: 'sold' }, 9),
      ],
      since('2024-06-30'),
    );
    expect(lives).toHaveLength(8);
    expect(lives.at(-1)).toMatchObject({ entry: 141 / month, from: 141 / month, to: 871 / month });
    expect(rows).toMatchObject({ read: 9, used: 9 });
  });
});

describe('the simulated fleets', () => {
  it.each(fleets)('$fleet gives the lives it was made with', (figures) => {
    const text = readFileSync(new URL(`../fleets/${figures.fleet}.csv`, import.meta.url), 'utf8');
    const { lives, rows } = inventoryFrom(
      { rows: csvRows(text), fromText: true },
      { asOf: day(figures.asOf) },
    );
    expect(rows).toEqual({ read: lives.length, used: lives.length, repaired: 0, ageUnknown: 0, leftOut: 0 });
    const records = lives.map(({ entry, from, to, meaning }) => ({
      ...{ entry, from, to, count: 1 },
      kind: meaning === 'failed' ? ('exact' as const) : ('right' as const),
    }));
    expect(collapseRecords(records)).toEqual(readFleet(figures).records);
  });
});
