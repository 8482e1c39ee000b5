import { writeXlsx } from 'hucre/xlsx';
import type { Sheet } from '../../../src/report/sheet.ts';
import { namesForFile, sheetForFile } from './sheetFile.ts';

/** The bytes of a workbook that has only these sheets. */
export function sheetsFile(sheets: readonly Sheet[]): Promise<Uint8Array> {
  return writeXlsx({ sheets: sheets.map(sheetForFile), namedRanges: sheets.flatMap(namesForFile) });
}
