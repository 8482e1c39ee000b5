import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/inventory/inventory.ts';
import { day, fleet, found, inventoryFrom, plain, sheetOf } from './sheets.ts';

const HEADS = ['Serial no', 'Date code', 'Depot', 'Veh reg', 'Installed'];
const rowOf = (number: number, site: string | null = 'North'): Cell[] => [
  `A${number}`,
  '1023-117',
  site,
  `NF-${number}`,
  day('2024-02-10'),
];

describe('the rows', () => {
  it('begin under title rows', () => {
    const rows = [
      ['Battery list of the winter-road service'],
      [],
      ['as of', '30 June'],
      HEADS,
      rowOf(1),
      rowOf(2),
    ];
    const { batteries, rows: counts } = inventoryFrom({ rows });
    expect(batteries.map(({ row, serial }) => [row, serial])).toEqual([
      [5, 'A1'],
      [6, 'A2'],
    ]);
    expect(counts.read).toBe(2);
  });

  it('begin under two header rows', () => {
    const rows = [
      ['Battery', null, 'Where', null, 'Date', null, 'Rest'],
      ['serial', 'code', 'site', 'vehicle', 'fitted', 'removed', 'volts'],
      ['A1', '1023-117', 'North', 'NF-1', day('2024-02-10'), null, 12.7],
      ['A2', '1023-117', 'North', 'NF-1', day('2024-02-10'), day('2025-02-10'), 12.7],
    ];
    const { columns, batteries } = inventoryFrom({ rows });
    expect(batteries.map(({ row }) => row)).toEqual([3, 4]);
    expect(columns).toMatchObject({
      installed: 'fitted',
      removed: 'removed',
      restVolts: 'volts',
      serial: 'serial',
    });
  });

  it('take a word from the upper header where the lower one alone says nothing', () => {
    const rows = [
      ['Battery', 'Installation', 'Test', null],
      ['no', 'on', 'volts', 'date'],
      ['A1', day('2024-02-10'), 12.7, day('2026-02-10')],
      ['A2', day('2024-02-10'), 12.8, day('2026-02-10')],
    ];
    expect(inventoryFrom({ rows }).columns).toMatchObject({ serial: 'Battery no', testedOn: 'Test date' });
  });

  it('begin under a row of units', () => {
    const heads = [...HEADS, 'OCV', 'Temp'];
    const rows = [
      heads,
      [null, null, null, null, null, 'V', '°C'],
      [...rowOf(1), 12.7, 15],
      [...rowOf(2), 12.7, 15],
    ];
    const inventory = inventoryFrom({ rows });
    expect(inventory.rows).toMatchObject({ read: 2, used: 2 });
    expect(inventory.columns.temperature).toBe('Temp (°C)');
  });

  it('take the site from the heading above them', () => {
    const rows = [
      ['Serial no', 'Date code', 'Installed'],
      ['North depot'],
      ['A1', '1023-117', day('2024-02-10')],
      ['A2', '1023-117', day('2024-02-10')],
      ['Subtotal', 2],
      [],
      ['Site: Fell road (1)'],
      ['A3', '1023-117', day('2024-02-10')],
      ['Total', 3],
    ];
    const { batteries, rows: counts, leftOutReasons, notes } = inventoryFrom({ rows });
    expect(batteries.map(({ serial, site }) => [serial, site])).toEqual([
      ['A1', 'North depot'],
      ['A2', 'North depot'],
      ['A3', 'Fell road'],
    ]);
    expect(counts).toEqual({ read: 8, used: 3, repaired: 0, ageUnknown: 0, leftOut: 5 });
    expect(leftOutReasons).toEqual({ 'heading or note': 2, 'total or subtotal': 2, 'blank row': 1 });
    expect(notes).toEqual(['headings taken as sites of the rows under them: North depot, Fell road']);
  });

  it('keep their own site under a heading', () => {
    const rows = [HEADS, ['Winter fleet'], rowOf(1, 'North'), rowOf(2, null)];
    expect(inventoryFrom({ rows }).batteries.map(({ site }) => site)).toEqual(['North', 'Winter fleet']);
  });

  it('are left out where they are no battery', () => {
    const rows = [
      HEADS,
      rowOf(1),
      HEADS,
      [null, null, 'North', 'NF-9'],
      ['empty', null, 'North', 'NF-8'],
      rowOf(2),
      [null, null, 'Grand total', null, 46_000],
      ['North Count', 12],
      ['Printed by the depot office'],
    ];
    const { leftOutReasons, rows: counts } = inventoryFrom({ rows });
    expect(leftOutReasons).toEqual({
      'repeated header': 1,
      'no battery in the row': 2,
      'total or subtotal': 2,
      'heading or note': 1,
    });
    expect(counts).toMatchObject({ read: 8, used: 2, leftOut: 6 });
  });

  it('are left out where a total counts the serials', () => {
    const numbered = (number: number): Cell[] => [number, ...rowOf(number)];
    const rows = [['No.', ...HEADS], numbered(1), numbered(2), ['Total', 2, null, null, null, null]];
    const { leftOutReasons, batteries } = inventoryFrom({ rows });
    expect(leftOutReasons).toEqual({ 'total or subtotal': 1 });
    expect(batteries).toHaveLength(2);
  });

  it('are left out where they say the same life twice', () => {
    const tested = { OCV: 12.7, Tested: day('2026-02-01') };
    const inventory = inventoryFrom([
      ...fleet(),
      plain({ ...tested, OCV: 12.1 }),
      plain({ ...tested, Tested: day('2026-03-01') }),
    ]);
    expect(inventory.leftOutReasons).toEqual({ 'the same life twice': 1 });
    expect(inventory.batteries.at(-1)).toMatchObject({
      serial: 'A1001',
      row: 9,
      readings: { restVolts: 12.7 },
    });
  });

  it('count when hidden, unless only visible ones are wanted', () => {
    const sheet = sheetOf(fleet(), { hiddenRows: new Set([3, 4]) });
    expect(inventoryFrom(sheet).rows).toMatchObject({ read: 6, used: 6 });
    const visible = inventoryFrom(sheet, { settings: { visibleOnly: true } });
    expect(visible.rows).toMatchObject({ read: 6, used: 4, leftOut: 2 });
    expect(found(visible, 'hidden rows counted')).toEqual([]);
  });

  it('are those of a range where one is given', () => {
    const rows = [
      ['x', 'Serial'],
      ['x', ...HEADS],
      ['x', ...rowOf(1)],
      ['x', ...rowOf(2)],
      ['x', ...rowOf(3)],
    ];
    const { batteries } = inventoryFrom({
      rows,
      firstRow: 11,
      range: { top: 12, left: 2, bottom: 14, right: 6 },
    });
    expect(batteries.map(({ row, serial }) => [row, serial])).toEqual([
      [13, 'A1'],
      [14, 'A2'],
    ]);
  });
});
