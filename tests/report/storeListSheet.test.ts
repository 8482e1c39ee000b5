import { describe, expect, it } from 'vitest';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { DEFAULT_SETTINGS } from '../../src/inventory/settings.ts';
import type { StoreFacts } from '../../src/report/storeListSheet.ts';
import { storeListSheet } from '../../src/report/storeListSheet.ts';
import { shelfStock } from '../inventory/shelfStock.ts';
import { sheetText } from './sheetText.ts';

// A plan is not needed.
const facts = (more: Partial<StoreFacts> = {}): StoreFacts => ({
  batteries: shelfStock(),
  asOf: dayFromParts(2026, 6, 30)!,
  madeBy: 'Crankbook 0.0.0',
  fileName: 'shelf.csv',
  tab: 'shelf',
  settings: { ...DEFAULT_SETTINGS, sites: { Depot: { coldest: -30, heated: true, parked: false } } },
  ...more,
});

describe('the store list', () => {
  it('as text', async () => {
    await expect(sheetText(storeListSheet(facts(), 'Store list'))).toMatchFileSnapshot('../golden/store.txt');
  });

  it('says of each empty list that it is empty', () => {
    const { rows } = storeListSheet(facts({ batteries: [] }), 'Store list');
    const said = rows.flat().map((cell) => String(cell?.value ?? ''));
    expect(said.filter((text) => /^(No|Nothing) /.test(text))).toHaveLength(6);
  });

  it('begins a page for a list that would be torn by the end of one', () => {
    const [first] = shelfStock();
    const many = Array.from({ length: 100 }, (_, row) => ({
      ...first!,
      serial: `S${row}`,
      row,
      made: 45_000 + 40 * row,
    }));
    const { rows, pageBreaks } = storeListSheet(facts({ batteries: many }), 'Store list');
    const titles = pageBreaks.map((row) => String(rows[row + 1]![0]!.value));
    expect(titles).toEqual(expect.arrayContaining([expect.stringMatching(/^Sets to issue/)]));
  });
});
