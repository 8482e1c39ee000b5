import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/basics/calendar.ts';
import { isPlaceholder } from '../../src/inventory/cells.ts';
import type { Cell } from '../../src/inventory/inventory.ts';
import { readDate, shownOrder } from '../../src/inventory/readDate.ts';
import { readNumber } from '../../src/inventory/readNumber.ts';
import { AS_OF, day } from './sheets.ts';

describe('a date cell', () => {
  const read = (cell: Cell, order?: 'dayFirst' | 'monthFirst'): string => {
    const {
      day: first,
      last,
      quirk,
    } = readDate(cell, order === undefined ? { asOf: AS_OF } : { asOf: AS_OF, order });
    const said =
      first === undefined ? 'none' : first === last ? isoDay(first) : `${isoDay(first)} to ${isoDay(last!)}`;
    return quirk === undefined ? said : `${said}, ${quirk}`;
  };

  it.each<[Cell, string]>([
    [45_000, '2023-03-15'],
    [45_000.75, '2023-03-15'],
    ['2024-03-05', '2024-03-05'],
    ['2024-03-05T10:00', '2024-03-05'],
    ['2024-02-30', 'none, unreadable date'],
    ['5 Mar 24', '2024-03-05, text date'],
    ['5-Mar-2024', '2024-03-05, text date'],
    ['1st May 2020', '2020-05-01, text date'],
    ['March 5, 2024', '2024-03-05, text date'],
    ['2024/3/5', '2024-03-05, text date'],
    ['13/04/2026', '2026-04-13, text date'],
    ['04/13/2026', '2026-04-13, text date'],
    ['4.4.26', '2026-04-04, text date'],
    ['5-5-99', '1999-05-05, text date'],
    ['03/04/2026', 'none, text date that reads two ways'],
    ['31/31/2026', 'none, unreadable date'],
    ['Mar-24', '2024-03-01 to 2024-03-31, text date'],
    ['2024-02', '2024-02-01 to 2024-02-29, text date'],
    ['03/2024', '2024-03-01 to 2024-03-31, text date'],
    ['2024', 'none, year only'],
    [2019, 'none, year only'],
    [20_240_315, '2024-03-15, date written as a number'],
    ['20240315', '2024-03-15, date written as a number'],
    [0, 'none, placeholder'],
    [1, 'none, placeholder'],
    [2_958_465, 'none, placeholder'],
    ['TBD', 'none, placeholder'],
    ['01/01/1900', 'none, placeholder'],
    ['Marchish 24', 'none, unreadable date'],
    ['soon', 'none, unreadable date'],
    [{ error: '#N/A' }, 'none, error in the cell'],
    [true, 'none, unreadable date'],
    ['  ', 'none'],
    [null, 'none'],
  ])('%j is %s', (cell, expected) => {
    expect(read(cell)).toBe(expected);
  });

  it('that reads two ways is read in the order that is shown', () => {
    expect(read('03/04/2026', 'dayFirst')).toBe('2026-04-03, text date');
    expect(read('03/04/2026', 'monthFirst')).toBe('2026-03-04, text date');
    expect(read('13/04/2026', 'monthFirst')).toBe('2026-04-13, text date');
  });

  it('shows the order of its column only where all agree', () => {
    expect(shownOrder(['03/04/2026', '13/04/2026 08:00'])).toEqual({ order: 'dayFirst', count: 1 });
    expect(shownOrder(['03/04/2026', '04/13/2026'])).toEqual({ order: 'monthFirst', count: 1 });
    expect(shownOrder(['13/04/2026', '04/13/2026'])).toBeUndefined();
    expect(shownOrder(['03/04/2026', 45_000, null])).toBeUndefined();
  });
});

describe('a number cell', () => {
  it.each<[Cell, number | undefined, string | undefined]>([
    [12.6, 12.6, undefined],
    ['12.60', 12.6, 'number stored as text'],
    ['12.6V', 12.6, 'number with its unit'],
    ['12.6 volts', 12.6, 'number with its unit'],
    ['1100 CCA', 1100, 'number with its unit'],
    ['1100A (EN)', 1100, 'number with its unit'],
    ['12,6', 12.6, 'decimal comma'],
    ['12,650', 12.65, 'decimal comma'],
    ['12,6 V', 12.6, 'decimal comma'],
    ['1,100', 1100, 'number stored as text'],
    ['1 100', 1100, 'number stored as text'],
    ["1'100", 1100, 'number stored as text'],
    ['1.234,5', 1234.5, 'decimal comma'],
    ['−12.5', -12.5, 'number stored as text'],
    ['-5 °C', -5, 'number with its unit'],
    ['50 F', 10, 'number with its unit'],
    ['12.6 or so', undefined, 'unreadable number'],
    ['12.6 kg', undefined, 'unreadable number'],
    [true, undefined, 'unreadable number'],
    [9999, undefined, 'placeholder'],
    ['n/a', undefined, 'placeholder'],
    [{ error: '#DIV/0!' }, undefined, 'error in the cell'],
    ['', undefined, undefined],
  ])('%j is %s, %s', (cell, value, quirk) => {
    const read = readNumber(cell);
    expect(read.value).toBe(value);
    expect(read.quirk).toBe(quirk);
  });
});

describe('a placeholder', () => {
  it.each<[Cell, boolean]>([
    ['N/A', true],
    [' tbd ', true],
    ['9999', true],
    [99_999, true],
    ['—', true],
    ['none', true],
    ['A9999', false],
    [999, false],
    [day('2024-01-01'), false],
  ])('%j: %s', (cell, expected) => {
    expect(isPlaceholder(cell)).toBe(expected);
  });
});
