import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { POWER_OF_TEN } from './powerOfTen.ts';

const US_SHAPE = /^[0-9][0-9A-HJ-NP-Z]{3}[0-9]$/;
const LENGTH = 5;

/** Whether a code in upper case has the shape of the United States: a digit first and last, no I or O. */
export function isUsMakerCode(code: string): boolean {
  return US_SHAPE.test(code);
}

/**
 * Maker code (CAGE or NCAGE) checked against the rules for its characters, in upper case: five letters and digits.
 * With a digit first and last (United States) it holds no I or O; with a letter first or last (other countries) no O,
 * and one that begins with I, L or S ends with a digit. Whether the code was ever given out can't be told from it.
 * @param text  the code; a number only where it has all five digits
 * @returns the code in upper case
 * @problem badInput  when it has not five characters, or a character that can't stand there, or is a number that
 *   a sheet has made of a code such as 1E234
 * @source dodd4100-39 volume 7, shapes of the codes
 * @example makerCode('9zz98') // "9ZZ98"
 */
export function makerCode(text: unknown): Outcome<string> {
  if (typeof text !== 'string' && typeof text !== 'number') return refused('makerCodeText', text);
  const code = String(text).trim().toUpperCase();
  if (isDamaged(text, code)) return refused('makerCodeDamaged', text);
  if (!/^[0-9A-Z]*$/.test(code)) return refused('makerCodeText', text);
  if (code.length !== LENGTH) {
    return problem('badInput', 'makerCodeLength', 'text', text, { more: { length: code.length } });
  }
  return withRightLetters(code, text);
}

// A number of five digits is the code itself, one of fewer has perhaps lost a zero; any other is damage.
function isDamaged(text: string | number, code: string): boolean {
  if (typeof text === 'string') return POWER_OF_TEN.test(code);
  return !Number.isInteger(text) || text < 0 || text >= 10 ** LENGTH;
}

function withRightLetters(code: string, given: unknown): Outcome<string> {
  const [first, last] = [code[0]!, code[LENGTH - 1]!];
  if (isDigit(first) && isDigit(last)) {
    return isUsMakerCode(code) ? answer(code) : refused('makerCodeUs', given);
  }
  if (code.includes('O')) return refused('makerCodeO', given);
  return 'ILS'.includes(first) && !isDigit(last) ? refused('makerCodeEnds', given) : answer(code);
}

const isDigit = (character: string): boolean => character >= '0' && character <= '9';

type Reason = 'makerCodeText' | 'makerCodeDamaged' | 'makerCodeUs' | 'makerCodeO' | 'makerCodeEnds';

const refused = (because: Reason, given: unknown): Outcome<string> =>
  problem('badInput', because, 'text', given);
