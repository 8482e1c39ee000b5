import { describe, expect, it } from 'vitest';
import type { Battery } from '../../src/service/battery.ts';
import type { Row } from './sheets.ts';
import { day, fleet, found, inventoryFrom, plain, sheetOf } from './sheets.ts';

const test = (date: number | string, change: Row = {}): Row => ({
  ...{
    Date: typeof date === 'string' ? day(date) : date,
    Serial: 'A1001',
    Vehicle: 'NF-1',
    'Place in the set': 1,
  },
  ...{
    Damage: null,
    'Rest volts': 12.8,
    'Hours at rest': 9,
    Temperature: 15,
    Reading: 700,
    'Load volts': null,
  },
  ...{
    Least: 880,
    Retest: null,
    Verdict: 'Awaiting charge',
    Reason: 'weak',
    'Tester used': 'T1',
    Initials: 'nn',
  },
  ...change,
});
const charge = (date: number | string): Row => ({
  Date: typeof date === 'string' ? day(date) : date,
  Serial: 'A1001',
});

function judged(tests: readonly Row[], charges: readonly Row[] = [], own: Row = {}): Battery {
  const { batteries } = inventoryFrom([plain(own), ...fleet(3)], {
    tests: sheetOf(tests, { name: 'Tests' }),
    ...(charges.length === 0 ? {} : { charges: sheetOf(charges, { name: 'Charges' }) }),
  });
  return batteries[0]!;
}

describe('the Tests sheet', () => {
  it('gives the reading of its latest test', () => {
    const battery = judged([
      test('2026-05-20', { Reading: 1100 }),
      test('2026-05-10', { 'Rest volts': 12.4 }),
    ]);
    expect(battery.readings).toMatchObject({
      testedOn: day('2026-05-20'),
      reading: 1100,
      least: 880,
      celsius: 15,
    });
    expect(battery.verdict).toBe('Serviceable');
    expect(battery.charge).toBeCloseTo(0.955, 2);
  });

  it('does not count a test over twelve months old, and falls back on the row', () => {
    const old = [test('2025-06-20', { Reading: 1100 })];
    expect(judged(old).verdict).toBeUndefined();
    const own = { OCV: 12.8, 'CCA meas.': 1050, 'Min CCA': 880, Tested: day('2026-03-01') };
    expect(judged(old, [], own)).toMatchObject({ verdict: 'Serviceable', readings: { reading: 1050 } });
  });

  it('goes before the columns of the row, and says where they differ', () => {
    const own = { OCV: 12.2, 'CCA meas.': 500, 'Min CCA': 880, Tested: day('2026-05-25') };
    const inventory = inventoryFrom([plain(own), ...fleet(3)], {
      tests: sheetOf([test('2026-05-20', { Reading: 1100 })]),
    });
    expect(inventory.batteries[0]).toMatchObject({ verdict: 'Serviceable', readings: { restVolts: 12.8 } });
    expect(found(inventory, 'reading differs from the Tests sheet')[0]).toMatchObject({
      row: 2,
      given: 'OCV 12.2 on 2026-05-25; Tests: 12.8 on 2026-05-20',
    });
  });

  it('judges by load-test volts against the published floor', () => {
    const loaded = { Reading: null, Least: null, Temperature: 21.2, 'Load volts': 9.9 };
    expect(judged([test('2026-05-20', loaded)]).verdict).toBe('Serviceable');
    expect(judged([test('2026-05-20', { ...loaded, 'Load volts': 9.1 })]).verdict).toBe('Awaiting charge');
  });

  it('with no rows yet is no obstacle', () => {
    const inventory = inventoryFrom(fleet(3), { tests: { rows: [['Date', 'Serial']], name: 'Tests' } });
    expect(inventory.notes).toEqual([]);
    expect(inventory.batteries[0]!.verdict).toBeUndefined();
  });

  it('that can not be read is said', () => {
    const { notes } = inventoryFrom(fleet(3), { tests: { rows: [['x'], ['y']], name: 'Tests' } });
    expect(notes[0]).toContain('the sheet Tests was not read: no header row was recognised');
  });
});

describe('a retest', () => {
  const failing = test('2026-05-01');

  it('is a failing test, a later charge, a later reading', () => {
    expect(judged([failing, test('2026-05-05')], [charge('2026-05-03')]).verdict).toBe('Condemned');
  });

  it.each([
    ['no charge at all', []],
    ['a charge before the failing test', [charge('2026-04-30')]],
    ['a charge on the day of the failing test', [charge('2026-05-01')]],
    ['a charge on the day of the reading', [charge('2026-05-05')]],
    ['a charge after the reading', [charge('2026-05-06')]],
  ])('is not made by %s', (_, charges) => {
    expect(judged([failing, test('2026-05-05')], charges).verdict).toBe('Awaiting charge');
  });

  it('on one day follows the times of day', () => {
    const at = (hour: number): number => day('2026-05-01') + hour / 24;
    expect(judged([test(at(7)), test('2026-05-05')], [charge(at(9))]).verdict).toBe('Condemned');
    expect(judged([test(at(9)), test('2026-05-05')], [charge(at(7))]).verdict).toBe('Awaiting charge');
  });

  it('is not made by a charge after a test that was passed', () => {
    const passed = test('2026-05-01', { Reading: 1100 });
    expect(judged([passed, test('2026-05-05')], [charge('2026-05-03')]).verdict).toBe('Awaiting charge');
  });

  it('starts anew after a test that was passed', () => {
    const tests = [failing, test('2026-05-05', { Reading: 1100 }), test('2026-06-01')];
    expect(judged(tests, [charge('2026-05-03')]).verdict).toBe('Awaiting charge');
  });

  it('that does not come up after a second charge is condemned', () => {
    const low = { 'Rest volts': 12.3 };
    const tests = [test('2026-05-01', low), test('2026-05-05', low), test('2026-05-09', low)];
    const charges = [charge('2026-05-03'), charge('2026-05-07')];
    expect(judged(tests.slice(0, 2), charges.slice(0, 1))).toMatchObject({
      verdict: 'Awaiting charge',
      readings: { retest: 1 },
    });
    expect(judged(tests, charges)).toMatchObject({ verdict: 'Condemned', readings: { retest: 2 } });
  });

  it('is never made by a bare column that says charged', () => {
    const own = {
      OCV: 12.8,
      'CCA meas.': 700,
      'Min CCA': 880,
      Tested: day('2026-05-05'),
      Recharged: day('2026-05-03'),
    };
    expect(inventoryFrom([plain(own), ...fleet(3)]).batteries[0]!.verdict).toBe('Awaiting charge');
  });
});

describe('the Charges sheet', () => {
  const stock = plain({ Status: 'in store', Installed: null, Vehicle: null });

  it('gives the date of the latest charge, and by when to charge again', () => {
    const charges = sheetOf([charge('2026-01-10'), charge('2026-03-10')]);
    const { batteries } = inventoryFrom([stock, ...fleet(3)], { charges });
    expect(batteries[0]).toMatchObject({
      readings: { chargedOn: day('2026-03-10') },
      chargeBy: day('2026-09-10'),
    });
  });

  it('asks for it sooner in a warm store', () => {
    const charges = sheetOf([charge('2026-03-10')]);
    const settings = { sites: { North: { average: 35, heated: true } } };
    const { batteries } = inventoryFrom([stock, ...fleet(3)], { charges, settings });
    expect(batteries[0]!.chargeBy!).toBeLessThan(day('2026-09-10'));
  });
});
