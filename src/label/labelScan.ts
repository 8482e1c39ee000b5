import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { elementString } from './elementString.ts';
import { envelope, MESSAGE_START } from './envelope.ts';
import type { LabelContent, LabelField } from './labelElements.ts';
import { LABEL_FIELDS, labelContent, stockParts } from './labelElements.ts';
import { stockNumber } from './stockNumber.ts';
import type { ScannerFrame } from './scannerFrame.ts';
import { scannerFrame } from './scannerFrame.ts';
import { symbolDate } from './symbolDate.ts';
import { controlCharacters, GROUP_SEPARATOR, hasControls, spelledOut } from './symbolText.ts';

/** What a label says, and as what its text was read. */
export type LabelScan = LabelContent & {
  readonly readAs: string;
  /** What the scanner had put around the text, spelled; left out where it had not. */
  readonly takenOff?: string;
};

// Marks of GS1 symbols.
const GS1_MARK = /^\](?:C1|d2|Q3|e0|J1)/;
const TRADE_ITEM_FIRST = /^01\d{14}/;
const LONE_DATE = /^11(\d{6})$/;
const STOCK_NUMBER =
  /^NSN\b|^\d{4}[-\u2010\u2011\u2013 ]\d{2}[-\u2010\u2011\u2013 ]|^6140\d{2}[0-9A-Z]\d{6}$/i;
const DATE_CODE = /^(\d{4})[-\u2010\u2011\u2013/ ]([0-9A-Z]{1,6})$/i;
const BARE_SERIAL = /^[0-9A-Z][0-9A-Z./-]{0,49}$/i;
const MOST_EXACT_FIGURES = 15;

/**
 * What the text of a label's symbol says: an ISO/IEC 15434 message of format 05, 06 or 12; a GS1 element string with
 * FNC1; a stock number as people read it; a date code MMyy-lot; or a bare serial. Control characters may be spelled
 * <RS> <GS> <EOT> or {RS} {GS} {EOT}. What a scanner is set to send around the text - STX and ETX, the mark of the
 * symbol's kind, a separator at the end - is taken off and told. Two-digit years: 70 to 99 are 1970 to 1999, 00 to 69 are 2000 to 2069. The date
 * made is the symbol's date of manufacture, or else its one other date.
 * @param symbol  text of the symbol; a number only where it has at most 15 figures
 * @returns the fields that the label holds
 * @problem badInput  when the text is damaged or cut short, a field is malformed, or what belongs together isn't there
 * @source iso15434 messages
 * @source gs1SyntaxDictionary element strings
 * @source iso15424 marks of symbols
 * @example labelScan('[)>{RS}06{GS}17V9ZZ98{GS}1PBX6T-100{GS}S0001234{RS}{EOT}').value.uii // "D9ZZ98BX6T-1000001234"
 */
export function labelScan(symbol: unknown): Outcome<LabelScan> {
  const text = symbolText(symbol);
  if (text === undefined) return problem('badInput', 'notASymbol', 'symbol', symbol);
  const frame = scannerFrame(text);
  return andThen(contentOf(frame), (scan) =>
    answer(frame.takenOff === '' ? scan : { ...scan, takenOff: frame.takenOff }),
  );
}

function contentOf(frame: ScannerFrame): Outcome<LabelScan> {
  const { bare, mark, endsWithSeparator } = frame;
  if (bare.startsWith(MESSAGE_START)) return fromMessage(bare);
  if (GS1_MARK.test(mark)) return fromMarked(bare, mark);
  if (isElementString(bare)) return fromElementString(bare);
  if (endsWithSeparator && /^\d/.test(bare)) return fromSeparated(bare);
  if (STOCK_NUMBER.test(bare)) return fromStockNumber(bare);
  const code = DATE_CODE.exec(bare);
  if (code !== null) return fromDateCode(bare, code[1]!, code[2]!);
  if (BARE_SERIAL.test(bare)) return answer({ readAs: 'bare serial', serial: bare, others: [] });
  const because = hasControls(bare) ? 'strayControls' : 'notASymbol';
  return problem('badInput', because, 'symbol', spelledOut(bare));
}

/**
 * One field of a label; empty where the label doesn't hold it.
 * @param symbol  text of the symbol
 * @param field   serial, part, maker, lot, made, stock or uii
 * @returns text, or for `made` a spreadsheet day; "" where the label lacks the field
 * @problem badInput  as labelScan
 * @example labelField('0324-117', 'lot') // "117"
 */
export function labelField(symbol: unknown, field: LabelField): Outcome<string | Day> {
  return andThen(labelScan(symbol), (scan) => answer<string | Day>(scan[field] ?? ''));
}

/**
 * Everything that a label says as rows of name and value, the fields of `labelField` first.
 * @param scan  from labelScan
 */
export function labelRows(scan: LabelScan): readonly (readonly [string, string | Day])[] {
  const fields = LABEL_FIELDS.flatMap((field) => {
    const value = scan[field];
    return value === undefined ? [] : [[field, value] as const];
  });
  const span = scan.madeTo === undefined ? [] : [['made names a', scan.madeTo] as const];
  const frame = scan.takenOff === undefined ? [] : [['taken off', scan.takenOff] as const];
  return [...fields, ...span, ...scan.others, ['read as', scan.readAs], ...frame];
}

function symbolText(symbol: unknown): string | undefined {
  if (typeof symbol === 'string') return controlCharacters(symbol);
  const whole = typeof symbol === 'number' && Number.isInteger(symbol) && symbol >= 0;
  return whole && symbol < 10 ** MOST_EXACT_FIGURES ? String(symbol) : undefined;
}

// Without a separator only what hardly can be anything else: a trade item first, or a date that never stands alone.
function isElementString(text: string): boolean {
  if (text.includes(GROUP_SEPARATOR) || TRADE_ITEM_FIRST.test(text)) return true;
  const date = LONE_DATE.exec(text)?.[1];
  return date !== undefined && symbolDate(date, 'yyMMd0', 'made (11)').ok;
}

function fromMessage(text: string): Outcome<LabelScan> {
  return andThen(envelope(text), ({ formats, elements }) =>
    andThen(labelContent(elements), (content) =>
      answer({ ...content, readAs: `ISO/IEC 15434 format ${formats.join(' and ')}` }),
    ),
  );
}

// The mark of a GS1 symbol before a text that can be none: the scanner's setting is at fault, not the label.
function fromMarked(text: string, mark: string): Outcome<LabelScan> {
  if (text !== '' && (!/^[A-Z]/i.test(text) || text.includes(GROUP_SEPARATOR)))
    return fromElementString(text);
  return problem('badInput', 'markWithoutFields', 'symbol', spelledOut(mark + text), { more: { mark } });
}

// Figures with a separator behind them may be a GS1 field or a serial; they are not guessed to be a serial.
function fromSeparated(text: string): Outcome<LabelScan> {
  const read = fromElementString(text);
  const sent = `${text}<GS>`;
  return read.ok ? read : problem('badInput', 'separatorBehind', 'symbol', sent);
}

function fromElementString(text: string): Outcome<LabelScan> {
  // No identifier begins with a letter: this is a message that has lost its header.
  if (/^[A-Z]/i.test(text)) return problem('badInput', 'envelopeHeader', 'symbol', spelledOut(text));
  return andThen(elementString(text), (elements) =>
    andThen(labelContent(elements), (content) => answer({ ...content, readAs: 'GS1 element string' })),
  );
}

function fromStockNumber(text: string): Outcome<LabelScan> {
  const stock = stockNumber(text);
  if (!stock.ok) return { ok: false, problem: { ...stock.problem, argument: 'symbol' } };
  return answer({ readAs: 'stock number', stock: stock.value, others: stockParts('', stock.value) });
}

function fromDateCode(text: string, date: string, lot: string): Outcome<LabelScan> {
  const made = symbolDate(date, 'MMyy', 'symbol');
  if (!made.ok) return { ok: false, problem: { ...made.problem, given: text } };
  const { day, to } = made.value;
  return answer({ readAs: 'date code MMyy-lot', made: day, madeTo: to, lot: lot.toUpperCase(), others: [] });
}
