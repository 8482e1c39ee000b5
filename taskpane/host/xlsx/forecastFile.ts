import type { RoundtripWorkbook, WriteSheet } from 'hucre/xlsx';
import { openXlsx, saveXlsx, writeXlsx } from 'hucre/xlsx';
import type { Day } from '../../../src/basics/calendar.ts';
import { momentOfDay } from '../../../src/basics/calendar.ts';
import type { Sheet } from '../../../src/report/sheet.ts';
import { quotedSheet } from '../../../src/report/sheet.ts';
import { shownText } from '../../../src/report/shownText.ts';
import { namesForFile, sheetForFile, writable } from './sheetFile.ts';

/** A file that is to be carried over: an .xlsx as bytes, or the rows of a .csv under a sheet name. */
export type SourceFile =
  | { readonly bytes: Uint8Array }
  | { readonly sheetName: string; readonly rows: readonly (readonly (string | number | boolean | null)[])[] };

/**
 * The bytes of a workbook with the source's sheets carried over and new sheets behind them. The same input gives
 * the same bytes: the file is dated as-of, not by the clock.
 */
export async function forecastFile(
  source: SourceFile,
  sheets: readonly Sheet[],
  asOf: Day,
): Promise<Uint8Array> {
  const added = sheets.map(sheetForFile);
  const names = sheets.flatMap(namesForFile);
  const dated = { modified: momentOfDay(asOf).toJSDate() };
  if ('bytes' in source)
    return saveWith(await openXlsx(source.bytes, { readStyles: true }), added, names, dated);
  const rows = source.rows.map((row) =>
    row.map((value) => writable(typeof value === 'string' ? shownText(value) : value)),
  );
  return writeXlsx({
    sheets: [{ name: source.sheetName, rows }, ...added],
    namedRanges: names,
    properties: { ...dated, created: dated.modified },
  });
}

function saveWith(
  workbook: RoundtripWorkbook,
  added: readonly WriteSheet[],
  names: ReturnType<typeof namesForFile>,
  dated: { modified: Date },
): Promise<Uint8Array> {
  // A sheet to write and a sheet as read differ in their type only; the library writes both.
  const tables = workbook.sheets.flatMap((sheet) => (sheet.tables ?? []).map(({ name }) => name));
  const taken = [...tables, ...(workbook.namedRanges ?? []).map(({ name }) => name)];
  const free = added.map((sheet) => ({ ...sheet, tables: (sheet.tables ?? []).map(withFreeName(taken)) }));
  const carried = workbook.sheets.flatMap(printNames);
  workbook.sheets.forEach(keepEscapes);
  workbook.sheets.push(...(free as unknown as RoundtripWorkbook['sheets']));
  workbook.namedRanges = [...(workbook.namedRanges ?? []), ...carried, ...names];
  workbook.properties = { ...workbook.properties, ...dated };
  return saveXlsx(workbook);
}

// The library writes these names of a sheet itself, but leaves a sheet's name such as "Store 1" unquoted.
function printNames(sheet: RoundtripWorkbook['sheets'][number]): ReturnType<typeof namesForFile> {
  const { name: scope, pageSetup } = sheet;
  if (pageSetup === undefined) return [];
  const { printArea, printTitlesRow, printTitlesColumn, ...rest } = pageSetup;
  sheet.pageSetup = rest;
  const onSheet = (parts: readonly (string | undefined)[]): string =>
    parts.flatMap((part) => (part === undefined ? [] : [`${quotedSheet(scope)}!${part}`])).join(',');
  return [
    { name: '_xlnm.Print_Area', range: onSheet(printArea?.split(',') ?? []), scope },
    { name: '_xlnm.Print_Titles', range: onSheet([printTitlesColumn, printTitlesRow]), scope },
  ].filter(({ range }) => range !== '');
}

// The library reads the file format's escapes in texts and writes none: _x0041_ would come out as A.
function keepEscapes({ rows, cells }: RoundtripWorkbook['sheets'][number]): void {
  for (const row of rows) {
    row.forEach((value, column) => {
      if (typeof value === 'string' && value.includes('_x')) row[column] = writable(value);
    });
  }
  for (const cell of cells?.values() ?? []) {
    if (typeof cell.value === 'string' && cell.value.includes('_x')) cell.value = writable(cell.value);
  }
}

type NamedTable = NonNullable<WriteSheet['tables']>[number];

// A table's name is the whole workbook's, beside its defined names: a second forecast numbers its own.
function withFreeName(taken: readonly string[]): (table: NamedTable) => NamedTable {
  const used = new Set(taken.map((name) => name.toLowerCase()));
  return (table) => {
    let name = table.name;
    for (let number = 2; used.has(name.toLowerCase()); number += 1) name = `${table.name}_${number}`;
    return { ...table, name };
  };
}
