import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer } from '../../../src/basics/outcome.ts';
import type { Block } from '../../../src/report/sheet.ts';
import { countsFrom1904, firstDayOf1904 } from './dates.ts';
import { inExcel } from './session.ts';
import { selectedBlock } from './selection.ts';
import type { HostTable, SheetInfo, WorkbookInfo } from '../sheetHost.ts';

/** What is open in Excel: sheets with their used blocks, tables, selection, date system. */
export async function excelWorkbook(): Promise<Outcome<WorkbookInfo>> {
  const selected = await selectedBlock();
  return inExcel(async (context) => {
    const { workbook } = context;
    const first = firstDayOf1904(workbook);
    workbook.load('name');
    workbook.worksheets.load('items/name,items/visibility,items/protection/protected');
    workbook.tables.load('items/name,items/showHeaders,items/worksheet/name');
    await context.sync();
    const used = workbook.worksheets.items.map((sheet) => loadedBlock(sheet.getUsedRangeOrNullObject(true)));
    const tables = workbook.tables.items.filter(({ showHeaders }) => showHeaders).map(loadedTable);
    await context.sync();
    const sheets = workbook.worksheets.items.map((sheet, index) => sheetInfo(sheet, used[index]!, tables));
    const dates1904 = countsFrom1904(first);
    return answer({ fileName: workbook.name, sheets, selected, dates1904, warnings: [] });
  });
}

function loadedBlock(range: Excel.Range): Excel.Range {
  range.load('rowIndex,columnIndex,rowCount,columnCount');
  return range;
}

/** The block of a range whose place is loaded. */
function blockOfRange({ rowIndex, columnIndex, rowCount, columnCount }: Excel.Range): Block {
  return { row: rowIndex, column: columnIndex, rows: rowCount, columns: columnCount };
}

type LoadedTable = { readonly table: Excel.Table; readonly range: Excel.Range };

function loadedTable(table: Excel.Table): LoadedTable {
  table.columns.load('items/name');
  return { table, range: loadedBlock(table.getRange()) };
}

function sheetInfo(sheet: Excel.Worksheet, used: Excel.Range, tables: readonly LoadedTable[]): SheetInfo {
  return {
    name: sheet.name,
    hidden: sheet.visibility !== 'Visible',
    isProtected: sheet.protection.protected,
    used: used.isNullObject ? undefined : blockOfRange(used),
    tables: tables.filter(({ table }) => table.worksheet.name === sheet.name).map(hostTable),
  };
}

function hostTable({ table, range }: LoadedTable): HostTable {
  const heads = table.columns.items.map(({ name }) => name);
  return { name: table.name, block: blockOfRange(range), heads };
}
