import { describe, expect, it } from 'vitest';
import type { Sheet } from '../../../../src/report/sheet.ts';
import { readWorkbookFile } from '../../../../taskpane/host/xlsx/workbookFile.ts';
import { openPackage, partText } from '../../../../taskpane/host/xlsx/package.ts';
import type { SheetState, WorkbookState } from '../../../../taskpane/host/xlsx/save.ts';
import { savedWorkbook } from '../../../../taskpane/host/xlsx/save.ts';
import { meaningOf } from '../meaningOf.ts';
import { storeFromExcelJs, storeFromLibreOffice, storeFromSheetJs } from '../storeWorkbooks.ts';

const MADE = [
  ['Made', 'From'],
  [45352, '0324'],
  [44501, '1121'],
  [43647, '0719'],
  [{ error: '#VALUE!', message: 'not a lot' }, '\u001d05<22&_x0041_'],
] as const;

/** Two columns beside the store: one formula of ours that spills, and a calculated one by its side. */
const filled: SheetState = {
  name: 'Store',
  original: 'Store',
  cells: [
    {
      row: 1,
      column: 5,
      value: 'Made',
      look: { font: { bold: true }, fill: { type: 'pattern', pattern: 'solid', fgColor: { rgb: 'E9ECEF' } } },
    },
    { row: 1, column: 6, value: 'From' },
    {
      row: 2,
      column: 5,
      value: 45352,
      formula: 'CRANK.MANUFACTUREDATE(A3:A6)',
      spill: MADE.slice(1),
      numberCode: 'yyyy-mm-dd',
    },
    { row: 2, column: 2, value: 12.8 },
  ],
  recalculated: [{ row: 6, column: 2, value: 12.455 }],
  widths: new Map([[5, 14]]),
};

const forecast: Sheet = {
  name: 'Forecast 1',
  rows: [
    [{ value: 'Forecast', meaning: 'title', format: 'text' }, null],
    [
      { value: 'Year', meaning: 'columnHead', format: 'text' },
      { value: 'Units', meaning: 'columnHead', format: 'text' },
    ],
    [
      { value: 2027, meaning: 'body', format: 'plain' },
      { value: 4, meaning: 'body', format: 'whole' },
    ],
    [
      { value: 2028, meaning: 'body', format: 'plain' },
      { value: 8, formula: 'B3*2', meaning: 'total', format: 'whole' },
    ],
  ],
  widths: [12, 10],
  frozenRows: 2,
  repeatedRows: [1, 1],
  names: [{ name: 'FirstYear', row: 2, column: 0 }],
  tables: [{ name: 'ForecastYears', row: 1, column: 0, rows: 2, heads: ['Year', 'Units'] }],
  charts: [
    {
      kind: 'column',
      title: 'Units by year',
      xTitle: 'Year',
      yTitle: 'Units',
      yFormat: 'whole',
      categories: { row: 2, column: 0, rows: 2, columns: 1 },
      series: [{ name: 'Units', values: { row: 2, column: 1, rows: 2, columns: 1 } }],
      at: { row: 5, column: 0, rows: 10, columns: 6 },
    },
  ],
  pageBreaks: [],
  spans: [],
};

const state: WorkbookState = {
  sheets: [
    filled,
    { name: 'Lists', original: 'Lists', cells: [] },
    { name: "Quarter's sums", original: "Quarter's sums", cells: [] },
    { name: 'Forecast 1', drawn: forecast, cells: [] },
  ],
  names: [{ name: 'CrankAsOf', at: { sheet: 'Forecast 1', row: 2, column: 0 } }],
};

const WRITERS = [
  ['LibreOffice', storeFromLibreOffice],
  ['one writer library', storeFromExcelJs],
  ['another writer library', storeFromSheetJs],
] as const;

describe.each(WRITERS)('a file from %s, filled and saved', (_, make) => {
  it('has every cell, look, rule and setting that it had, and what was added', async () => {
    const original = await make();
    const { bytes, lost } = await savedWorkbook(original, state, 'formulas');
    expect(lost).toEqual([]);
    const [before, after] = [await meaningOf(original), await meaningOf(bytes)];
    expect(Object.keys(after)).toEqual([...Object.keys(before), 'Forecast 1']);
    for (const sheet of ['Lists', "Quarter's sums"]) expect(after[sheet]).toEqual(before[sheet]);
    const { C3, C7, ...others } = before['Store']!.cells;
    expect(after['Store']!.cells).toMatchObject(others);
    expect(after['Store']!.cells['C3']).toEqual({ ...C3, value: 12.8 });
    expect(after['Store']!.cells['C7']).toEqual({
      ...C7,
      value: { ...(C7!.value as object), result: 12.455 },
    });
    const { columns: hadColumns, ...had } = before['Store']!.rest;
    const { columns, ...has } = after['Store']!.rest;
    expect(has).toEqual(had);
    const widths = columns as { readonly width: number }[];
    expect(widths.slice(0, 5)).toEqual((hadColumns as unknown[]).slice(0, 5));
    expect(widths[5]).toMatchObject({ width: 14 });
  });

  it('keeps every part that was not touched, byte for byte', async () => {
    const original = await make();
    const { bytes } = await savedWorkbook(original, state, 'formulas');
    const [before, after] = [openPackage(original), openPackage(bytes)];
    const touched =
      /^\[Content_Types\]\.xml$|^xl\/workbook\.xml$|^xl\/_rels\/|^xl\/styles\.xml$|^xl\/worksheets\/sheet1\.xml$/;
    for (const [path, part] of before) {
      if (touched.test(path) || path === 'xl/metadata.xml') continue;
      expect(after.get(path)?.checksum, path).toBe(part.checksum);
    }
    const tail = (xml: string | undefined): string => xml!.slice(xml!.indexOf('</sheetData>'));
    const sheet = 'xl/worksheets/sheet1.xml';
    expect(tail(await partText(after, sheet))).toBe(tail(await partText(before, sheet)));
  });

  it('keeps names with their reach and whether they are hidden, and has the new ones', async () => {
    const original = await make();
    const { bytes } = await savedWorkbook(original, state, 'formulas');
    const names = async (of: Uint8Array): Promise<string[]> =>
      (await partText(openPackage(of), 'xl/workbook.xml'))!.match(/<definedName[^>]*>[^<]*/g) ?? [];
    const after = await names(bytes);
    expect(after).toEqual(expect.arrayContaining(await names(original)));
    expect(after).toContain(`<definedName name="CrankAsOf">'Forecast 1'!$A$3`);
    expect(after).toContain(`<definedName name="FirstYear" localSheetId="3">'Forecast 1'!$A$3`);
  });

  it('opens again with our formulas by their names, the answers beside them and the forecast', async () => {
    const { bytes } = await savedWorkbook(await make(), state, 'formulas');
    const file = await readWorkbookFile(bytes, 'store.xlsx', 'everything');
    if (!file.ok) throw new Error('was not read');
    const [store, , , added] = file.value.sheets;
    expect(store!.rows.map((row) => row.slice(5, 7)).slice(1, 6)).toEqual([
      ['Made', 'From'],
      [45352, '0324'],
      [44501, '1121'],
      [43647, '0719'],
      [{ error: '#VALUE!', message: '' }, '\u001d05<22&_x0041_'],
    ]);
    expect(store!.source!.cells!.get('2,5')).toMatchObject({
      formula: '_xldudf_CRANK_MANUFACTUREDATE(A3:A6)',
      formulaRef: 'F3:G6',
      formulaDynamic: true,
    });
    expect([...store!.dateCells.get(5)!]).toEqual([2, 3, 4]);
    expect(added!.tables[0]).toMatchObject({ name: 'ForecastYears', heads: ['Year', 'Units'] });
    expect(added!.source!.charts).toMatchObject([{ title: 'Units by year' }]);
  });

  it('has answers and no formula of ours when it is saved as values, and all else as before', async () => {
    const original = await make();
    const once = await savedWorkbook(original, state, 'formulas');
    const sheets = [...state.sheets.slice(0, 3).map(({ name }) => name), 'Forecast 1'];
    const same = { sheets: sheets.map((name) => ({ name, original: name, cells: [] })) };
    const direct = await savedWorkbook(original, state, 'values');
    const later = await savedWorkbook(once.bytes, same, 'values');
    for (const { bytes } of [direct, later]) {
      const { cells } = (await meaningOf(bytes))['Store']!;
      expect(cells['F4']!.value).toBe('2021-11-01T00:00:00.000Z');
      expect(cells['F3']!.value).toBe('2024-03-01T00:00:00.000Z');
      expect(cells['G4']!.value).toBe('1121');
      expect(cells['C7']!.value).toMatchObject({ formula: 'AVERAGE(C3:C6)' });
      const xml = await partText(openPackage(bytes), 'xl/worksheets/sheet1.xml');
      expect(xml).not.toMatch(/CRANK| cm="/);
    }
  });
});
