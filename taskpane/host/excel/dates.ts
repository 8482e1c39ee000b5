import type { Format } from '../../../src/report/sheet.ts';
import type { Entry } from './cells.ts';
import { entryOf } from './cells.ts';
import type { HostCell } from '../sheetHost.ts';

/** Days between the two ways in which a workbook can count its dates. */
const DAYS_1904 = 1_462;

/** The workbook's own serial of the first day of 1904; no member of Excel tells how it counts, but this does. */
export function firstDayOf1904(workbook: Excel.Workbook): Excel.FunctionResult<number> {
  const day = workbook.functions.date(1904, 1, 1);
  day.load('value');
  return day;
}

/** Whether a workbook counts its dates from 1904, once that day is loaded. */
export function countsFrom1904(first: Excel.FunctionResult<number>): boolean {
  return first.value === 0;
}

/** What is added to the workbook's dates to count them from 1900. */
export function dateShift(first: Excel.FunctionResult<number>): number {
  return countsFrom1904(first) ? DAYS_1904 : 0;
}

/** A value as the workbook takes it in, its dates counted in the workbook's own way. */
export function entryIn(shift: number, value: HostCell, format: Format): Entry {
  return entryOf(typeof value === 'number' && format === 'date' ? value - shift : value);
}
