import type { SheetRows } from '../src/inventory/inventory.ts';
import type { FileSheet, WorkbookFile } from './host/xlsx/workbookFile.ts';

/** A sheet of a file as the core reads it: rows counted from 1, dates known. */
export function sheetRows(sheet: FileSheet, { dates1904, isText }: WorkbookFile): SheetRows {
  return {
    rows: sheet.rows,
    name: sheet.name,
    from1904: dates1904,
    fromText: isText,
    isDateCell: (row, column) => sheet.dateCells.get(column)?.has(row) ?? false,
    hiddenRows: new Set([...sheet.hiddenRows].map((row) => row + 1)),
  };
}
