import type { Day } from '../basics/calendar.ts';
import { dayParts } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';

/** The lengths by which a fiscal period can be named. */
export type FiscalLength = 'year' | 'quarter' | 'month';

/** The calendar year by which a fiscal year is named: in which it ends or begins, or both (2026/27). */
export type FiscalLabel = 'endYear' | 'startYear' | 'both';

/**
 * Name of the fiscal year that ends in a calendar year: FY2027, by its beginning FY2026, or by both FY2026/27. One that
 * begins in January lies in one calendar year and has one name.
 * @param endYear     calendar year in which it ends
 * @param firstMonth  first month of the fiscal year, 1 to 12
 * @param label       by which calendar year it is named
 * @returns the name
 * @example fiscalYearName(2027, 10, 'both') // "FY2026/27"
 */
export function fiscalYearName(endYear: number, firstMonth: number, label: FiscalLabel = 'endYear'): string {
  if (firstMonth === 1 || label === 'endYear') return `FY${endYear}`;
  return label === 'startYear'
    ? `FY${endYear - 1}`
    : `FY${endYear - 1}/${String(endYear % 100).padStart(2, '0')}`;
}

/**
 * Name of the fiscal period that holds a day: FY2027, FY2027 Q2 or FY2027 M05. A fiscal year is named by the
 * calendar year in which it ends, unless said otherwise; quarters and months are counted from its beginning.
 * @param day         the day
 * @param firstMonth  first month of the fiscal year, 1 to 12
 * @param by          year, quarter or month
 * @param label       by which calendar year a fiscal year is named; default the one in which it ends
 * @returns the name
 * @problem outOfRange  when firstMonth is not a whole number from 1 to 12
 * @source fiscalYearNaming named by its end (US government, from 1 October)
 * @example fiscalPeriod(45931, 10) // "FY2026"
 */
export function fiscalPeriod(
  day: Day,
  firstMonth = 1,
  by: FiscalLength = 'year',
  label: FiscalLabel = 'endYear',
): Outcome<string> {
  if (!(Number.isInteger(firstMonth) && firstMonth >= 1 && firstMonth <= 12)) {
    return problem('outOfRange', 'wholeFirstMonth', 'firstMonth', firstMonth, { limits: [1, 12] });
  }
  const { year, month } = dayParts(day);
  const number = (month - firstMonth + 12) % 12;
  const endYear = firstMonth > 1 && month >= firstMonth ? year + 1 : year;
  const name = fiscalYearName(endYear, firstMonth, label);
  if (by === 'year') return answer(name);
  if (by === 'quarter') return answer(`${name} Q${Math.floor(number / 3) + 1}`);
  return answer(`${name} M${String(number + 1).padStart(2, '0')}`);
}
