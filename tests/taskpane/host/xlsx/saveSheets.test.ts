import { read } from '@e965/xlsx';
import { writeXlsx } from 'hucre/xlsx';
import { describe, expect, it } from 'vitest';
import { readWorkbookFile } from '../../../../taskpane/host/xlsx/workbookFile.ts';
import type { WorkbookFile } from '../../../../taskpane/host/xlsx/workbookFile.ts';
import { openPackage, packageBytes, partText, putText } from '../../../../taskpane/host/xlsx/package.ts';
import { addRelation } from '../../../../taskpane/host/xlsx/parts.ts';
import type { SheetState } from '../../../../taskpane/host/xlsx/save.ts';
import { savedWorkbook } from '../../../../taskpane/host/xlsx/save.ts';
import { meaningOf } from '../meaningOf.ts';
import { storeFromExcelJs, storeFromLibreOffice, storeFromSheetJs } from '../storeWorkbooks.ts';

const kept = (name: string, more: Partial<SheetState> = {}): SheetState => ({
  name,
  original: name,
  cells: [],
  ...more,
});
const [STORE, LISTS, SUMS] = ['Store', 'Lists', "Quarter's sums"].map((name) => kept(name)) as [
  SheetState,
  SheetState,
  SheetState,
];

async function opened(bytes: Uint8Array): Promise<WorkbookFile> {
  const file = await readWorkbookFile(bytes, 'store.xlsx', 'everything');
  if (!file.ok) throw new Error('was not read');
  return file.value;
}

const WRITERS = [
  ['LibreOffice', storeFromLibreOffice],
  ['one writer library', storeFromExcelJs],
  ['another writer library', storeFromSheetJs],
] as const;

describe.each(WRITERS)('sheets of a file from %s', (_, make) => {
  it('are renamed, moved and hidden, and every formula and name follows', async () => {
    const sheets = [
      SUMS,
      kept('Store', { name: "North's store" }),
      kept('Lists', { name: 'Store', hidden: false }),
    ];
    const { bytes, lost } = await savedWorkbook(await make(), { sheets }, 'formulas');
    expect(lost).toEqual([]);
    const { Workbook, Sheets, SheetNames } = read(bytes, { type: 'array' });
    expect(SheetNames).toEqual(["Quarter's sums", "North's store", 'Store']);
    expect(Workbook!.Sheets!.map(({ Hidden }) => Hidden)).toEqual([0, 0, 0]);
    expect((Sheets["Quarter's sums"]!['B1'] as { f: string }).f).toBe("SUM('North''s store'!C3:C6)");
    const names = Object.fromEntries(Workbook!.Names!.map(({ Name, Ref }) => [Name, Ref]));
    expect(names).toMatchObject({ Voltages: "'North''s store'!$C$3:$C$6", Limits: "'Store'!$A$1:$A$3" });
    for (const { Name, Sheet } of Workbook!.Names!) if (Name.startsWith('_xlnm')) expect(Sheet).toBe(1);
  });

  it('are deleted with what belongs to them, and formulas say that they are gone', async () => {
    const original = await make();
    const { bytes, lost } = await savedWorkbook(
      original,
      { sheets: [LISTS, SUMS].map((each) => ({ ...each, hidden: false })) },
      'formulas',
    );
    expect(lost).toEqual([]);
    const after = await meaningOf(bytes);
    expect(Object.keys(after)).toEqual(['Lists', "Quarter's sums"]);
    expect(after["Quarter's sums"]!.cells['B1']!.value).toMatchObject({ formula: 'SUM(#REF!C3:C6)' });
    const [before, parts] = [openPackage(original), openPackage(bytes)];
    const gone = [...before.keys()].filter((path) => !parts.has(path));
    expect(gone).toContain('xl/worksheets/sheet1.xml');
    expect(gone.some((path) => /comments/i.test(path))).toBe(true);
    const types = (await partText(parts, '[Content_Types].xml'))!;
    for (const path of gone.filter((each) => each.endsWith('.xml')))
      expect(types).not.toContain(`"/${path}"`);
  });
});

describe('a sheet that is a chart', () => {
  const CHART = 'xl/chartsheets/sheet1.xml';
  async function withChartSheet(): Promise<Uint8Array> {
    const parts = openPackage(storeFromLibreOffice());
    await putText(
      parts,
      CHART,
      '<chartsheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"/>',
    );
    const id = await addRelation(parts, 'xl/workbook.xml', 'chartsheet', CHART);
    const book = (await partText(parts, 'xl/workbook.xml'))!;
    const sheet = `<sheet name="Voltages by lot" sheetId="9" r:id="${id}"/>`;
    await putText(
      parts,
      'xl/workbook.xml',
      book.replace('<sheet name="Lists"', `${sheet}<sheet name="Lists"`),
    );
    return packageBytes(parts);
  }

  it('is not shown, which is said, and stays in its place when the file is saved', async () => {
    const original = await withChartSheet();
    const file = await opened(original);
    expect(file.sheets.map(({ name }) => name)).toEqual(['Store', 'Lists', "Quarter's sums"]);
    expect(file.warnings).toEqual([
      'sheet Voltages by lot holds a chart or a dialog and no cells: it is not shown here and stays in the file',
    ]);
    const changed = kept('Store', { cells: [{ row: 9, column: 0, value: 1 }] });
    for (const as of ['formulas', 'values'] as const) {
      const { bytes, lost } = await savedWorkbook(original, { sheets: [changed, LISTS, SUMS] }, as);
      expect(lost).toEqual([]);
      const book = await partText(openPackage(bytes), 'xl/workbook.xml');
      expect([...book!.matchAll(/<sheet name="([^"]*)"/g)].map(([, name]) => name)).toEqual([
        'Store',
        'Voltages by lot',
        'Lists',
        "Quarter's sums",
      ]);
      expect(openPackage(bytes).get(CHART)!.checksum).toBe(openPackage(original).get(CHART)!.checksum);
    }
  });
});

describe('tables of a file', () => {
  const table = {
    name: 'Lots',
    range: 'A1:B4',
    columns: [{ name: 'Lot' }, { name: 'Volts', totalFunction: 'sum' }],
    showTotalRow: true,
  };
  const source = (): Promise<Uint8Array> =>
    writeXlsx({
      sheets: [
        {
          name: 'Store',
          rows: [
            ['Lot', 'Volts'],
            ['a', 12],
            ['b', 11],
            ['Total', 23],
          ],
          tables: [table],
        },
      ],
    });

  it('grow by a column that is calculated, and keep their total row', async () => {
    const cells = [
      { row: 0, column: 2, value: 'State <1>' },
      { row: 1, column: 2, value: 0.9, formula: 'CRANK.STATEOFCHARGE([@Volts])' },
      { row: 2, column: 2, value: 0.1, formula: 'CRANK.STATEOFCHARGE([@Volts])' },
    ];
    const grown = {
      name: 'Lots',
      block: { startRow: 0, startColumn: 0, endRow: 2, endColumn: 2 },
      heads: ['Lot', 'Volts', 'State <1>'],
      formulas: new Map([['State <1>', 'CRANK.STATEOFCHARGE([@Volts])']]),
    };
    const sheets = [kept('Store', { cells, tables: [grown] })];
    const { bytes } = await savedWorkbook(await source(), { sheets }, 'formulas');
    const [store] = (await opened(bytes)).sheets;
    expect(store!.tables).toEqual([
      {
        name: 'Lots',
        range: { startRow: 0, startColumn: 0, endRow: 3, endColumn: 2 },
        heads: ['Lot', 'Volts', 'State <1>'],
        totalRow: true,
      },
    ]);
    const xml = await partText(openPackage(bytes), 'xl/tables/table1.xml');
    expect(xml).toContain(
      '<calculatedColumnFormula>_xldudf_CRANK_STATEOFCHARGE(Lots[[#This Row],[Volts]])</calculatedColumnFormula>',
    );
    const values = await savedWorkbook(await source(), { sheets }, 'values');
    expect(await partText(openPackage(values.bytes), 'xl/tables/table1.xml')).not.toContain('CRANK');
  });

  it('call their columns as the heads that were typed over them', async () => {
    const cells = [
      { row: 0, column: 1, value: 2027 },
      { row: 0, column: 0, value: 'Lot "A"\n& more' },
    ];
    const { bytes } = await savedWorkbook(await source(), { sheets: [kept('Store', { cells })] }, 'formulas');
    const [store] = (await opened(bytes)).sheets;
    expect(store!.rows[0]).toEqual(['Lot "A"\n& more', '2027']);
    const xml = await partText(openPackage(bytes), 'xl/tables/table1.xml');
    expect(xml).toContain('name="Lot &quot;A&quot;_x000a_&amp; more"');
    expect(xml).toContain('name="2027"');
    expect(xml).toContain('totalsRowFunction="sum"');
  });

  it('are added to a sheet that had none, beside what it has', async () => {
    const added = {
      name: 'Store1',
      block: { startRow: 1, startColumn: 0, endRow: 5, endColumn: 4 },
      heads: ['Lot', 'Site', 'Rest voltage, V', 'Tested', 'Note'],
    };
    const { bytes, lost } = await savedWorkbook(
      storeFromLibreOffice(),
      { sheets: [{ ...STORE, tables: [added] }, LISTS, SUMS] },
      'formulas',
    );
    expect(lost).toEqual([]);
    const [store] = (await opened(bytes)).sheets;
    expect(store!.tables).toMatchObject([{ name: 'Store1', heads: added.heads }]);
    const { cells, rest } = (await meaningOf(bytes))['Store']!;
    const before = (await meaningOf(storeFromLibreOffice()))['Store']!;
    expect(cells).toEqual(before.cells);
    expect(rest).toEqual(before.rest);
  });
});

describe('a workbook that was new or a .csv', () => {
  it('is written with its sheets, looks, formulas and tables', async () => {
    const look = {
      font: { bold: true },
      border: { bottom: { style: 'thin', color: { rgb: '1F2A33' } } },
    } as const;
    const cells = [
      { row: 0, column: 0, value: 'Lot', look },
      { row: 0, column: 1, value: 'Volts', look },
      { row: 1, column: 0, value: '0514' },
      { row: 1, column: 1, value: 12.6, numberCode: '0.00' },
      { row: 2, column: 1, value: 1, formula: 'UNIQUE(B2)' },
    ];
    const tables = [
      {
        name: 'Lots',
        block: { startRow: 0, startColumn: 0, endRow: 1, endColumn: 1 },
        heads: ['Lot', 'Volts'],
      },
    ];
    const { bytes, lost } = await savedWorkbook(
      undefined,
      { sheets: [{ name: 'store', cells, tables }] },
      'formulas',
    );
    expect(lost).toEqual([]);
    const after = await meaningOf(bytes);
    expect(Object.keys(after)).toEqual(['store']);
    expect(after['store']!.cells['A1']).toMatchObject({
      value: 'Lot',
      style: { font: { bold: true }, border: { bottom: { style: 'thin' } } },
    });
    expect(after['store']!.cells['A2']!.value).toBe('0514');
    expect(after['store']!.cells['B2']).toMatchObject({ value: 12.6, style: { numFmt: '0.00' } });
    expect(after['store']!.cells['B3']!.value).toMatchObject({ formula: '_xlfn.UNIQUE(B2)' });
    expect((await opened(bytes)).sheets[0]!.tables).toMatchObject([{ name: 'Lots' }]);
  });
});
