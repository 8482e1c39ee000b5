import { readFileSync } from 'node:fs';
import * as sheetJs from '@e965/xlsx';
import ExcelJs from 'exceljs';

const HEADS = ['Lot', 'Site', 'Rest voltage, V', 'Tested', 'Note'];
const ROWS: readonly (readonly (string | number | null)[])[] = [
  ['0324-117', 'Norrfell North', 12.72, 46000, 'kept dry'],
  ['1121-003', 'Norrfell South', 12.41, 46003, null],
  ['0719-088', 'Norrfell Pass', 11.95, 46010, 'to be looked at'],
  ['0522-041', 'Norrfell North', 12.66, 46012, null],
];
const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

/** The workbook of a store as LibreOffice saved it. */
export const storeFromLibreOffice = (): Uint8Array =>
  readFileSync(new URL('files/storeFromLibreOffice.xlsx', import.meta.url));

/** The workbook of a store as one writer library writes it, with everything that it can. */
export async function storeFromExcelJs(): Promise<Uint8Array> {
  const book = new ExcelJs.Workbook();
  book.creator = 'Norrfell';
  const store = book.addWorksheet('Store', {
    views: [{ state: 'frozen', xSplit: 1, ySplit: 2, zoomScale: 90 }],
    properties: { tabColor: { argb: 'FF7A1F1F' } },
    pageSetup: { paperSize: 9, orientation: 'landscape', fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
    headerFooter: { oddHeader: '&CNorrfell', oddFooter: '&RPage &P' },
  });
  fillStore(store);
  dressStore(store);
  ruleStore(store);
  store.addImage(book.addImage({ base64: PIXEL, extension: 'png' }), 'G10:H12');
  const lists = book.addWorksheet('Lists', { state: 'veryHidden' });
  lists.addRows([[12.7], [12.4], [12]]);
  const sums = book.addWorksheet("Quarter's sums");
  sums.getCell('B1').value = { formula: 'SUM(Store!C3:C6)', result: 49.74 };
  sums.getCell('A3').value = {
    formula: 'Store!C3*2',
    result: 25.44,
    shareType: 'shared',
    ref: 'A3:A6',
  } as never;
  for (const row of [4, 5, 6])
    sums.getCell(`A${row}`).value = { sharedFormula: 'A3', result: 2 * Number(ROWS[row - 3]![2]) } as never;
  book.definedNames.add('Store!$C$3:$C$6', 'Voltages');
  book.definedNames.add('Lists!$A$1:$A$3', 'Limits');
  return new Uint8Array(await book.xlsx.writeBuffer());
}

function fillStore(store: ExcelJs.Worksheet): void {
  store.getCell('A1').value = 'Store of the Norrfell winter-road service';
  HEADS.forEach((head, column) => (store.getCell(2, column + 1).value = head));
  ROWS.forEach((row, index) =>
    row.forEach((value, column) => (store.getCell(index + 3, column + 1).value = value)),
  );
  store.getCell('C7').value = { formula: 'AVERAGE(C3:C6)', result: 12.435 };
  store.getCell('E7').value = {
    richText: [{ text: 'mean of ' }, { text: 'all', font: { bold: true, color: { argb: 'FF7A1F1F' } } }],
  };
  store.getCell('E3').value = {
    text: 'kept dry',
    hyperlink: 'https://norrfell.example/dry-store',
    tooltip: 'Dry store',
  };
}

function dressStore(store: ExcelJs.Worksheet): void {
  store.getCell('A1').font = {
    name: 'Liberation Serif',
    size: 16,
    bold: true,
    color: { theme: 5, tint: -0.25 } as never,
  };
  for (let column = 1; column <= 5; column += 1) {
    const cell = store.getCell(2, column);
    cell.font = { bold: true, italic: column === 2, underline: column === 3, strike: column === 4 };
    cell.fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFDDE6EE' } };
    cell.border = {
      bottom: { style: 'double', color: { argb: 'FF1F2A33' } },
      left: { style: 'dashed', color: { argb: 'FF5B6670' } },
      diagonal: { style: 'thin', up: true, down: false },
    };
    cell.alignment = { wrapText: true, horizontal: 'center', vertical: 'middle', textRotation: 45 };
  }
  store.getCell('B3').fill = {
    type: 'gradient',
    gradient: 'angle',
    degree: 90,
    stops: [
      { position: 0, color: { argb: 'FFFFFFFF' } },
      { position: 1, color: { argb: 'FF5B6670' } },
    ],
  };
  store.getCell('B4').fill = { type: 'pattern', pattern: 'lightTrellis', fgColor: { argb: 'FF5B6670' } };
  for (let row = 3; row <= 6; row += 1) {
    store.getCell(row, 3).numFmt = '0.000';
    store.getCell(row, 4).numFmt = 'yyyy-mm-dd';
    store.getCell(row, 1).protection = { locked: false };
  }
  store.getColumn(1).width = 16;
  store.getColumn(8).hidden = true;
  store.getColumn(6).numFmt = '0.0%';
  store.getRow(1).height = 30;
  store.getRow(6).hidden = true;
  store.mergeCells('A1:E1');
}

function ruleStore(store: ExcelJs.Worksheet): void {
  store.addConditionalFormatting({
    ref: 'C3:C6',
    rules: [
      {
        type: 'cellIs',
        operator: 'lessThan',
        formulae: [12.4],
        priority: 1,
        style: {
          fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFF3D9D9' } },
          font: { bold: true },
        },
      },
      {
        type: 'top10',
        rank: 2,
        percent: false,
        bottom: true,
        priority: 2,
        style: { font: { italic: true } },
      },
      { type: 'timePeriod', timePeriod: 'lastMonth', priority: 3, style: { font: { strike: true } } },
    ],
  });
  store.getCell('B3').dataValidation = {
    type: 'list',
    allowBlank: true,
    formulae: ['"Norrfell North,Norrfell South,Norrfell Pass"'],
    showErrorMessage: true,
    error: 'Choose one of our stores',
  };
  store.getCell('C5').note = { texts: [{ text: 'Low when ' }, { text: 'it came in', font: { bold: true } }] };
  store.autoFilter = 'A2:E6';
  store.pageSetup.printArea = 'A1:E7';
  store.pageSetup.printTitlesRow = '2:2';
}

/** The workbook of a store as another writer library writes it; looks it can't, a hidden name it can. */
export function storeFromSheetJs(): Uint8Array {
  const store = sheetJs.utils.aoa_to_sheet([
    ['Store of the Norrfell winter-road service'],
    HEADS,
    ...ROWS.map((row) => [...row]),
  ]);
  store['!merges'] = [sheetJs.utils.decode_range('A1:E1')];
  store['!cols'] = [{ wch: 16 }, { wch: 22 }, {}, {}, { hidden: true }];
  store['!rows'] = [{ hpt: 30 }, {}, {}, {}, {}, { hidden: true }];
  store['!autofilter'] = { ref: 'A2:E6' };
  store['!margins'] = { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 };
  store['!protect'] = { selectLockedCells: true };
  for (let row = 3; row <= 6; row += 1) {
    (store[`C${row}`] as sheetJs.CellObject).z = '0.000';
    (store[`D${row}`] as sheetJs.CellObject).z = 'yyyy-mm-dd';
  }
  store['C7'] = { t: 'n', v: 12.435, f: 'AVERAGE(C3:C6)' };
  store['!ref'] = 'A1:E7';
  (store['E3'] as sheetJs.CellObject).l = {
    Target: 'https://norrfell.example/dry-store',
    Tooltip: 'Dry store',
  };
  sheetJs.utils.cell_add_comment(store['C5'] as sheetJs.CellObject, 'Low when it came in', 'Norrfell');
  const book = sheetJs.utils.book_new();
  sheetJs.utils.book_append_sheet(book, store, 'Store');
  sheetJs.utils.book_append_sheet(book, sheetJs.utils.aoa_to_sheet([[12.7], [12.4], [12]]), 'Lists');
  const sums = sheetJs.utils.aoa_to_sheet([['Sum', null]]);
  sums['B1'] = { t: 'n', v: 49.74, f: 'SUM(Store!C3:C6)' };
  sheetJs.utils.book_append_sheet(book, sums, "Quarter's sums");
  book.Workbook = {
    Sheets: [{ Hidden: 0 }, { Hidden: 1 }, { Hidden: 0 }],
    Names: [
      { Name: 'Voltages', Ref: 'Store!$C$3:$C$6' },
      { Name: 'Limits', Ref: 'Lists!$A$1:$A$3', Hidden: true } as never,
    ],
  };
  return new Uint8Array(sheetJs.write(book, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer);
}
