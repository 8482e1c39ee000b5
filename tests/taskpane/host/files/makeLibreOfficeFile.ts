/**
 * Makes storeFromLibreOffice.xlsx beside this script: a workbook is sketched with a writer library and then opened and
 * saved by LibreOffice, which writes every part of it anew in its own way. Run it by hand, where LibreOffice is
 * installed: `npx tsx tests/taskpane/host/files/makeLibreOfficeFile.ts`. The file is kept under version control.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Cell, CellStyle } from 'hucre/xlsx';
import { writeXlsx } from 'hucre/xlsx';

const HEADS = ['Lot', 'Site', 'Rest voltage, V', 'Tested', 'Note'];
const ROWS = [
  ['0324-117', 'Norrfell North', 12.72, 46000, 'kept dry'],
  ['1121-003', 'Norrfell South', 12.41, 46003, null],
  ['0719-088', 'Norrfell Pass', 11.95, 46010, 'to be looked at'],
  ['0522-041', 'Norrfell North', 12.66, 46012, null],
];

const line = (style: 'thin' | 'double' | 'dashed', rgb: string) => ({ style, color: { rgb } });
const TITLE: CellStyle = {
  font: { name: 'Liberation Serif', size: 16, bold: true, color: { rgb: '7A1F1F' } },
};
const HEAD: CellStyle = {
  font: { bold: true },
  fill: { type: 'pattern', pattern: 'solid', fgColor: { rgb: 'DDE6EE' } },
  border: { bottom: line('double', '1F2A33'), left: line('dashed', '5B6670') },
  alignment: { wrapText: true, horizontal: 'center' },
};
const FORMATS: Record<number, CellStyle> = { 2: { numFmt: '0.000' }, 3: { numFmt: 'yyyy-mm-dd' } };

const cells = new Map<string, Partial<Cell>>([['0,0', { style: TITLE }]]);
HEADS.forEach((_, column) => cells.set(`1,${column}`, { style: HEAD }));
ROWS.forEach((row, index) =>
  row.forEach((_, column) => {
    if (FORMATS[column] !== undefined) cells.set(`${index + 2},${column}`, { style: FORMATS[column] });
  }),
);
cells.set('6,2', { value: 12.435, type: 'formula', formula: 'AVERAGE(C3:C6)', style: FORMATS[2]! });
cells.set('4,2', { style: FORMATS[2]!, comment: { author: 'Norrfell', text: 'Low when it came in' } });
cells.set('2,4', {
  value: 'kept dry',
  hyperlink: { target: 'https://norrfell.example/dry-store', tooltip: 'Dry store' },
});

const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

const sketch = await writeXlsx({
  sheets: [
    {
      name: 'Store',
      rows: [['Store of the Norrfell winter-road service'], HEADS, ...ROWS, [null, null, null, null, 'mean']],
      cells,
      columns: [{ width: 16 }, { width: 22 }, { width: 12 }, { width: 12 }, { width: 30 }],
      rowDefs: new Map([
        [0, { height: 30 }],
        [5, { hidden: true }],
      ]),
      merges: [{ startRow: 0, startCol: 0, endRow: 0, endCol: 4 }],
      freezePane: { rows: 2, columns: 1 },
      conditionalRules: [
        {
          type: 'cellIs',
          operator: 'lessThan',
          formula: '12.4',
          priority: 1,
          range: 'C3:C6',
          style: { fill: { type: 'pattern', pattern: 'solid', bgColor: { rgb: 'F3D9D9' } } },
        },
        {
          type: 'colorScale',
          priority: 2,
          range: 'D3:D6',
          colorScale: { cfvo: [{ type: 'min' }, { type: 'max' }], colors: ['FFFFFFFF', 'FF5B6670'] },
        },
      ],
      dataValidations: [
        {
          type: 'list',
          values: ['Norrfell North', 'Norrfell South', 'Norrfell Pass'],
          range: 'B3:B6',
          showErrorMessage: true,
          errorMessage: 'Choose one of our stores',
        },
      ],
      pageSetup: {
        paperSize: 'a4',
        orientation: 'landscape',
        fitToPage: true,
        fitToWidth: 1,
        fitToHeight: 0,
        printArea: '$A$1:$E$7',
        printTitlesRow: '$2:$2',
      },
      headerFooter: { oddHeader: '&CNorrfell', oddFooter: '&RPage &P' },
      images: [
        {
          data: new Uint8Array(Buffer.from(PIXEL, 'base64')),
          type: 'png',
          anchor: { from: { row: 8, col: 5 }, to: { row: 10, col: 6 } },
          altText: 'The mark of the service',
        },
      ],
    },
    { name: 'Lists', rows: [[12.7], [12.4], [12]], hidden: true },
    {
      name: "Quarter's sums",
      rows: [
        ['Sum', null],
        [null, null],
      ],
      cells: new Map([['0,1', { value: 49.74, type: 'formula', formula: 'SUM(Store!C3:C6)' }]]),
      charts: [
        {
          type: 'column',
          title: 'Rest voltage by lot',
          series: [{ name: 'Rest voltage', values: 'Store!$C$3:$C$6', categories: 'Store!$A$3:$A$6' }],
          anchor: { from: { row: 3, col: 0 }, to: { row: 18, col: 7 } },
        },
      ],
    },
  ],
  namedRanges: [
    { name: 'Voltages', range: 'Store!$C$3:$C$6' },
    { name: 'Limits', range: 'Lists!$A$1:$A$3' },
  ],
});

const folder = mkdtempSync(join(tmpdir(), 'libreoffice-'));
const [source, result] = [join(folder, 'sketch.xlsx'), join(folder, 'out', 'sketch.xlsx')];
writeFileSync(source, sketch);
execFileSync('soffice', [
  `-env:UserInstallation=file://${folder}/profile`,
  '--headless',
  '--convert-to',
  'xlsx:Calc MS Excel 2007 XML',
  '--outdir',
  join(folder, 'out'),
  source,
]);
renameSync(result, fileURLToPath(new URL('storeFromLibreOffice.xlsx', import.meta.url)));
