import { addExcelSheets } from './excelAdding.ts';
import { fillInExcel } from './excelFill.ts';
import { excelWorkbook } from './excelInfo.ts';
import { namedExcelCell, nameExcelCell } from './excelNames.ts';
import { copyByHand, newExcelWorkbook } from './excelNewWorkbook.ts';
import { readExcelBlock } from './excelReading.ts';
import { appendExcelRow } from './excelRecords.ts';
import { repairExcelFormulas } from './excelRepair.ts';
import { replaceExcelSheet } from './excelReplacing.ts';
import { followSelection, selectInExcel } from './excelSelection.ts';
import type { SheetHost } from './sheetHost.ts';

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
