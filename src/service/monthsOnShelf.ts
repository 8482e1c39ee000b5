import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { calendarMonths } from './monthsInService.ts';

/**
 * Months between manufacture and installation, or as-of for a battery in stock, counted as `monthsInService` does.
 * @param made   day of manufacture; from a code its first day
 * @param until  installation, or as-of; not before `made`
 * @returns months, 0 or more
 * @problem outOfRange  when until is before made
 * @example monthsOnShelf(45292, 45444) // 5.0
 */
export function monthsOnShelf(made: Day, until: Day): Outcome<number> {
  if (until < made) return problem('outOfRange', 'madeLater', 'made', made, { more: { until } });
  return answer(calendarMonths(made, until));
}
