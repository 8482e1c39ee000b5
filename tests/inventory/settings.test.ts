import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';
import { DEFAULT_SETTINGS, settingsFrom } from '../../src/inventory/settings.ts';
import { jointSettings, settingsFromRows, settingsToRows } from '../../src/inventory/settingsRows.ts';
import { DEFAULT_PLAN_SETTINGS } from '../../src/planning/planSettings.ts';

const sentence = (outcome: Outcome<unknown>): string =>
  outcome.ok ? 'was taken' : problemText(outcome.problem);
const value = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(problemText(outcome.problem));
  return outcome.value;
};

describe('settings', () => {
  it('have the defaults of the plan, and of the life before any record', () => {
    expect(DEFAULT_SETTINGS).toMatchObject(DEFAULT_PLAN_SETTINGS);
    expect(DEFAULT_SETTINGS.prior).toEqual({
      medianMonths: 54,
      spreadLogMedian: 1,
      sigma: 0.4,
      spreadLogSigma: 0.5,
    });
    expect(DEFAULT_SETTINGS).toMatchObject({ version: 1, testMonths: 12, visibleOnly: false });
  });

  it.each([
    [{ yeers: 3 }, 'the settings have no key "yeers"; the nearest known one is "years"'],
    [
      { columns: { serail: 'x' } },
      'the settings have no key "columns.serail"; the nearest known one is "serial"',
    ],
    [
      { sites: { A: { coldset: 3 } } },
      'the settings have no key "sites.A.coldset"; the nearest known one is "coldest"',
    ],
    [
      { money: { unitprice: 3 } },
      'the settings have no key "money.unitprice"; the nearest known one is "unitPrice"',
    ],
    [{ version: 2 }, 'the setting version is 2; allowed is 1'],
    [{ years: 99 }, 'the setting years is 99; allowed is a whole number, 1 to 10'],
    [{ recovered: '0.4' }, 'the setting recovered is "0.4"; allowed is a number, 0 to 1'],
    [{ policy: { age: 0 } }, 'the setting policy.age is 0; allowed is a number, 1 to 600'],
    [
      { policy: 'x' },
      'the setting policy is "x"; allowed is "failure", "leastCost" or an age in months, 1 to 600',
    ],
    [
      { layouts: { '9ZZ98': 'zz' } },
      'the setting layouts.9ZZ98 is "zz"; allowed is a layout such as MMyy-lot',
    ],
    [
      { recordsSince: '30.6.2022' },
      'the setting recordsSince is "30.6.2022"; allowed is a date such as 2022-06-30, "never" or "unknown"',
    ],
    [
      { onOrder: [{ month: '2027-3', count: 1 }] },
      'the setting onOrder.0.month is "2027-3"; allowed is a month such as 2027-03',
    ],
    [
      { causes: { x: 'dead' } },
      'the setting causes.x is "dead"; allowed is one of failed, good, damaged, notSaid',
    ],
    [{ constructions: { x: 3 } }, 'the setting constructions.x is 3; allowed is a number, 12 to 13.5'],
    [{ ask: '3in4' }, 'the setting ask is "3in4"; allowed is one of expected, 4in5, 19in20'],
    [7, 'the setting settings is 7; allowed is one object of keys and values'],
  ])('%j is refused by name', (given, expected) => {
    expect(sentence(settingsFrom(given))).toBe(expected);
  });

  it('take a date as a spreadsheet writes it', () => {
    expect(value(settingsFrom({ recordsSince: 44_742 })).recordsSince).toBe('2022-06-30');
    expect(value(settingsFrom({ onOrder: [{ month: 46_447, count: 2 }] })).onOrder[0]!.month).toBe('2027-03');
  });
});

describe('a settings sheet', () => {
  const rows = [
    ['key', 'value'],
    ['years', 5],
    [null, null],
    ['money.unitPrice', 410],
    ['sites.St. Olav.coldest', -28],
    ['sites.North.heated', 'TRUE'],
    ['causes.n.s.', 'notSaid'],
    ['layouts.*', 'yyMM-lot'],
    ['columns.least', ''],
    ['onOrder.1.month', 46_447],
    ['onOrder.1.count', 12],
    ['policy.age', 48],
    ['groupBy', 'null'],
    ['recovered', null],
  ];

  it('holds the same keys, with dots', () => {
    const settings = value(jointSettings(undefined, rows));
    expect(settings).toMatchObject({
      years: 5,
      money: { unitPrice: 410 },
      causes: { 'n.s.': 'notSaid' },
      layouts: { '*': 'yyMM-lot' },
      columns: { least: '' },
      onOrder: [{ month: '2027-03', count: 12 }],
      policy: { age: 48 },
      groupBy: null,
      recovered: 0,
    });
    expect(settings.sites).toMatchObject({ 'St. Olav': { coldest: -28 }, North: { heated: true } });
  });

  it('gives way to the file, key by key', () => {
    const settings = value(jointSettings({ money: { currency: 'NKR' }, years: 2, policy: 'failure' }, rows));
    expect(settings.money).toMatchObject({ unitPrice: 410, currency: 'NKR' });
    expect([settings.years, settings.policy]).toEqual([2, 'failure']);
  });

  it('is written so that it reads back as it was', () => {
    const settings = value(
      settingsFrom({
        tab: '2026',
        headerRow: 3,
        columns: { serial: 'S/N', least: '' },
        causes: { 'no start': 'failed', 'a.b': 'good' },
        sites: { 'St. Olav': { coldest: -30, average: 4, parked: true } },
        recordsSince: '2022-06-30',
        policy: { age: 40 },
        fleetChanges: [{ month: '2027-03', count: -4, site: 'North', type: '6T' }],
        money: { unitPrice: 410.5, failureCost: null },
        ask: '4in5',
      }),
    );
    expect(value(jointSettings(undefined, settingsToRows(settings)))).toEqual(settings);
  });

  it.each([
    [[['yeers', 3]], 'the settings have no key "yeers"; the nearest known one is "years"'],
    [
      [['money.', 3]],
      'row 1 of the settings sheet has the key "money."; allowed is a key such as years, or one with dots such as money.unitPrice',
    ],
    [[['years', 'five']], 'the setting years is "five"; allowed is a whole number, 1 to 10'],
  ])('%j is refused by name', (given, expected) => {
    expect(sentence(jointSettings(undefined, given))).toBe(expected);
  });

  it('takes no key for anything but a name', () => {
    const raw = value(settingsFromRows([['causes.__proto__', 'good']]));
    expect(Object.keys(raw.causes as object)).toEqual(['__proto__']);
    expect(({} as Record<string, unknown>).good).toBeUndefined();
  });
});
