import type { Day } from '../basics/calendar.ts';
import { dayParts } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';

/** The lengths by which a fiscal period can be named. */
export type FiscalLength = 'year' | 'quarter' | 'month';

/**
 * Name of the fiscal period that holds a day: FY2027, FY2027 Q2 or FY2027 M05. A fiscal year is named by the
 * calendar year in which it ends; quarters and months are counted from its beginning.
 * @param day         the day
 * @param firstMonth  first month of the fiscal year, 1 to 12
 * @param by          year, quarter or month
 * @returns the name
 * @problem outOfRange  when firstMonth is not a whole number from 1 to 12
 * @source fiscalYearNaming named by its end (US government, from 1 October)
 * @example fiscalPeriod(45931, 10) // "FY2026"
 */
export function fiscalPeriod(day: Day, firstMonth = 1, by: FiscalLength = 'year'): Outcome<string> {
  if (!(Number.isInteger(firstMonth) && firstMonth >= 1 && firstMonth <= 12)) {
    return problem('outOfRange', 'wholeFirstMonth', 'firstMonth', firstMonth, { limits: [1, 12] });
  }
  const { year, month } = dayParts(day);
  const number = (month - firstMonth + 12) % 12;
  const name = `FY${firstMonth > 1 && month >= firstMonth ? year + 1 : year}`;
  if (by === 'year') return answer(name);
  if (by === 'quarter') return answer(`${name} Q${Math.floor(number / 3) + 1}`);
  return answer(`${name} M${String(number + 1).padStart(2, '0')}`);
}
