import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readXlsx } from 'hucre/xlsx';
import { beforeAll, describe, expect, it } from 'vitest';
import { planCommand } from '../../taskpane/commandLine/planCommand.ts';

const demo = (name: string): string => fileURLToPath(new URL(`../../docs/demo/${name}`, import.meta.url));

/** A number as a reader sees it: its digits, and how many stand behind the point. */
type Shown = { readonly text: string; readonly decimals: number };
type Row = readonly (Shown | string)[];

/** A block with a total: heads, rows and the total under them. */
type Block = { readonly heads: readonly string[]; readonly rows: readonly Row[]; readonly total: Row };

const decimalsOf = (format = ''): number => /\.(0+)/.exec(format)?.[1]!.length ?? 0;

async function shownSheets(file: string): Promise<Map<string, Row[]>> {
  const book = await readXlsx(new Uint8Array(readFileSync(file)), { readStyles: true });
  return new Map(
    book.sheets.map(({ name, rows, cells }) => [
      name,
      rows.map((row, r) =>
        row.map((value, c) => {
          const cell = cells?.get(`${r},${c}`);
          const held = cell?.formulaResult ?? value;
          if (typeof held !== 'number') return String(held ?? '');
          const decimals = decimalsOf(cell?.style?.numFmt);
          return { text: held.toFixed(decimals), decimals };
        }),
      ),
    ]),
  );
}

const textOf = (cell: Shown | string | undefined): string =>
  cell === undefined ? '' : typeof cell === 'string' ? cell : cell.text;

/** What a shown number counts in units of its last digit, without the dust of floating point. */
const steps = (cell: Shown | string | undefined, decimals: number): number =>
  Math.round(Number(textOf(cell)) * 10 ** decimals);

/** Every block whose last row is a total, from its heads on. */
function blocksOf(rows: readonly Row[]): Block[] {
  return rows.flatMap((total, at) => {
    if (!['All', 'All years'].includes(textOf(total[0]))) return [];
    let first = at;
    while (first > 0 && textOf(rows[first - 1]![0]) !== '' && textOf(rows[first - 1]![1]) !== '') first -= 1;
    return [{ heads: rows[first]!.map(textOf), rows: rows.slice(first + 1, at), total }];
  });
}

/** Columns of a block whose shown numbers do not come to the shown total. */
function wrongSums({ heads, rows, total }: Block): string[] {
  return total.flatMap((sum, column) => {
    if (column === 0 || typeof sum === 'string') return [];
    const added = rows.reduce((all, row) => all + steps(row[column], sum.decimals), 0);
    return added === steps(sum, sum.decimals) ? [] : [`${heads[column]}: ${added} is not ${sum.text}`];
  });
}

describe('the written forecast of the demonstration, added up by hand from what it shows', () => {
  let forecast: Row[];
  let units: Row[];
  let blocks: Block[];

  beforeAll(async () => {
    const out = join(mkdtempSync(join(tmpdir(), 'adds-')), 'forecast.xlsx');
    const settings = ['--settings', demo('norrfell-settings.json')];
    await planCommand([demo('norrfell-inventory.xlsx'), '--as-of', '2026-06-30', ...settings, '--out', out]);
    const sheets = await shownSheets(out);
    [forecast, units] = [sheets.get('Forecast')!, sheets.get('Forecast units')!];
    blocks = blocksOf(forecast);
  });

  const blockWith = (head: string): Block => blocks.find(({ heads }) => heads.includes(head))!;
  const column = ({ heads }: Block, head: string): number => heads.indexOf(head);

  it('every total of every block is the sum of its column, to the last digit', () => {
    expect(blocks.length).toBeGreaterThanOrEqual(8);
    const totals = blocks.flatMap(({ total }) => total.filter((each) => typeof each !== 'string'));
    expect(totals.length).toBeGreaterThan(30);
    expect(blocks.every(({ rows }) => rows.length >= 3)).toBe(true);
    expect(blocks.flatMap(wrongSums)).toEqual([]);
  });

  it('each year’s stock is what was there, came and went', () => {
    const block = blockWith('Closing stock');
    const at = (row: Row, head: string): number => steps(row[column(block, head)], 1);
    for (const row of block.rows) {
      const plus = at(row, 'Opening stock') + at(row, 'On order') + at(row, 'Recovered');
      expect(plus + at(row, 'Units to order') - at(row, 'Needed')).toBe(at(row, 'Closing stock'));
    }
  });

  it('each year’s money is cost less refund, freight and labour, and cost is units at the price shown', () => {
    const [money, orders] = [blockWith('Unit price'), blockWith('Closing stock')];
    money.rows.forEach((row, year) => {
      const at = (head: string): number => steps(row[column(money, head)], 2);
      const ordered = steps(orders.rows[year]![column(orders, 'Units to order')], 0);
      expect(ordered * at('Unit price')).toBe(at('Cost'));
      expect(at('Cost') - at('Refund') + at('Freight') + at('Labour')).toBe(at('Net, year of need'));
    });
  });

  it('the blocks by site, type, quarter and month come to the same totals', () => {
    const totals = (head: RegExp): string[] =>
      blocks.flatMap(({ heads, total }) =>
        heads.flatMap((each, at) => (head.test(each) ? [textOf(total[at])] : [])),
      );
    expect(new Set(totals(/^Expected failures$/)).size).toBe(1);
    for (const label of ['FY2026', 'FY2027', 'FY2028']) {
      const found = totals(new RegExp(`^${label} expected$`));
      expect(found).toHaveLength(2);
      const year = blockWith('Due now').rows.find(([first]) => first === label)!;
      expect(new Set([...found, textOf(year[column(blockWith('Due now'), 'Expected failures')])]).size).toBe(
        1,
      );
    }
  });

  it('the list of units comes to the expected failures of each year', () => {
    const heads = units[2]!.map(textOf);
    const block = blockWith('Due now');
    for (const row of block.rows) {
      const at = heads.indexOf(`${textOf(row[0])} expected`);
      const added = units.slice(3).reduce((all, unit) => all + steps(unit[at], 3), 0);
      expect(added).toBe(steps(row[column(block, 'Expected failures')], 3));
    }
  });
});
