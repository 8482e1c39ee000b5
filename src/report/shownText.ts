import type { Battery } from '../service/battery.ts';
import type { ReportFacts } from './reportFacts.ts';

// A cell holds 32,767 UTF-16 units; a longer text would make spreadsheets repair or refuse the file.
const LONGEST_TEXT = 32_767;

/** Characters that no XML file may hold: control characters other than tab and line ends, halves of characters. */
const NOT_WRITABLE =
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

const CONTROL_SYMBOLS = 0x2400;
const DELETE = 0x7f;
const DELETE_SYMBOL = '\u2421';

/** The visible symbol of a control character (bell: U+2407), the replacement character for anything else. */
function symbolOf(character: string): string {
  const code = character.charCodeAt(0);
  if (code < 0x20) return String.fromCharCode(CONTROL_SYMBOLS + code);
  return code === DELETE ? DELETE_SYMBOL : '\uFFFD';
}

/** A text with characters that no file can hold replaced. */
export function plainText(text: string, by?: string): string {
  return text.replace(NOT_WRITABLE, (character) => by ?? symbolOf(character));
}

/**
 * A text as a cell can hold it: what can't be written is replaced by a visible symbol, what is too long is cut and
 * says so.
 */
export function shownText(text: string): string {
  const plain = plainText(text);
  if (plain.length <= LONGEST_TEXT) return plain;
  const mark = ` [cut here: ${text.length} characters]`;
  return firstUnits(plain, LONGEST_TEXT - mark.length) + mark;
}

/** The first UTF-16 units of a text; a character of two units is never split. */
export function firstUnits(text: string, units: number): string {
  const cut = text.slice(0, units);
  return cut.length < text.length && /[\uD800-\uDBFF]$/.test(cut) ? cut.slice(0, -1) : cut;
}

/** How many texts of the inventory stand on the sheets other than they were read. */
export function changedTexts({ plan, toCheck, batteries }: ReportFacts): number {
  const shown = [
    ...plan.units.flatMap(({ battery }) => {
      const { serial, site, vehicle, set, type, verdictReason = '' } = battery;
      return [serial, site, vehicle, set, type, verdictReason];
    }),
    ...batteries.flatMap((battery) => (battery.whereabouts === 'inStock' ? stockTexts(battery) : [])),
    ...toCheck.flatMap(({ column, given, done, sheet = '' }) => [column, given, done, sheet]),
  ];
  return new Set(shown.filter((text) => shownText(text) !== text)).size;
}

const stockTexts = ({ serial, site, storagePlace = '', type, verdictReason = '' }: Battery): string[] => [
  serial,
  site,
  storagePlace,
  type,
  verdictReason,
];
