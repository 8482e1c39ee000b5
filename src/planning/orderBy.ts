import type { Day } from '../basics/calendar.ts';
import { addMonths } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';

const MOST_MONTHS = 120;

/**
 * Day by which to order what is needed on a day: the lead time and a margin of safety before it. Whole months go
 * by the calendar (the last day of a month where the day is missing); part of a month counts 30.4375 days,
 * rounded up, so that an order is never late by rounding.
 * @param needed        day of need
 * @param leadMonths    from order to delivery [months], 0 to 120
 * @param safetyMonths  margin before the need [months], 0 to 120, default 0
 * @returns day by which to order
 * @problem outOfRange  when lead time or margin is negative or above 120 months
 * @source commonPractice lead time and safety time before the day of need
 * @example isoDay(orderBy(46296, 4, 1).value) // "2026-05-01"
 */
export function orderBy(needed: Day, leadMonths: number, safetyMonths = 0): Outcome<Day> {
  for (const [argument, months] of Object.entries({ leadMonths, safetyMonths })) {
    if (!(months >= 0 && months <= MOST_MONTHS)) {
      return problem('outOfRange', 'outOfLimits', argument, months, { limits: [0, MOST_MONTHS] });
    }
  }
  const months = leadMonths + safetyMonths;
  const whole = Math.floor(months + 1e-9);
  const days = Math.ceil((months - whole) * DAYS_PER_MONTH - 1e-6);
  return answer(addMonths(needed, -whole) - Math.max(0, days));
}
