import { describe, expect, it } from 'vitest';
import { shifted } from '../../../../taskpane/host/xlsx/sharedFormulas.ts';
import type { Writing } from '../../../../taskpane/host/xlsx/sheetChanges.ts';
import { changedSheetXml } from '../../../../taskpane/host/xlsx/sheetChanges.ts';
import type { ChangedCell, SheetState } from '../../../../taskpane/host/xlsx/workbookState.ts';

const writing: Writing = {
  as: 'formulas',
  lookNumber: () => 9,
  formatted: (had) => 100 + had,
  dynamic: 1,
  value: (value) => value,
  tables: [],
};

const put = (xml: string, cells: readonly ChangedCell[], more: Partial<SheetState> = {}): string =>
  changedSheetXml(xml, { name: 'Store', original: 'Store', cells, ...more }, writing);

const sheet = (rows: string, before = '', after = ''): string =>
  `<worksheet xmlns="main">${before}<sheetData>${rows}</sheetData>${after}</worksheet>`;

describe('cells written into the part of a sheet', () => {
  it('go between the rows and cells that are there, which stay as they are', () => {
    const rows =
      '<row r="1" ht="30"><c r="A1" s="2"><v>1</v></c></row><row r="4"><c r="B4" t="s"><v>0</v></c></row>';
    const cells = [
      { row: 3, column: 2, value: true },
      { row: 3, column: 0, value: 'a<b' },
      { row: 1, column: 1, value: 2 },
      { row: 5, column: 0, value: 3 },
    ];
    expect(put(sheet(rows), cells)).toBe(
      sheet(
        '<row r="1" ht="30"><c r="A1" s="2"><v>1</v></c></row><row r="2"><c r="B2"><v>2</v></c></row>' +
          '<row r="4"><c r="A4" t="inlineStr"><is><t xml:space="preserve">a&lt;b</t></is></c><c r="B4" t="s"><v>0</v></c>' +
          '<c r="C4" t="b"><v>1</v></c></row><row r="6"><c r="A6"><v>3</v></c></row>',
      ),
    );
  });

  it('find their place where rows and cells leave their addresses out', () => {
    const rows = '<row><c><v>1</v></c></row><row><c/><c><v>5</v></c></row>';
    expect(put(sheet(rows), [{ row: 1, column: 1, value: 6 }])).toBe(
      sheet('<row><c><v>1</v></c></row><row><c/><c r="B2"><v>6</v></c></row>'),
    );
  });

  it('are written under the prefix that the part uses, and into a sheet without rows', () => {
    const xml = '<x:worksheet xmlns:x="main"><x:dimension ref="B2"/><x:sheetData/></x:worksheet>';
    expect(put(xml, [{ row: 3, column: 0, value: 1 }])).toBe(
      '<x:worksheet xmlns:x="main"><x:dimension ref="A2:B4"/><x:sheetData><x:row r="4"><x:c r="A4"><x:v>1</x:v></x:c></x:row></x:sheetData></x:worksheet>',
    );
  });

  it('take the look of the cell, the row or the column, in that order', () => {
    const cols = '<cols><col min="1" max="3" style="7" width="9"/></cols>';
    const rows = '<row r="1"><c r="A1" s="2"/></row><row r="2" s="4" customFormat="true"/>';
    const cells = [0, 1, 2].map((row) => ({ row, column: 0, value: 1 }));
    const made = put(sheet(rows, cols), [
      ...cells,
      { row: 0, column: 1, value: 2, numberCode: '0.0' },
      { row: 0, column: 2, value: 3, look: {} },
    ]);
    for (const cell of ['A1" s="2"', 'A2" s="4"', 'A3" s="7"', 'B1" s="107"', 'C1" s="9"'])
      expect(made).toContain(`<c r="${cell}>`);
  });

  it('leave the look behind when they are emptied', () => {
    const rows = '<row r="1"><c r="A1" s="2"><v>1</v></c><c r="B1"><v>1</v></c></row>';
    const cells = [0, 1].map((column) => ({ row: 0, column, value: null }));
    expect(put(sheet(rows), cells)).toBe(sheet('<row r="1"><c r="A1" s="2"/></row>'));
  });

  it('change the answer of a formula and not the formula', () => {
    const rows = '<row r="1"><c r="A1" s="2" t="str"><f>B1&amp;"x"</f><v>ax</v></c></row>';
    const made = put(sheet(rows), [], { recalculated: [{ row: 0, column: 0, value: 4 }] });
    expect(made).toBe(sheet('<row r="1"><c r="A1" s="2"><f>B1&amp;"x"</f><v>4</v></c></row>'));
  });

  it('hand a shared formula on to the next cell when its first is overwritten', () => {
    const follower = '<c r="B2"><f t="shared" si="3"/><v>2</v></c>';
    const rows = `<row r="1"><c r="B1"><f t="shared" ref="B1:B2" si="3">A1*$C$1&amp;"A1"</f><v>1</v></c></row><row r="2">${follower}</row>`;
    expect(put(sheet(rows), [{ row: 0, column: 1, value: 9 }])).toBe(
      sheet(
        '<row r="1"><c r="B1"><v>9</v></c></row><row r="2"><c r="B2"><f t="shared" ref="B1:B2" si="3">A2*$C$1&amp;&quot;A1&quot;</f><v>2</v></c></row>',
      ),
    );
  });

  it('take away what an array formula filled when its first cell is overwritten', () => {
    const rows =
      '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:A2">X(1)</f><v>1</v></c></row><row r="2"><c r="A2" s="5"><v>2</v></c></row>';
    expect(put(sheet(rows), [{ row: 0, column: 0, value: 9 }])).toBe(
      sheet('<row r="1"><c r="A1"><v>9</v></c></row><row r="2"><c r="A2" s="5"/></row>'),
    );
  });

  it('name their own row in a table as files do', () => {
    const block = { startRow: 0, startColumn: 0, endRow: 9, endColumn: 3 };
    const xml = changedSheetXml(
      sheet(''),
      {
        name: 'Store',
        original: 'Store',
        cells: [
          {
            row: 1,
            column: 3,
            value: 0.9,
            formula: 'CRANK.STATEOFCHARGE([@[Rest voltage, V]],Tests[@Temp])&"[@x]"',
          },
        ],
      },
      { ...writing, tables: [{ name: 'Store', block }] },
    );
    expect(xml).toContain(
      '<f>_xldudf_CRANK_STATEOFCHARGE(Store[[#This Row],[Rest voltage, V]],Tests[[#This Row],[Temp]])&amp;&quot;[@x]&quot;</f>',
    );
  });

  it('set widths without touching the other columns of a run, and merged blocks before what follows them', () => {
    const cols = '<cols><col min="2" max="4" width="9" style="1"/></cols>';
    const after =
      '<customSheetViews><customSheetView><pageMargins/></customSheetView></customSheetViews><conditionalFormatting/><pageMargins/>';
    const made = put(sheet('', cols, after), [], {
      widths: new Map([[2, 20]]),
      merges: [{ startRow: 0, startColumn: 0, endRow: 0, endColumn: 1 }],
    });
    expect(made).toContain(
      '<cols><col min="2" max="2" width="9" style="1"/><col min="3" max="3" width="20" style="1" customWidth="1"/><col min="4" max="4" width="9" style="1"/></cols>',
    );
    expect(made).toContain(
      '</customSheetViews><mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells><conditionalFormatting/>',
    );
  });
});

describe('a formula moved to another cell', () => {
  it.each([
    ['A1+$B$2*LOG10(C3)', 'C4+$B$2*LOG10(E6)'],
    ['\'My A1\'!A1&"A1"', '\'My A1\'!C4&"A1"'],
    ['SUM(A:A)+SUM(1:1)', 'SUM(C:C)+SUM(4:4)'],
    ['SUM(Sheet2!A$1:$B3)+Rate1', 'SUM(Sheet2!C$1:$B6)+Rate1'],
    ['Store[[#This Row],[A1]]', 'Store[[#This Row],[A1]]'],
  ])('reads %s as %s', (formula, moved) => expect(shifted(formula, 3, 2)).toBe(moved));
});
