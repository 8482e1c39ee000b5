import { describe, expect, it } from 'vitest';
import type { BenchAnswer } from '../../src/cranking/benchAnswer.ts';
import type { BenchEntry } from '../../src/cranking/benchEntry.ts';
import { benchTest } from '../../src/cranking/benchTest.ts';
import { CHARGE_HEADS, chargeRow, TEST_HEADS, testRow } from '../../src/inventory/benchRecord.ts';
import { caseLine } from '../../src/inventory/caseLine.ts';
import type { Cell } from '../../src/inventory/inventory.ts';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import type { Battery } from '../../src/service/battery.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { day, fleet, found, inventoryFrom, plain } from './sheets.ts';

const WHOLE = { case: 'no', posts: 'no', heat: 'no' } as const;
const good: BenchEntry = {
  ...{ look: WHOLE, alone: 'yes', restVolts: 12.8, hoursAtRest: 9, celsius: 15 },
  ...{ reading: 1050, least: 880, construction: 'AGM' },
};
const weak: BenchEntry = { ...good, reading: 600 };
const answered = (entry: BenchEntry): BenchAnswer => valueOf(benchTest(entry)).answer!;
const record = (date: string, entry: BenchEntry): Cell[] =>
  testRow({
    ...{ date: day(date), serial: 'A1001', vehicle: 'NF-1', place: '2', entry, answer: answered(entry) },
    ...{ tester: 'T1', initials: 'nn' },
  });

const own = { OCV: 12.8, 'CCA meas.': 1020, 'Min CCA': 880, Tested: day('2026-03-01') };
function after(tests: readonly Cell[][], charges: readonly Cell[][] = [], settings: GivenSettings = {}) {
  const inventory = inventoryFrom([plain(own), ...fleet(4)], {
    tests: { rows: [[...TEST_HEADS], ...tests], name: 'Tests' },
    charges: { rows: [[...CHARGE_HEADS], ...charges], name: 'Charges' },
    settings,
  });
  return { inventory, battery: inventory.batteries[0] as Battery };
}

describe('a test recorded at the bench', () => {
  it('has a cell for each head', () => {
    expect(record('2026-06-01', good)).toHaveLength(TEST_HEADS.length);
    expect(
      chargeRow({ date: day('2026-06-01'), serial: 'A1001', isFull: true, charger: 'C2', initials: 'nn' }),
    ).toEqual([day('2026-06-01'), 'A1001', '', 'yes', 'C2', 'nn']);
  });

  it('changes the verdict in the inventory, to the word of the bench', () => {
    expect(after([]).battery.verdict).toBe('Serviceable');
    const { battery, inventory } = after([record('2026-06-01', weak)]);
    expect(battery).toMatchObject({
      verdict: answered(weak).word,
      readings: { testedOn: day('2026-06-01'), reading: 600, least: 880, restVolts: 12.8, celsius: 15 },
    });
    expect(answered(weak).word).toBe('Awaiting charge');
    expect(inventory.notes).toEqual([]);
  });

  it('condemns after the charge that is recorded between two failing tests', () => {
    const first = record('2026-06-01', weak);
    const again = { ...weak, retest: 1, testedOn: day('2026-06-01'), chargedOn: day('2026-06-03') } as const;
    const second = record('2026-06-05', again);
    const charge = (isFull: boolean) => chargeRow({ date: day('2026-06-03'), serial: 'A1001', isFull });
    expect(answered(again).word).toBe('Condemned');
    expect(after([first, second], [charge(true)]).battery.verdict).toBe('Condemned');
    expect(after([first, second], [charge(false)]).battery.verdict).toBe('Awaiting charge');
    const { inventory } = after([first, second], [charge(true)]);
    expect(found(inventory, 'retest not in the order of dates')).toEqual([]);
  });

  it.each([
    ['case', { look: { case: 'yes' } }],
    ['case, posts', { look: { case: 'yes', posts: 'yes' } }],
  ] as const)('condemns by the damage seen: %s', (damage, entry) => {
    const row = record('2026-06-01', entry);
    expect(row[4]).toBe(damage);
    expect(after([row]).battery.verdict).toBe('Condemned');
  });

  it.each([
    ['in its set', { alone: 'no' }],
    ['in frost', { frost: 'yes' }],
    ['rested an hour', { hoursAtRest: 1 }],
    ['hot', { look: { ...WHOLE, heat: 'yes' } }],
  ] as const)('with readings that do not count, %s, judges nothing by them', (_, change) => {
    const row = record('2026-06-01', { ...weak, ...change });
    expect(row[13]).toContain('Read and not counted: 12.8 V, 600 A');
    const { battery } = after([row]);
    expect(battery.verdict).toBeUndefined();
    expect(battery.readings?.reading).toBeUndefined();
  });

  it('keeps degrees Celsius where the inventory itself is in Fahrenheit', () => {
    const settings: GivenSettings = { temperatureUnit: 'F' };
    expect(after([record('2026-06-01', good)], [], settings).battery.readings?.celsius).toBe(15);
  });

  it('reads back load-test volts against the floor', () => {
    const loaded = { ...good, reading: undefined, celsius: 21.2, loadVolts: 9.1 };
    expect(after([record('2026-06-01', loaded)]).battery.verdict).toBe(answered(loaded).word);
  });
});

describe('the line for the case', () => {
  const facts = { made: day('2024-03-01'), testedOn: day('2026-06-30') };

  it('says when to charge a serviceable one again, and sooner in a warm store', () => {
    const entry = { ...good, chargedOn: day('2026-06-28') };
    const answer = answered(entry);
    const start = 'made 2024-03, tested 2026-06-30, 12.80 V, 1050 A, Serviceable';
    expect(caseLine({ ...facts, entry, answer })).toBe(`${start}, charge again by 2026-12-28`);
    expect(caseLine({ ...facts, entry, answer, average: 40 })).toMatch(/charge again by 2026-1[01]-/);
    expect(caseLine({ ...facts, entry: good, answer })).toBe(`${start}, last charge not known`);
  });

  it('asks for a charge at once, or for nothing', () => {
    expect(caseLine({ ...facts, entry: weak, answer: answered(weak) })).toMatch(
      /600 A, Awaiting charge, charge now$/,
    );
    const inSet = { ...good, alone: 'no' } as const;
    expect(caseLine({ ...facts, made: undefined, entry: inSet, answer: answered(inSet) })).toBe(
      'made ?, tested 2026-06-30, Not judged',
    );
  });
});
