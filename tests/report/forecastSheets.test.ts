import { describe, expect, it } from 'vitest';
import { forecastSheets } from '../../src/report/forecastSheets.ts';
import type { ReportFacts } from '../../src/report/reportFacts.ts';
import { columnLetters } from '../../src/report/sheet.ts';
import { freeSheetName } from '../../src/report/sheetName.ts';
import { inventedFleet } from '../planning/inventedFleet.ts';
import { fleetWithGaps, PRICED, reportFacts } from './reportFacts.ts';
import { sheetText } from './sheetText.ts';

const wholeText = (facts: ReportFacts): string =>
  forecastSheets(facts, ['Inventory']).map(sheetText).join('\n');

describe('forecast sheets as text', () => {
  it('renewed on failure, no price', async () => {
    await expect(wholeText(reportFacts())).toMatchFileSnapshot('../golden/plain.txt');
  });

  it('with prices, lead time, recovery and orders', async () => {
    await expect(wholeText(reportFacts(PRICED))).toMatchFileSnapshot('../golden/priced.txt');
  });

  it('whole sets, own life for each site, gaps in the inventory, things to check', async () => {
    const finding = {
      kind: 'unreadable code',
      row: 12,
      column: 'Date code',
      given: '=1+1',
      done: 'not read',
    } as const;
    const facts = reportFacts(
      { wholeSets: true, groupBy: 'site', matesReused: 0.3, ask: '19in20' },
      fleetWithGaps(),
      [finding],
    );
    await expect(wholeText(facts)).toMatchFileSnapshot('../golden/gaps.txt');
  });
});

describe('forecast sheets', () => {
  it('say how many texts could not be shown as they are', () => {
    const { batteries, lives } = fleetWithGaps();
    const [first, ...others] = batteries;
    const bell = { ...first!, serial: 'S\u0007', whereabouts: 'inService' as const };
    const [forecast] = forecastSheets(reportFacts({}, { batteries: [bell, ...others], lives }), []);
    const said = forecast!.rows.flat().flatMap((cell) => (cell === null ? [] : [String(cell.value)]));
    expect(said.filter((text) => text.startsWith('1 text of the inventory holds'))).toHaveLength(1);
    const [plain] = forecastSheets(reportFacts(), []);
    expect(plain!.rows.flat().some((cell) => String(cell?.value).includes('no cell can hold'))).toBe(false);
  });

  it('names fiscal years and orders dates as the settings say, in every label and sentence', () => {
    const asked = { fiscalFirstMonth: 10, fiscalLabel: 'both' } as const;
    const facts = reportFacts(asked, inventedFleet(), [], { dateShown: 'dayFirst' });
    const sheets = forecastSheets(facts, []);
    const texts = sheets.flatMap(({ rows }) => rows.flat().map((each) => String(each?.value ?? '')));
    expect(texts.some((text) => /FY\d{4}(?!\/\d\d)/.test(text))).toBe(false);
    expect(texts).toEqual(expect.arrayContaining(['FY2026/27', 'FY2026/27 Q1', 'FY2026/27 expected']));
    expect(texts.filter((text) => /\d{4}-\d\d-\d\d/.test(text))).toEqual([]);
    expect(texts.filter((text) => text.startsWith('As of 30/06/2026'))).toHaveLength(2);
    expect(sheets.map(({ dateShown }) => dateShown)).toEqual(sheets.map(() => 'dayFirst'));
  });

  it('a second run takes names of its own', () => {
    const names = forecastSheets(reportFacts(), ['Forecast', 'forecast UNITS']).map(({ name }) => name);
    expect(names).toEqual(['Forecast (2)', 'Forecast units (2)', 'Rows to check', 'Store list']);
  });

  it('uses only functions that every spreadsheet has had for long', () => {
    const used = forecastSheets(reportFacts(PRICED, fleetWithGaps()), []).flatMap(({ rows }) =>
      rows.flatMap((row) =>
        row.flatMap((cell) =>
          [...(cell?.formula ?? '').matchAll(/\b([A-Z]{2,})\(/g)].map((found) => found[1]!),
        ),
      ),
    );
    expect([...new Set(used)].sort()).toEqual([
      'ABS',
      'AND',
      'CHOOSE',
      'EDATE',
      'EOMONTH',
      'IF',
      'ISNUMBER',
      'MAX',
      'MIN',
      'ROUND',
      'ROUNDUP',
      'SUM',
      'SUMPRODUCT',
      'VLOOKUP',
    ]);
  });

  it('the cached value of every sum is the sum of its cells', () => {
    for (const sheet of forecastSheets(reportFacts(PRICED), [])) {
      for (const row of sheet.rows) {
        for (const cell of row) {
          const block = /^SUM\(([A-Z]+)(\d+):[A-Z]+(\d+)\)$/.exec(cell?.formula ?? '');
          if (block === null) continue;
          const column =
            sheet.rows[0]!.length >= 0
              ? [...Array(30).keys()].findIndex((c) => columnLetters(c) === block[1])
              : -1;
          const cells = sheet.rows
            .slice(Number(block[2]) - 1, Number(block[3]))
            .map((each) => Number(each[column]?.value ?? 0));
          expect(Number(cell!.value)).toBeCloseTo(
            cells.reduce((sum, value) => sum + value, 0),
            6,
          );
        }
      }
    }
  });
});

describe('freeSheetName', () => {
  it('is legal whatever was wanted, and not taken yet', () => {
    expect(freeSheetName("'a/b:c*'", [])).toBe('a b c');
    expect(freeSheetName('Forecast', ['FORECAST', 'Forecast (2)'])).toBe('Forecast (3)');
    expect(freeSheetName('', [])).toBe('Sheet');
    expect(freeSheetName('x'.repeat(60), ['x'.repeat(31)])).toHaveLength(31);
    expect(freeSheetName('🛻'.repeat(40), [])).toBe('🛻'.repeat(15));
    expect(freeSheetName(`a${'🛻'.repeat(40)}`, [])).toHaveLength(31);
  });

  it('takes none of the names that spreadsheets keep for themselves, and no half of a character', () => {
    expect(freeSheetName('History', [])).toBe('History (2)');
    expect(freeSheetName('a\uD83Db\u0007', [])).toBe('a b');
    expect(freeSheetName(`${'x'.repeat(30)}'y`, [])).toBe('x'.repeat(30));
    expect(freeSheetName('Depot Å', ['DEPOT A\u030A'])).toBe('Depot Å (2)');
  });
});
