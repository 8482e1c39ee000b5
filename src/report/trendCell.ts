import type { Day } from '../basics/calendar.ts';
import { isoDay } from '../basics/calendar.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';
import type { Battery } from '../service/battery.ts';

/** A crossing further away than this is not told by its month: no battery's line stays straight so long. */
const MOST_MONTHS = 120;

/** The month in which a battery's tests reach the least accepted, with its 90 % band; empty without a trend. */
export function crossingText({ trend }: Battery, asOf: Day): string {
  if (trend === undefined) return '';
  if (trend.crossingMonths === undefined) return 'not surely falling';
  const { best, low, high } = trend.crossingMonths;
  if (best > MOST_MONTHS) return 'more than 10 years on';
  return `${monthText(best, asOf)} (${monthText(low, asOf)} to ${monthText(high, asOf)})`;
}

function monthText(months: number, asOf: Day): string {
  if (Math.abs(months) > MOST_MONTHS) return months > 0 ? 'later' : 'earlier';
  return isoDay(Math.round(asOf + months * DAYS_PER_MONTH)).slice(0, 7);
}
