import { DateTime } from 'luxon';
import type { Day } from '../basics/calendar.ts';
import { dayOfMoment, FIRST_DAY, LAST_DAY } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';

/** How a symbol writes a date, in Luxon's letters. */
export type SymbolDateLayout =
  | ('yyMMdd' | 'ddMMyy' | 'MMddyy' | 'yyooo' | 'yyyyMMdd' | 'MMyy' | 'kkWW' | 'kkkkWW' | 'ddMMyyyy')
  // GS1: the day may be 00, for the whole month.
  | 'yyMMd0';

/** A date in a symbol: its first day, and how long a time it names. */
export type SymbolDate = { readonly day: Day; readonly to: 'day' | 'week' | 'month' };

/**
 * Two-digit years in a symbol from this one on are of the 1900s, lower ones of the 2000s: a cell knows no clock, and
 * this is the tool's own span of 1970 to 2069 (own judgement).
 */
export const FIRST_YEAR_OF_1900S = 70;

// A fleet's symbols hold a few thousand distinct dates however many rows.
const seen = new Map<string, Outcome<SymbolDate>>();
const MOST_KEPT = 20_000;

/**
 * The date that a field of a symbol holds.
 * @param text    the field's characters
 * @param layout  how they are written
 * @param name    what the field is called, for sentences
 * @returns first day of the date, and whether it names a day, a week or a month
 * @problem badInput  when it is no date of the calendar, or outside 1970 to 2100
 */
export function symbolDate(text: string, layout: SymbolDateLayout, name: string): Outcome<SymbolDate> {
  const key = `${layout} ${name} ${text}`;
  const known = seen.get(key);
  if (known !== undefined) return known;
  const date = newDate(text, layout, name);
  if (seen.size >= MOST_KEPT) seen.clear();
  seen.set(key, date);
  return date;
}

function newDate(text: string, given: SymbolDateLayout, name: string): Outcome<SymbolDate> {
  if (text.length !== given.length || !/^\d+$/.test(text)) return noDate(text, given, name);
  const layout = given === 'yyMMd0' ? (text.endsWith('00') ? 'yyMM' : 'yyMMdd') : given;
  const written = layout.length < text.length ? text.slice(0, layout.length) : text;
  const month = layout.includes('MM') ? written.slice(layout.indexOf('MM')).slice(0, 2) : '01';
  if (!/^(?:0[1-9]|1[0-2])$/.test(month)) {
    return problem('badInput', 'codeMonth', name, text, { more: { month } });
  }
  const moment = DateTime.fromFormat(...withCentury(written, layout), { zone: 'utc' });
  const day = moment.isValid ? dayOfMoment(moment) : Number.NaN;
  return day >= FIRST_DAY && day <= LAST_DAY
    ? answer({ day, to: spanOf(layout) })
    : noDate(text, given, name);
}

// Luxon chooses the century of a two-digit year by a setting of its own: give it four.
function withCentury(text: string, layout: string): readonly [string, string] {
  if (/yyyy|kkkk/.test(layout)) return [text, layout];
  const at = layout.search(/yy|kk/);
  const century = Number(text.slice(at, at + 2)) >= FIRST_YEAR_OF_1900S ? '19' : '20';
  return [text.slice(0, at) + century + text.slice(at), layout.replace(/yy|kk/, '$&$&')];
}

function spanOf(layout: string): SymbolDate['to'] {
  if (layout.includes('WW')) return 'week';
  return layout.includes('dd') || layout.includes('ooo') ? 'day' : 'month';
}

const noDate = (text: string, layout: string, name: string): Outcome<SymbolDate> =>
  problem('badInput', 'symbolDate', name, text, { more: { layout } });
