import { describe, expect, it } from 'vitest';
import type { Sheet } from '../../src/report/sheet.ts';
import { unitsPlace, unitsSheet } from '../../src/report/unitsSheet.ts';
import { inventedFleet } from '../planning/inventedFleet.ts';
import { reportFacts } from './reportFacts.ts';

const { batteries, lives } = inventedFleet();
const trend = { chance12: 0.97, chance24: 0.99 };
const facts = reportFacts(
  {},
  { batteries: batteries.map((each) => (each.row === 40 ? { ...each, trend } : each)), lives },
);
const sheet = unitsSheet(facts, 'Units');

const HEADS_ROW = 2;
const column = (title: string, { rows }: Sheet = sheet): number =>
  rows[HEADS_ROW]!.findIndex((cell) => cell?.value === title);
const shown = (row: number, title: string): unknown => sheet.rows[row]![column(title)]!.value;

describe('the unit list', () => {
  it('shows the chance by test trend right after that by age, and goes by the worse', () => {
    expect(shown(HEADS_ROW + 1, 'Serial')).toBe('S40');
    expect(shown(HEADS_ROW + 1, 'Chance in 12 months by test trend')).toBe(0.97);
    expect(shown(HEADS_ROW + 1, 'Chance in 24 months by test trend')).toBe(0.99);
    expect(column('Chance in 12 months by test trend')).toBe(column('Chance in 24 months') + 1);
  });

  it('leaves the trend empty where there is none', () => {
    expect(shown(HEADS_ROW + 2, 'Chance in 12 months by test trend')).toBe('');
    expect(shown(HEADS_ROW + 2, 'Chance in 24 months by test trend')).toBe('');
  });

  it('says where the expected counts of a year stand', () => {
    const place = unitsPlace(facts, 'Units');
    facts.plan.years.forEach(({ label }, year) => {
      const letter = String.fromCharCode(65 + column(`${label} expected`));
      expect(place.column(year)).toBe(`$${letter}$4:$${letter}$123`);
    });
  });

  it('keeps a width for every column', () => {
    expect(sheet.widths).toHaveLength(sheet.rows[HEADS_ROW]!.length);
  });
});
