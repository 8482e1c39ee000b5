import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { compileLayout, DEFAULT_LAYOUT } from './layout.ts';
import { readCode } from './readCode.ts';

/**
 * Day of manufacture from a code, as-of and the maker's layout: the first day of the month or week that the code
 * gives, or the day itself. A two-digit year is the latest whose date is not after as-of + 31 days; over 30 years
 * old it is refused. One digit: the latest such year, however old. It assumes that the layout is the maker's own:
 * no second one is ever tried, because the public lists of month letters disagree from September on.
 * @param code    manufacture code: text, or the whole number that a sheet made of it
 * @param asOf    day of the question
 * @param layout  pieces yyyy yy y MM dd ooo kk WW A a12 lot; anything else stands for itself
 * @returns spreadsheet day
 * @problem badInput    when the layout is none, or the code doesn't fit it or gives no day of the calendar
 * @problem outOfRange  when its date is later than as-of + 31 days, or over 30 years old
 * @source commonPractice month, year and lot on the label of a battery
 * @source monthLetterPages the two lists of month letters, A and a12
 * @source mh10-8-2 the same shapes as data identifiers 7D, 4D, 10D and 12D
 * @example manufactureDate('0324-117', 46096) // 45352
 * @example isoDay(manufactureDate('2410', 46096, 'kkWW').value) // "2024-03-04"
 */
export function manufactureDate(code: unknown, asOf: Day, layout = DEFAULT_LAYOUT): Outcome<Day> {
  const compiled = compileLayout(layout);
  if (!compiled.ok) return compiled;
  return andThen(readCode(code, compiled.value, asOf), ({ day }) => answer(day));
}
