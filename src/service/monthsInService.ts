import type { Day, DayParts } from '../basics/calendar.ts';
import { dayFromParts, dayParts } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';

/**
 * Months in service from installation to removal, or to as-of for a battery still in: the most whole months that
 * fit, plus the days left over as a share of the running month, less the months spent out of a vehicle. A missing
 * day of a month is that month's last. Life statistics use days / 30.4375 instead and say so.
 * @param installed  day of the first installation
 * @param until      removal, or as-of; not before `installed`
 * @param monthsOut  months on a shelf between installations, 0 or more
 * @returns months, 0 or more
 * @problem outOfRange  when until is before installed, or monthsOut is negative or longer than the whole time
 * @example monthsInService(45292, 45323) // 1.0
 */
export function monthsInService(installed: Day, until: Day, monthsOut = 0): Outcome<number> {
  if (until < installed)
    return problem('outOfRange', 'installedLater', 'installed', installed, { more: { until } });
  const months = calendarMonths(installed, until);
  if (!(monthsOut >= 0 && monthsOut <= months)) {
    return problem('outOfRange', 'monthsOutLimits', 'monthsOut', monthsOut, {
      limits: [0, Number(months.toFixed(1))],
    });
  }
  return answer(months - monthsOut);
}

/**
 * Months between two days by the calendar: whole months, plus the days left over by the days of that running month.
 * @param from  first day
 * @param to    last day, not before `from`
 */
export function calendarMonths(from: Day, to: Day): number {
  const [first, last] = [dayParts(from), dayParts(to)];
  const month = monthIndex(first);
  const later = (months: number): Day => dayOfMonth(month + months, first.day);
  const most = monthIndex(last) - month;
  const whole = later(most) <= to ? most : most - 1;
  return whole + (to - later(whole)) / (later(whole + 1) - later(whole));
}

const monthIndex = ({ year, month }: DayParts): number => year * 12 + month - 1;

// A missing day of a month is that month's last.
const dayOfMonth = (month: number, day: number): Day =>
  Math.min(firstOfMonth(month) + day - 1, firstOfMonth(month + 1) - 1);

const firstOfMonth = (month: number): Day => dayFromParts(Math.floor(month / 12), (month % 12) + 1, 1)!;
