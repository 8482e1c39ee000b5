import { forecastSheet } from './forecastSheet.ts';
import type { ReportFacts } from './reportFacts.ts';
import { rowsToCheckSheet } from './rowsToCheckSheet.ts';
import type { Sheet } from './sheet.ts';
import { freeSheetName } from './sheetName.ts';
import { storeListSheet } from './storeListSheet.ts';
import { unitsPlace, unitsSheet } from './unitsSheet.ts';

/** The sheets that a forecast adds to a workbook, under names that are free there. */
export function forecastSheets(facts: ReportFacts, taken: readonly string[]): Sheet[] {
  const names = ['Forecast', 'Forecast units', 'Rows to check', 'Store list'].reduce<string[]>(
    (chosen, wanted) => [...chosen, freeSheetName(wanted, [...taken, ...chosen])],
    [],
  ) as [string, string, string, string];
  return [
    forecastSheet(facts, names[0], unitsPlace(facts, names[1])),
    unitsSheet(facts, names[1]),
    rowsToCheckSheet(facts, names[2]),
    storeListSheet(facts, names[3]),
  ];
}
