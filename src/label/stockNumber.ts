import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { CODIFICATION_BUREAUS } from './codificationBureaus.codsp3.ts';
import { POWER_OF_TEN } from './powerOfTen.ts';

/** A part of a stock number that can be asked for by itself. */
export type StockNumberPart = 'class' | 'country' | 'item';

const BETWEEN = '\\s*[-\u2010\u2011\u2013]?\\s*';
const SHAPE = new RegExp(`^(\\d{4})${BETWEEN}(\\d{2})${BETWEEN}([0-9A-Z]\\d{2})${BETWEEN}(\\d{4})$`);
const HEADING = /^NSN[\s:.]*/;
const SEPARATORS = /[-\u2010\u2011\u2013\s]/g;
const LENGTH = 13;
// A number with nothing but zeros from the item on is what is left of 6.14E+12 and 6.14099E+12.
const ITEM_FIGURES = 10_000_000;

/**
 * NATO or national stock number checked and written 4-2-3-4, or a part of it: class (first four figures), country of
 * the codification bureau (figures five and six), or item (the nine characters from the bureau on, 2-3-4, which name
 * the item whatever its class). Dashes and blanks between the groups may be missing. There is no check digit: only
 * the shape and the bureau can be checked.
 * @param text  the stock number; a number only where it has all 13 figures
 * @param part  the part wanted; none = the whole
 * @returns the number, or the part, as text
 * @problem badInput       when it has not 13 characters in that shape, or a sheet has rounded it
 * @problem notEnoughData  when the country is wanted and the bureau is not in the list
 * @source natoStockNumber structure 4-2-3-4, the seventh character may be a letter
 * @source codsp3 countries of the bureaus, part of the list
 * @source ncsBrochure bureaus 00 and 99
 * @source fromMemory the other half of the bureaus
 * @example stockNumber('6140990000123') // "6140-99-000-0123"
 * @example stockNumber('6140-99-000-0123', 'item') // "99-000-0123"
 */
export function stockNumber(text: unknown, part?: StockNumberPart): Outcome<string> {
  if (typeof text !== 'string' && typeof text !== 'number')
    return problem('badInput', 'stockNumberShape', 'text', text);
  const given = String(text).trim().toUpperCase().replace(HEADING, '');
  if (isRounded(text, given)) return problem('badInput', 'stockNumberRounded', 'text', text);
  const groups = SHAPE.exec(given);
  if (groups === null) return misshapen(given, text);
  const [, supplyClass, bureau, first, last] = groups as unknown as readonly [
    string,
    string,
    string,
    string,
    string,
  ];
  if (part === 'class') return answer(supplyClass);
  if (part === 'country') return country(bureau, text);
  const item = `${bureau}-${first}-${last}`;
  return answer(part === 'item' ? item : `${supplyClass}-${item}`);
}

function isRounded(text: string | number, given: string): boolean {
  if (typeof text === 'string') return POWER_OF_TEN.test(given);
  return !Number.isSafeInteger(text) || text < 0 || (text >= 10 ** (LENGTH - 1) && text % ITEM_FIGURES === 0);
}

function misshapen(given: string, text: unknown): Outcome<string> {
  const length = given.replace(SEPARATORS, '').length;
  if (length === LENGTH) return problem('badInput', 'stockNumberShape', 'text', text);
  return problem('badInput', 'stockNumberLength', 'text', text, { more: { length } });
}

function country(bureau: string, text: unknown): Outcome<string> {
  const name = Object.values(CODIFICATION_BUREAUS).find((list) => list[bureau] !== undefined)?.[bureau];
  if (name !== undefined) return answer(name);
  return problem('notEnoughData', 'bureauUnknown', 'text', text, { more: { bureau } });
}
