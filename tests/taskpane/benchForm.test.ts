import { describe, expect, it } from 'vitest';
import { problemText } from '../../src/basics/problemText.ts';
import { EMPTY_BENCH } from '../../taskpane/bench/benchForm.ts';
import type { ReadingName } from '../../taskpane/bench/readReadings.ts';
import { readReadings } from '../../taskpane/bench/readReadings.ts';

const read = (name: ReadingName, typed: string) => {
  const { values, wrong } = readReadings({ ...EMPTY_BENCH.readings, [name]: typed });
  const refused = wrong[name];
  return refused !== undefined && !refused.ok ? problemText(refused.problem) : values[name];
};

describe('what is typed at the bench', () => {
  it.each([
    ['restVolts', '12,65', 12.65],
    ['restVolts', '12.65 V', 12.65],
    ['restVolts', '12.65 volts', 12.65],
    ['celsius', '15 °C', 15],
    ['celsius', '59 F', 15],
    ['celsius', '15 deg C', undefined],
    ['celsius', '-5°', -5],
    ['reading', '1,100 CCA', 1100],
    ['reading', '1100 A', 1100],
    ['reading', '1100 A (EN)', 1100],
    ['least', '9.6 V', 9.6],
    ['least', '980 A', 980],
    ['hoursAtRest', '8', 8],
  ] as const)('%s %s is read', (name, typed, value) => {
    if (value === undefined) expect(read(name, typed)).toContain(typed);
    else expect(read(name, typed)).toBeCloseTo(value, 9);
  });

  it.each([
    ['restVolts', '55 F'],
    ['restVolts', '12.8 A'],
    ['restVolts', '1260 mV'],
    ['celsius', '15 V'],
    ['reading', '1100 V'],
    ['reading', '54 F'],
    ['loadVolts', '9.9 A'],
    ['least', '54 F'],
    ['hoursAtRest', '8 C'],
  ] as const)('%s %s is refused: it is no reading of that field', (name, typed) => {
    expect(read(name, typed)).toContain(`"${typed}"`);
  });

  it.each([
    ['restVolts', '1260'],
    ['restVolts', '1260 mV'],
    ['restVolts', '17'],
    ['loadVolts', '9600 mV'],
    ['loadVolts', '990'],
  ] as const)('%s %s: what is allowed, and what it looks like', (name, typed) => {
    expect(read(name, typed)).toMatch(
      /; allowed is (6|0) to 16 V, written like (12|9)\.60, not \d+ and not \d+ mV$/,
    );
  });

  it('of a whole set is told as that', () => {
    expect(read('restVolts', '25.2')).toContain('the voltage of a whole 24 V set');
  });

  it('is refused under the name of its field, with the unit that belongs there', () => {
    expect(read('restVolts', '55 F')).toBe('Rest voltage, V must be a number; given "55 F"');
  });
});
