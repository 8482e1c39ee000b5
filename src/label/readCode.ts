import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { codeDay } from './codeDay.ts';
import type { Layout } from './layout.ts';

/** What a manufacture code says. */
export type CodeReading = {
  /** First day of the month or week that the code gives, or the day. */
  readonly day: Day;
  /** Lot in upper case, without blanks, leading zeros kept; empty where the code has none. */
  readonly lot: string;
  /** The code was a number that had lost its leading zero. */
  readonly zeroAdded: boolean;
};

/** A code taken apart by a layout: the characters of its date pieces in a row, and its lot. */
export type CodeParts = { readonly date: string; readonly lot: string; readonly zeroAdded: boolean };

const LONGEST_CODE = 60;
const BLANKS = /\s+/g;

/**
 * The date pieces and the lot of a manufacture code. Blanks and case don't matter. A number with exactly one
 * digit fewer than the layout's digits gets one leading zero, for a sheet has eaten it; a text never does.
 * @param code  manufacture code: text, or a whole number as a sheet made of it
 * @param layout  from compileLayout
 * @problem badInput  when it is no code, or doesn't fit the layout
 */
export function splitCode(code: unknown, layout: Layout): Outcome<CodeParts> {
  const text = codeText(code);
  if (text === undefined) return problem('badInput', 'notACode', 'code', code);
  const zeroAdded = typeof code === 'number' && text.length === layout.digits - 1;
  const groups = layout.pattern.exec(zeroAdded ? `0${text}` : text);
  if (groups === null) return misfit(code, layout);
  let [date, lot] = ['', ''];
  for (let index = 0; index < layout.pieces.length; index += 1) {
    const part = (groups[index + 1] ?? '').replace(BLANKS, '');
    if (layout.pieces[index] === 'lot') lot = part;
    else date += part;
  }
  return answer({ date, lot, zeroAdded });
}

function misfit(code: unknown, layout: Layout): Outcome<CodeParts> {
  const more = { layout: layout.text, example: layout.example };
  return problem('badInput', 'codeNotInLayout', 'code', code, { more });
}

function codeText(code: unknown): string | undefined {
  if (typeof code === 'number') return Number.isSafeInteger(code) && code >= 0 ? String(code) : undefined;
  if (typeof code !== 'string' || code.length > LONGEST_CODE) return undefined;
  return code.trim().toUpperCase();
}

/**
 * What a manufacture code says in one layout: its day and its lot. A missing day is the first of the month, a
 * week its Monday. A two-digit year is the latest whose date is not after as-of + 31 days; over 30 years old
 * it is refused. One digit: the latest such year, however old. No second layout is ever tried.
 * @param code  manufacture code: text, or a whole number as a sheet made of it
 * @param layout  from compileLayout
 * @param asOf  day of the question; decides the century or decade
 * @problem badInput  when it is no code, doesn't fit the layout, or gives no day of the calendar
 * @problem outOfRange  when its date is later than as-of + 31 days, or over 30 years old
 */
export function readCode(code: unknown, layout: Layout, asOf: Day): Outcome<CodeReading> {
  const parts = splitCode(code, layout);
  if (!parts.ok) return parts;
  const { date, lot, zeroAdded } = parts.value;
  const day = codeDay(date, layout, asOf);
  if (day.ok) return answer({ day: day.value, lot, zeroAdded });
  return { ok: false, problem: { ...day.problem, given: code } };
}
