import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { ApplicationIdentifier } from './applicationIdentifiers.gs1.ts';
import { applicationIdentifier } from './applicationIdentifiers.gs1.ts';
import type { LabelElement } from './labelElement.ts';
import { GROUP_SEPARATOR, spelledOut } from './symbolText.ts';

type Found = { readonly ai: string; readonly meaning: ApplicationIdentifier; readonly value: string };

/**
 * The check digit that goes behind the figures of a GS1 key: weights 3 and 1 from the right, up to the next ten.
 * @param figures  the key without its check digit
 * @source gs1SyntaxDictionary rule of the check digit
 * @example gs1CheckDigit('0952123450001') // 8
 */
export function gs1CheckDigit(figures: string): number {
  const sum = [...figures]
    .reverse()
    .reduce((total, figure, index) => total + Number(figure) * (index % 2 ? 1 : 3), 0);
  return (10 - (sum % 10)) % 10;
}

/**
 * The elements of a GS1 element string: application identifiers with what stands behind them, FNC1 as <GS>.
 * @param text  element string
 * @problem badInput  when an identifier is unknown, its characters can't be, a check digit is wrong, or what must
 *   stand beside it is missing
 * @source gs1SyntaxDictionary lengths, separators, check digits, associations
 */
export function elementString(text: string): Outcome<readonly LabelElement[]> {
  const found: Found[] = [];
  for (let at = 0; at < text.length;) {
    if (text[at] === GROUP_SEPARATOR) at += 1;
    else {
      const next = elementAt(text, at);
      if (!next.ok) return next;
      found.push(next.value);
      at += next.value.ai.length + next.value.value.length;
    }
  }
  const wrong = found.map((each) => faultOf(each, found)).find((fault) => fault !== undefined);
  return wrong ?? answer(found.map(({ ai, meaning, value }) => ({ key: ai, value, meaning })));
}

function elementAt(text: string, at: number): Outcome<Found> {
  for (const length of [2, 3, 4]) {
    const ai = text.slice(at, at + length);
    const meaning = applicationIdentifier(ai);
    if (meaning !== undefined) return answer({ ai, meaning, value: valueAt(text, at + length, meaning) });
  }
  return problem('badInput', 'aiUnknown', 'symbol', spelledOut(text.slice(at)));
}

function valueAt(text: string, from: number, { fixed }: ApplicationIdentifier): string {
  const separator = text.indexOf(GROUP_SEPARATOR, from);
  const end = separator < 0 ? text.length : separator;
  return text.slice(from, fixed === undefined ? end : Math.min(from + fixed, end));
}

type Fault = ReturnType<typeof problem>;

function faultOf({ ai, meaning, value }: Found, all: readonly Found[]): Fault | undefined {
  const name = `${meaning.name} (${ai})`;
  if (!meaning.shape.test(value)) return problem('badInput', 'fieldShape', name, spelledOut(value));
  const digit = wrongDigit(meaning, value);
  if (digit !== undefined) return problem('badInput', 'checkDigit', name, value, { more: { digit } });
  const lacking = meaning.needs?.find((needed) => !all.some((other) => needed.includes(other.ai)));
  if (lacking === undefined) return undefined;
  return problem('badInput', 'aiNeeds', name, value, { more: { ai, needed: oneOf(lacking) } });
}

// The digit that should stand there, where another does.
function wrongDigit({ checked }: ApplicationIdentifier, value: string): number | undefined {
  if (checked === undefined) return undefined;
  const figures = value.slice(checked[0], checked[0] + checked[1]);
  const digit = gs1CheckDigit(figures.slice(0, -1));
  return digit === Number(figures.at(-1)) ? undefined : digit;
}

const oneOf = (list: readonly string[]): string =>
  list.length === 1 ? list[0]! : `${list.slice(0, -1).join(', ')} or ${list.at(-1)!}`;
