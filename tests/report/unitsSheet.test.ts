import { describe, expect, it } from 'vitest';
import { failureWithin } from '../../functions/life.ts';
import { monthsInService } from '../../functions/service.ts';
import type { Sheet } from '../../src/report/sheet.ts';
import { columnLetters } from '../../src/report/sheet.ts';
import { crossingText } from '../../src/report/trendCell.ts';
import { unitsPlace, unitsSheet } from '../../src/report/unitsSheet.ts';
import type { TestTrend } from '../../src/service/battery.ts';
import { namesForFile, sheetForFile } from '../../taskpane/host/xlsx/sheetFile.ts';
import { inventedFleet } from '../planning/inventedFleet.ts';
import { reportFacts } from './reportFacts.ts';

const { batteries, lives } = inventedFleet();
const trend = { chance12: 0.97, chance24: 0.99, crossingMonths: { best: 9, low: -2, high: 400 } };
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

  it('says when the tests reach the least accepted, with the band', () => {
    expect(shown(HEADS_ROW + 1, 'Tests reach the least accepted in')).toBe('2027-03 (2026-04 to later)');
    expect(shown(HEADS_ROW + 2, 'Tests reach the least accepted in')).toBe('');
    const told = (crossingMonths?: TestTrend['crossingMonths']): string =>
      crossingText({ ...batteries[0]!, trend: { chance12: 0, chance24: 0, crossingMonths } }, facts.asOf);
    expect(told()).toBe('not surely falling');
    expect(told({ best: 121, low: 40, high: 900 })).toBe('more than 10 years on');
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

  it('prints what fits a page to read; long reasons and sheet rows stay on the sheet', () => {
    expect(sheet.printedColumns).toBe(column('Proposed fiscal year') + 1);
    const printed = sheet.widths.slice(0, sheet.printedColumns).reduce((sum, width) => sum + width, 0);
    expect(printed).toBeLessThan(180);
    const names = namesForFile(sheet).map(({ name, range }) => [name, range]);
    expect(names).toEqual([
      ['_xlnm.Print_Area', `'Units'!$A$1:$${columnLetters(sheet.printedColumns! - 1)}$${sheet.rows.length}`],
      ['_xlnm.Print_Titles', "'Units'!$3:$3"],
    ]);
  });

  it('keeps a width for every column', () => {
    expect(sheet.widths).toHaveLength(sheet.rows[HEADS_ROW]!.length);
  });
});

describe('the unit list with live formulas', () => {
  const dated = batteries.map((each) => ({
    ...each,
    installed: each.row % 2 === 0 ? facts.asOf - 1000 : undefined,
  }));
  const live = reportFacts({}, { batteries: dated, lives }, [], { liveFormulas: true });
  const list = unitsSheet(live, 'Units');
  const first = column('Installed', list);

  it("has its own columns behind the plan's, and none without the setting", () => {
    expect(list.rows[HEADS_ROW]!.slice(0, first).map((cell) => cell?.value)).toEqual(
      sheet.rows[HEADS_ROW]!.map((cell) => cell?.value),
    );
    expect(sheet.rows.flat().some((cell) => cell?.formula !== undefined)).toBe(false);
    expect(list.widths).toHaveLength(list.rows[HEADS_ROW]!.length);
  });

  it('asks the cell functions for what they keep: the answers of the same functions', () => {
    const row = list.rows.findIndex((cells) => cells[first]?.value === facts.asOf - 1000);
    const [installed, out, months, chance] = list.rows[row]!.slice(first);
    const [day, shape, scale] = list.rows[1]!.slice(first).map((cell) => cell!.value as number);
    const [answeredMonths] = monthsInService([[installed!.value]], [[day]], [[out!.value]]);
    expect(months!.value).toBe(answeredMonths![0]);
    expect(chance!.value).toBe(failureWithin([[months!.value]], [[12]], [[shape]], [[scale]])[0]![0]);
    const letter = columnLetters(first);
    expect(months!.formula).toMatch(
      new RegExp(`^CRANK\\.MONTHSINSERVICE\\(${letter}${row + 1},\\$${letter}\\$2,`),
    );
  });

  it('is written as spreadsheets name functions of add-ins', () => {
    const formulas = [...sheetForFile(list).cells!.values()].flatMap(({ formula }) => formula ?? []);
    expect(formulas.length).toBeGreaterThan(100);
    expect(
      formulas.every((formula) => /^_xldudf_CRANK_(MONTHSINSERVICE|FAILUREWITHIN)\(/.test(formula)),
    ).toBe(true);
  });

  it('leaves a battery of unknown installation empty', () => {
    const row = list.rows.findIndex((cells, at) => at > HEADS_ROW && cells[first]?.value === '');
    expect(list.rows[row]!.slice(first).map((cell) => cell!.value)).toEqual(['', '', '', '']);
  });
});
