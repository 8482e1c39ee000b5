import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { DATA_IDENTIFIERS, TEXT_ELEMENTS } from './dataIdentifiers.mh10.ts';
import { elementString } from './elementString.ts';
import type { ElementMeaning, LabelElement } from './labelElement.ts';
import { END_OF_TRANSMISSION, GROUP_SEPARATOR, RECORD_SEPARATOR, spelledOut } from './symbolText.ts';

/** What every ISO/IEC 15434 message begins with. */
export const MESSAGE_START = '[)>';

/** The elements of a message, and the formats in which they stand. */
export type Message = { readonly formats: readonly string[]; readonly elements: readonly LabelElement[] };

const END = RECORD_SEPARATOR + END_OF_TRANSMISSION;
const OTHER_DATA_IDENTIFIER = /^(\d{0,3}[A-Z])(.+)$/;
const TEXT_ELEMENT = /^([A-Z]{3}) *(.+)$/;

/**
 * The elements of an ISO/IEC 15434 message: `[)>` RS, then for each format its number, GS, the fields with GS
 * between them, RS; EOT at the end. Formats 05 (GS1), 06 (data identifiers) and 12 (text elements).
 * @param text  the message with its control characters
 * @problem badInput  when header or end are damaged, the format is another, or a field can't be read
 * @source iso15434 structure of the message
 * @source mh10-8-2 data identifiers
 * @source milStd130n text elements
 */
export function envelope(text: string): Outcome<Message> {
  const start = MESSAGE_START + RECORD_SEPARATOR;
  if (!text.startsWith(start)) return damaged('envelopeHeader', text);
  if (!text.endsWith(END)) return damaged('envelopeOpen', text);
  const formats: string[] = [];
  const elements: LabelElement[] = [];
  for (const part of text.slice(start.length, -END.length).split(RECORD_SEPARATOR)) {
    const read = formatPart(part, text);
    if (!read.ok) return read;
    formats.push(part.slice(0, 2));
    elements.push(...read.value);
  }
  return answer({ formats, elements });
}

function formatPart(part: string, text: string): Outcome<readonly LabelElement[]> {
  const format = part.slice(0, 2);
  if (format !== '05' && format !== '06' && format !== '12') {
    return problem('badInput', 'envelopeFormat', 'symbol', spelledOut(text), { more: { format } });
  }
  if (part[2] !== GROUP_SEPARATOR) return damaged('envelopeHeader', text);
  const rest = part.slice(3);
  if (format === '05') return elementString(rest);
  return fields(rest.split(GROUP_SEPARATOR), format === '06' ? dataIdentifier : textElement);
}

const damaged = (because: 'envelopeHeader' | 'envelopeOpen', text: string): Outcome<never> =>
  problem('badInput', because, 'symbol', spelledOut(text));

type FieldReader = (field: string) => LabelElement | undefined;

function fields(list: readonly string[], read: FieldReader): Outcome<readonly LabelElement[]> {
  const elements: LabelElement[] = [];
  for (const field of list) {
    const element = read(field);
    if (element === undefined) return problem('badInput', 'fieldUnknown', 'symbol', spelledOut(field));
    elements.push(element);
  }
  return answer(elements);
}

const dataIdentifier: FieldReader = (field) =>
  element(OTHER_DATA_IDENTIFIER.exec(field), DATA_IDENTIFIERS, 'data identifier');

const textElement: FieldReader = (field) => element(TEXT_ELEMENT.exec(field), TEXT_ELEMENTS, 'text element');

// A field with a key that isn't listed here still ends at the separator, so it can be shown as it is.
function element(
  match: RegExpExecArray | null,
  meanings: Readonly<Record<string, ElementMeaning>>,
  kind: string,
): LabelElement | undefined {
  if (match === null) return undefined;
  const [key, value] = [match[1]!, match[2]!];
  const meaning = Object.hasOwn(meanings, key) ? meanings[key]! : { name: `${kind} ${key}` };
  return { key, value, meaning };
}
