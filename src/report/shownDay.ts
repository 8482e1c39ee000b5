import type { Day } from '../basics/calendar.ts';
import { isoDay } from '../basics/calendar.ts';
import type { DateShown } from './sheet.ts';

/** A day as sentences on a sheet show it, in the order of the sheet's date cells. */
export function shownDay(day: Day, shown: DateShown = 'yearFirst'): string {
  const iso = isoDay(day);
  if (shown === 'yearFirst') return iso;
  const [year, month, date] = iso.split('-');
  return shown === 'dayFirst' ? `${date}/${month}/${year}` : `${month}/${date}/${year}`;
}
