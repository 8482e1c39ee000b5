import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { forecastSheets } from '../../src/report/forecastSheets.ts';
import type { Sheet, SheetCell } from '../../src/report/sheet.ts';
import { evaluateFormulas } from '../../taskpane/host/workbook/formulas.ts';
import type { HeadlessWorkbook } from '../../taskpane/host/workbook/headlessWorkbook.ts';
import { startHeadless, stopHeadless } from '../../taskpane/host/workbook/headlessWorkbook.ts';
import { AS_OF } from '../planning/inventedFleet.ts';
import { PRICED, reportFacts } from './reportFacts.ts';

let workbook: HeadlessWorkbook;
beforeAll(() => {
  workbook = startHeadless();
});
afterAll(() => stopHeadless(workbook));

const texts = ({ rows }: Sheet): string[] => rows.flat().map((each) => String(each?.value ?? ''));

/** The rows of the first block that has a column of this name, by the names of its columns. */
function block({ rows }: Sheet, column: string): Record<string, SheetCell>[] {
  const head = rows.findIndex((row) => row.some((each) => each?.value === column));
  const names = rows[head]!.map((each) => String(each?.value));
  const end = rows.findIndex((row, at) => at > head && row[0]?.value === 'All years');
  return rows
    .slice(head + 1, end)
    .map((row) => Object.fromEntries(row.map((each, at) => [names[at]!, each!])));
}

const forecast = (settings: typeof PRICED): Sheet => forecastSheets(reportFacts(settings), [])[0]!;

describe('dates of orders', () => {
  it('are left out where nothing is ordered, above and below', () => {
    const sheet = forecast({ ...PRICED, onOrder: [{ month: '2026-07', count: 900 }] });
    for (const column of ['Batteries needed', 'Order goes out'])
      for (const row of block(sheet, column)) {
        expect(row['Units to order']!.value).toBe(0);
        expect(row['Order by']!.value).toBe('');
      }
    expect(block(sheet, 'Order goes out').map((row) => row['Order goes out']!.value)).toEqual(['', '', '']);
  });

  it('are the last of a short month where the day is missing in it, in the workbook of the page too', async () => {
    const sheet = forecast({ ...PRICED, onOrder: [], leadMonths: 3, safetyMonths: 1 });
    const [first] = block(sheet, 'Order goes out');
    const text = first!['Order by']!.formula!;
    const entered = text
      .replaceAll('(lead_months+safety_months)', '4')
      .replace(/IF\([A-Z]+\d+>/, 'IF(1>')
      .replaceAll(/(?<=\()[A-Z]+\d+(?=,)/g, String(AS_OF));
    expect(await evaluateFormulas(workbook, [], undefined, [`=${entered}`])).toEqual([
      first!['Order by']!.value,
    ]);
  });

  it('say why money can stand in a year that orders nothing, only where money is charged to the order', () => {
    const said = (chargeTo: 'order' | 'need'): boolean =>
      texts(forecast({ ...PRICED, chargeTo })).some((text) =>
        text.startsWith('Units stand in the year that'),
      );
    expect([said('order'), said('need')]).toEqual([true, false]);
  });
});
