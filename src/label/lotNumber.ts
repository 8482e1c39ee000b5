import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { compileLayout, DEFAULT_LAYOUT } from './layout.ts';
import { splitCode } from './readCode.ts';

/**
 * Lot from a manufacture code and the maker's layout, as text: upper case, blanks taken out, leading zeros kept;
 * empty where the code has none. The code has to fit the layout; whether its date can be is `manufactureDate`'s.
 * @param code    manufacture code: text, or the whole number that a sheet made of it
 * @param layout  pieces yyyy yy y MM dd ooo kk WW A a12 lot; anything else stands for itself
 * @returns the lot, or ""
 * @problem badInput  when the layout is none, or the code doesn't fit it
 * @source commonPractice month, year and lot on the label of a battery
 * @example lotNumber('0324-017') // "017"
 */
export function lotNumber(code: unknown, layout = DEFAULT_LAYOUT): Outcome<string> {
  const compiled = compileLayout(layout);
  if (!compiled.ok) return compiled;
  return andThen(splitCode(code, compiled.value), ({ lot }) => answer(lot));
}
