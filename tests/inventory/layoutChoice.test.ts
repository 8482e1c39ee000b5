import { describe, expect, it } from 'vitest';
import type { LayoutChoice } from '../../src/inventory/layoutChoice.ts';
import { layoutChoices } from '../../src/inventory/layoutChoice.ts';
import { AS_OF, day, fleet, inventoryFrom, plain } from './sheets.ts';

const counted = (codes: readonly (string | number)[]) => new Map(codes.map((code) => [code, 1]));

function choice(codes: readonly (string | number)[], others: readonly string[] = []): LayoutChoice {
  const all = new Map([
    ['9ZZ98', counted(codes)],
    ['8YY97', counted(others)],
  ]);
  return layoutChoices(all, {}, AS_OF).get('9ZZ98')!;
}

const months = Array.from(
  { length: 36 },
  (_, index) => [2020 + Math.floor(index / 12), (index % 12) + 1] as const,
);
const two = (value: number): string => String(value).padStart(2, '0');

describe('the layout of a maker', () => {
  it.each([
    ['MMyy-lot', (year: number, month: number) => `${two(month)}${two(year % 100)}-7`],
    ['yyMM-lot', (year: number, month: number) => `${two(year % 100)}${two(month)}-7`],
    ['kkWW-lot', (year: number, month: number) => `${two(year % 100)}${two(4 * month)}`],
    [
      'yyooo-lot',
      (year: number, month: number) => `${two(year % 100)}${String(30 * month).padStart(3, '0')}`,
    ],
    ['yyyyMMdd-lot', (year: number, month: number) => `${year}${two(month)}15`],
    ['Ay-lot', (year: number, month: number) => `${'ABCDEFGHJKLM'[month - 1]}${year % 10}`],
    ['a12y-lot', (year: number, month: number) => `${'ABCDEFGHIJKL'[month - 1]}${year % 10}`],
    ['Ayy-lot', (year: number, month: number) => `${'ABCDEFGHJKLM'[month - 1]}${two(year % 100)}-9`],
  ])('%s is known by its codes', (layout, code) => {
    const chosen = choice(months.map(([year, month]) => code(year, month)));
    expect(chosen.layout.text).toBe(layout);
    expect(chosen).toMatchObject({ read: 36, all: 36, count: 36, named: false });
    expect(chosen.rival).toBeUndefined();
  });

  it('is a question where two read nearly all, to other dates', () => {
    expect(choice(['J4', 'K4', 'L3', 'A5']).rival?.text).toBe('a12y-lot');
    expect(choice(['2403', '2311', '2207']).rival?.text).toBe('kkWW-lot');
    expect(choice(['A4', 'B4', 'C3', 'A5']).rival).toBeUndefined();
  });

  it('follows the other makers where few codes fit several alike', () => {
    const weeks = months.map(([year, month]) => `${two(year % 100)}${two(4 * month)}`);
    expect(choice(['2403', '2311'], weeks).layout.text).toBe('kkWW-lot');
    expect(choice(['2403', '2311']).layout.text).toBe('yyMM-lot');
  });

  it('is not shown by codes of another century', () => {
    expect(choice(['0399', '0598', '0797', '2403']).layout.text).toBe('yyMM-lot');
  });

  it('is what the settings name, for one maker or for all others', () => {
    const all = new Map([
      ['9ZZ98', counted(['2403'])],
      ['8YY97', counted(['2403'])],
    ]);
    const named = layoutChoices(all, { '9ZZ98': 'MMyy', '*': 'kkWW' }, AS_OF);
    expect([...named.values()].map(({ layout, named: isNamed }) => [layout.text, isNamed])).toEqual([
      ['MMyy', true],
      ['kkWW', true],
    ]);
  });
});

describe('codes in a sheet', () => {
  it('are read by maker, each in its layout', () => {
    const other = months
      .slice(0, 12)
      .map(([year, month], index) =>
        plain({ Maker: '8YY97', 'Date code': `${two(year % 100)}${two(month)}-${index}` }, 300 + index),
      );
    const { batteries, layouts } = inventoryFrom([...fleet(12), ...other]);
    expect(layouts).toEqual({ '9ZZ98': 'MMyy-lot', '8YY97': 'yyMM-lot' });
    expect(batteries[0]).toMatchObject({ made: day('2023-10-01'), lot: '117' });
    expect(batteries[12]).toMatchObject({ made: day('2020-01-01'), lot: '0' });
  });

  it('give way to a column of dates made, and to a column of lots', () => {
    const rows = fleet().map((row) => ({ ...row, 'Date made': day('2023-11-20'), Lot: 'L7' }));
    expect(inventoryFrom(rows).batteries[0]).toMatchObject({ made: day('2023-11-20'), lot: 'L7' });
  });
});
