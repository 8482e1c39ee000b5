import { beforeAll, describe, expect, it } from 'vitest';
import { forecastSheets } from '../../src/report/forecastSheets.ts';
import type { ReportFacts } from '../../src/report/reportFacts.ts';
import type { Sheet, SheetCell } from '../../src/report/sheet.ts';
import { forecastFile } from '../../taskpane/host/workbookForecastFile.ts';
import { AS_OF } from '../planning/inventedFleet.ts';
import { fleetWithGaps, PRICED, reportFacts } from '../report/reportFacts.ts';
import { sheetByLibreOffice, withoutKeptValues } from './libreOffice.ts';

const SOURCE = { sheetName: 'Inventory', rows: [['serial']] };
const ERROR = /^(#|Err:)/;

/** The forecast with other values in some of its input cells; the kept values of its formulas are then wrong. */
function withInputs(sheet: Sheet, inputs: Readonly<Record<string, number>>): Sheet {
  const places = new Map(sheet.names.map(({ name, row, column }) => [`${row},${column}`, name]));
  const changed = (cell: SheetCell | null, row: number, column: number): SheetCell | null => {
    const value = inputs[places.get(`${row},${column}`) ?? ''];
    return cell === null || value === undefined ? cell : { ...cell, value };
  };
  return {
    ...sheet,
    rows: sheet.rows.map((cells, row) => cells.map((cell, column) => changed(cell, row, column))),
  };
}

async function fileOf(
  facts: ReportFacts,
  inputs: Readonly<Record<string, number>> = {},
): Promise<Uint8Array> {
  const [forecast, ...others] = forecastSheets(facts, ['Inventory']);
  return forecastFile(SOURCE, [withInputs(forecast!, inputs), ...others], AS_OF);
}

/** The rows under a head that begins with a word, up to its total. */
function yearRows(rows: readonly string[][], block: string): string[][] {
  const start = rows.findIndex((row) => row[0]!.startsWith(block));
  const body = rows.slice(start).filter((row) => /^FY\d{4}$/.test(row[0]!));
  return body.slice(0, 3);
}

const rounded = (values: readonly number[]): number[] => values.map((value) => Math.round(value * 100) / 100);

describe('the forecast in LibreOffice', () => {
  it('this check can fail: a kept value is shown until it is taken out', async () => {
    const bytes = await fileOf(reportFacts(PRICED), { unit_price: 1000 });
    const price = (book: Uint8Array): number =>
      Number(yearRows(sheetByLibreOffice(book, 'Forecast'), 'By fiscal year: money')[0]![1]);
    expect(price(bytes)).toBe(400);
    expect(price(withoutKeptValues(bytes))).toBe(1000);
  });

  describe('recalculated', () => {
    const facts = reportFacts(PRICED, fleetWithGaps());
    let rows: string[][];

    beforeAll(async () => {
      rows = sheetByLibreOffice(withoutKeptValues(await fileOf(facts)), 'Forecast');
    });

    it('shows no error and agrees with its unit list', () => {
      expect(rows.flat().filter((cell) => ERROR.test(cell))).toEqual([]);
      expect(rows.flat()).toContain('agrees with the unit list');
    });

    it('has the totals that the core computed', () => {
      const money = yearRows(rows, 'By fiscal year: money');
      const { years } = facts.plan;
      expect(rounded(money.map((row) => Number(row[2])))).toEqual(
        rounded(years.map(({ budget }) => budget!.cost)),
      );
      expect(rounded(money.map((row) => Number(row[6])))).toEqual(
        rounded(years.map(({ budget }) => budget!.net)),
      );
      expect(rounded(money.map((row) => Number(row[7])))).toEqual(
        rounded(years.map((year) => year.chargedToOrder!)),
      );
    });
  });

  it.each([
    ['price, price rise and stock', { unit_price: 523, price_rise: 0.07, stock_on_hand: 31 }],
    ['way of asking, recovery and lead time', { ask_for: 3, recovered_share: 0.35, lead_months: 11 }],
    ['stock to hold, refund and labour', { stock_to_hold: 25, core_refund: 21, labour_each: 44 }],
  ])(
    'with other %s it has the totals of a plan with those settings',
    async (_, inputs: Record<string, number>) => {
      const facts = reportFacts(PRICED);
      const rows = sheetByLibreOffice(withoutKeptValues(await fileOf(facts, inputs)), 'Forecast');
      const money = {
        ...PRICED.money!,
        unitPrice: inputs.unit_price ?? 400,
        rise: inputs.price_rise ?? 0.03,
        refund: inputs.core_refund ?? 8,
        labour: inputs.labour_each ?? 20,
      };
      const stock = inputs.stock_on_hand ?? 0;
      const shelf = Array.from({ length: stock }, (_each, i) => ({
        ...fleetWithGaps().batteries.at(-1)!,
        row: 2000 + i,
      }));
      const plain = (await import('../planning/inventedFleet.ts')).inventedFleet();
      const other = reportFacts(
        {
          ...PRICED,
          money,
          ask: inputs.ask_for === 3 ? '19in20' : 'expected',
          recovered: inputs.recovered_share ?? 0.2,
          leadMonths: inputs.lead_months ?? 5,
          stockTarget: inputs.stock_to_hold ?? 6,
        },
        { ...plain, batteries: [...plain.batteries, ...shelf] },
      );
      const block = yearRows(rows, 'By fiscal year: money');
      const orders = yearRows(rows, 'By fiscal year: what to order');
      const { years } = other.plan;
      expect(orders.map((row) => Number(row[5]))).toEqual(years.map(({ order }) => order.unitsToOrder));
      expect(rounded(block.map((row) => Number(row[6])))).toEqual(
        rounded(years.map(({ budget }) => budget!.net)),
      );
      expect(rounded(block.map((row) => Number(row[7])))).toEqual(
        rounded(years.map((year) => year.chargedToOrder!)),
      );
    },
  );
});
