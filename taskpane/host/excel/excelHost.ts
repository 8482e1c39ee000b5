import { addExcelSheets } from './adding.ts';
import { fillInExcel } from './fill.ts';
import { excelWorkbook } from './info.ts';
import { namedExcelCell, nameExcelCell } from './names.ts';
import { copyByHand, newExcelWorkbook } from './newWorkbook.ts';
import { readExcelBlock } from './reading.ts';
import { appendExcelRow } from './records.ts';
import { repairExcelFormulas } from './repair.ts';
import { replaceExcelSheet } from './replacing.ts';
import { followSelection, selectInExcel } from './selection.ts';
import type { SheetHost } from '../sheetHost.ts';

/** Excel as a host of the pane: the workbook that is open beside it. */
export function excelHost(): SheetHost {
  return {
    kind: 'excel',
    workbook: excelWorkbook,
    readBlock: readExcelBlock,
    select: selectInExcel,
    onSelect: followSelection,
    addSheets: addExcelSheets,
    replaceSheet: replaceExcelSheet,
    newWorkbook: (_, sheets) => newExcelWorkbook(sheets),
    workInCopy: () => Promise.resolve(copyByHand()),
    fill: fillInExcel,
    appendRow: appendExcelRow,
    nameCell: nameExcelCell,
    namedCell: namedExcelCell,
    repairFormulas: repairExcelFormulas,
  };
}
