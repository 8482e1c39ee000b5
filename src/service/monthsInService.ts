import type { Day } from '../basics/calendar.ts';
import { addMonths, dayParts } from '../basics/calendar.ts';
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
  const most = (last.year - first.year) * 12 + last.month - first.month;
  const whole = monthsLater(from, most) <= to ? most : most - 1;
  const begins = monthsLater(from, whole);
  return whole + (to - begins) / (monthsLater(from, whole + 1) - begins);
}

// Columns ask for the same few thousand days over and over.
const later = new Map<number, Day>();
const MOST_KEPT = 50_000;

function monthsLater(day: Day, months: number): Day {
  const key = day * 4096 + months;
  const known = later.get(key);
  if (known !== undefined) return known;
  if (later.size >= MOST_KEPT) later.clear();
  const moved = addMonths(day, months);
  later.set(key, moved);
  return moved;
}
