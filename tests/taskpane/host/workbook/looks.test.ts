import type { ICellData, IStyleData, IWorkbookData, IWorksheetData } from '@univerjs/core';
import { afterAll, describe, expect, it } from 'vitest';
import type { WorkbookFile } from '../../../../taskpane/host/xlsx/workbookFile.ts';
import { readWorkbookFile } from '../../../../taskpane/host/xlsx/workbookFile.ts';
import {
  openHeadless,
  startHeadless,
  stopHeadless,
} from '../../../../taskpane/host/workbook/headlessWorkbook.ts';
import { savedWorkbook } from '../../../../taskpane/host/xlsx/save.ts';
import type { Contents } from '../../../../taskpane/host/workbook/snapshot.ts';
import { snapshotOf } from '../../../../taskpane/host/workbook/snapshot.ts';
import { storeFromExcelJs, storeFromLibreOffice } from '../storeWorkbooks.ts';

async function contents(bytes: Uint8Array): Promise<Contents> {
  const file = await readWorkbookFile(bytes, 'store.xlsx', 'everything');
  if (!file.ok) throw new Error('was not read');
  const { sheets, names, base } = file.value as WorkbookFile & { base: NonNullable<WorkbookFile['base']> };
  return { sheets, names, active: 'Store', formulas: [], rowCount: 100, base };
}

type Shown = {
  readonly book: Partial<IWorkbookData>;
  readonly sheet: (index: number) => Partial<IWorksheetData>;
};

async function shown(bytes: Uint8Array): Promise<Shown> {
  const book = snapshotOf(await contents(bytes), 'looks');
  return { book, sheet: (index) => book.sheets![`sheet${index}`]! };
}

const cellAt = (sheet: Partial<IWorksheetData>, row: number, column: number): ICellData =>
  (sheet.cellData as Record<number, Record<number, ICellData>>)[row]![column]!;
const lookAt = ({ book, sheet }: Shown, row: number, column: number): IStyleData =>
  book.styles![cellAt(sheet(0), row, column).s as string]!;

describe('a file as the built-in workbook shows it', () => {
  it('has its fonts, fills, lines, alignment and number formats', async () => {
    const store = await shown(await storeFromExcelJs());
    expect(lookAt(store, 0, 0)).toMatchObject({ ff: 'Liberation Serif', fs: 16, bl: 1 });
    expect(lookAt(store, 1, 0)).toMatchObject({
      bg: { rgb: '#DDE6EE' },
      bd: { b: { s: 7, cl: { rgb: '#1F2A33' } }, l: { s: 4, cl: { rgb: '#5B6670' } } },
      ht: 2,
      vt: 2,
      tb: 3,
      tr: { a: -45 },
    });
    expect(lookAt(store, 1, 1)).toMatchObject({ it: 1 });
    expect(lookAt(store, 1, 2)).toMatchObject({ ul: { s: 1 } });
    expect(lookAt(store, 1, 3)).toMatchObject({ st: { s: 1 } });
    expect(lookAt(store, 2, 2)).toEqual({ n: { pattern: '0.000' } });
    expect(lookAt(store, 2, 3)).toEqual({ n: { pattern: 'yyyy-mm-dd' } });
  });

  it('keeps one look for all cells that look alike', async () => {
    const { book, sheet } = await shown(storeFromLibreOffice());
    const names = [2, 3, 4, 5].map((row) => cellAt(sheet(0), row, 3).s);
    expect(new Set(names).size).toBe(1);
    expect(Object.keys(book.styles!).length).toBeLessThan(10);
  });

  it('has colours of the theme, lighter or darker', async () => {
    const store = await shown(await storeFromExcelJs());
    expect(lookAt(store, 0, 0).cl).toEqual({ rgb: '#953735' });
  });

  it('has its widths, heights, hidden rows, columns and sheets, merges and frozen panes', async () => {
    const { sheet } = await shown(await storeFromExcelJs());
    const { columnData, rowData, mergeData, freeze } = sheet(0);
    expect(columnData).toMatchObject({ 0: { w: 117 }, 7: { hd: 1 } });
    expect(rowData).toMatchObject({ 0: { h: 40 }, 5: { hd: 1 } });
    expect(mergeData).toEqual([{ startRow: 0, endRow: 0, startColumn: 0, endColumn: 4 }]);
    expect(freeze).toEqual({ xSplit: 1, ySplit: 2, startRow: 2, startColumn: 1 });
    expect([0, 1, 2].map((index) => sheet(index).hidden)).toEqual([0, 1, 0]);
  });

  it('has its formulas, shared ones by the number that they share', async () => {
    const { sheet } = await shown(await storeFromExcelJs());
    expect(cellAt(sheet(0), 6, 2)).toMatchObject({ f: '=AVERAGE(C3:C6)', v: 12.435 });
    expect(cellAt(sheet(2), 2, 0)).toMatchObject({ f: '=Store!C3*2' });
    const shared = [2, 3, 4, 5].map((row) => cellAt(sheet(2), row, 0).si);
    expect(shared[0]).toBeTruthy();
    expect(new Set(shared).size).toBe(1);
    expect(cellAt(sheet(2), 3, 0).f).toBeUndefined();
  });
});

describe('a file of ours opened again', () => {
  const workbook = startHeadless();
  afterAll(() => stopHeadless(workbook));

  it('calculates what it asks our functions, and shared formulas each in their own place', async () => {
    const stale = [
      [1, 'x'],
      [2, 'x'],
      [3, 'x'],
      [4, 'x'],
    ];
    const filled = {
      name: 'Store',
      original: 'Store',
      cells: [{ row: 2, column: 5, value: 1, formula: 'CRANK.MANUFACTUREDATE(A3:A6)', spill: stale }],
    };
    const others = ['Lists', "Quarter's sums"].map((name) => ({ name, original: name, cells: [] }));
    const { bytes } = await savedWorkbook(
      await storeFromExcelJs(),
      { sheets: [filled, ...others] },
      'formulas',
    );
    await openHeadless(workbook, await contents(bytes));
    const book = workbook.api.getActiveWorkbook()!;
    const store = book.getSheetByName('Store')!;
    expect(store.getRange(2, 5).getFormula()).toBe('=CRANK.MANUFACTUREDATE(A3:A6)');
    expect(store.getRange(3, 5, 1, 1).getValue()).not.toBe(2);
    expect(store.getRange(6, 2).getValue()).toBeCloseTo(12.435, 10);
    const sums = book.getSheetByName("Quarter's sums")!;
    expect([2, 3, 4, 5].map((row) => sums.getRange(row, 0).getValue())).toEqual([25.44, 24.82, 23.9, 25.32]);
  });
});
