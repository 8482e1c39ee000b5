import type { DateTime } from 'luxon';
import fc from 'fast-check';
import { momentOfDay } from '../../src/basics/calendar.ts';
import { AS_OF } from './sayings.ts';

/** Layouts of every shape that the language allows, and how far back their years can be told apart [days]. */
export const LAYOUTS: readonly (readonly [text: string, reach: number])[] = [
  ...['MMyy-lot', 'yyMM', 'MMyyyy-lot', 'yyyy-MM', 'lot-MMyy', 'MMyy#lot', 'LMMyylot'],
  ...['yyMMdd', 'ddMMyy-lot', 'yyyyMMdd-lot', 'dd-MM-yyyy', 'MM-dd-yy-lot'],
  ...['yyooo', 'yyooo-lot', 'oooyy', 'yyyyooo', 'kkWW', 'WWkk-lot'],
  ...['Ayy', 'yyA-lot', 'a12yy-lot', 'Ayyyy', 'Addyy'],
]
  .map((text): readonly [string, number] => [text, 29 * 365])
  .concat(['Ay', 'yA-lot', 'a12y-lot', 'yooo', 'yMMdd', 'MMy-lot'].map((text) => [text, 9 * 365]));

/** A day within reach of as-of, and 31 days ahead of it. */
export const dayWithin = (reach: number): fc.Arbitrary<number> =>
  fc.integer({ min: AS_OF - reach, max: AS_OF + 31 });

/** A lot as labels carry it. */
export const lots = fc.stringMatching(/^[0-9A-Z]{1,6}$/);

const PIECES = /yyyy|yy|y|ooo|a12|lot|MM|dd|kk|WW|A|[^]/g;

/** The code that a maker with this layout stamps on a battery made that day: the inverse, by Luxon's own letters. */
export function writtenCode(layout: string, day: number, lot: string): string {
  const moment = momentOfDay(day);
  return layout.replace(PIECES, (piece) => {
    if (piece === 'lot') return lot;
    if (piece === 'y') return String(moment.year % 10);
    if (piece === 'A') return 'ABCDEFGHJKLM'[moment.month - 1]!;
    if (piece === 'a12') return 'ABCDEFGHIJKL'[moment.month - 1]!;
    return /^(yyyy|yy|MM|dd|ooo|kk|WW)$/.test(piece) ? moment.toFormat(piece) : piece;
  });
}

/** The day that such a code gives back: itself, or the first of its month or week. */
export function dayToldBy(layout: string, day: number): number {
  const moment = momentOfDay(day);
  return layout.includes('WW')
    ? startDay(moment, 'week')
    : saysTheDay(layout)
      ? day
      : startDay(moment, 'month');
}

const saysTheDay = (layout: string): boolean => layout.includes('dd') || layout.includes('ooo');

const startDay = (moment: DateTime, unit: 'week' | 'month'): number =>
  Math.round(moment.startOf(unit).toMillis() / 86_400_000) + 25_569;
