import { controlCharacters, END_OF_TEXT, GROUP_SEPARATOR, spelledOut, START_OF_TEXT } from './symbolText.ts';

/** What a scanner sent: the text of the symbol, and what the scanner put around it. */
export type ScannerFrame = {
  readonly bare: string;
  /** Which kind of symbol it was, as the scanner says it, such as ]d1; "" where it says nothing. */
  readonly mark: string;
  /** Whether a field separator stood behind the text. */
  readonly endsWithSeparator: boolean;
  /** Everything that is no part of the text, spelled; "" where nothing was taken off. */
  readonly takenOff: string;
};

const BEFORE = new RegExp(`^${START_OF_TEXT}?(\\][A-Za-z][0-9A-Za-z])?`);
const BEHIND = new RegExp(`[${GROUP_SEPARATOR}${END_OF_TEXT}]*$`);

/**
 * A scanned text without what a scanner may be set to send around it: STX and ETX, the mark of the symbol's kind, and a
 * field separator at the end. Line ends, tabs and blanks around it say nothing and are not told.
 * @param text  as it was scanned, control characters as they are or spelled
 * @returns bare text, mark, and what was taken off
 * @source iso15424 a mark is ], a letter, and one more character
 * @example scannerFrame('<STX>]A0NF2001<ETX>') // {"bare":"NF2001","mark":"]A0","endsWithSeparator":false,"takenOff":"<STX>]A0 <ETX>"}
 */
export function scannerFrame(text: string): ScannerFrame {
  const sent = controlCharacters(text);
  const [before, mark = ''] = BEFORE.exec(sent)!;
  const behind = BEHIND.exec(sent.slice(before.length))![0];
  return {
    bare: controlCharacters(sent.slice(before.length, sent.length - behind.length)),
    mark,
    endsWithSeparator: behind.includes(GROUP_SEPARATOR),
    takenOff: [before, behind].filter(Boolean).map(spelledOut).join(' '),
  };
}
