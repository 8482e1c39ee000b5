/** Begins the part of a message in one format, and ends it. */
export const RECORD_SEPARATOR = '\x1e';
/** Stands between two fields; in GS1 symbols the FNC1 character arrives as it. */
export const GROUP_SEPARATOR = '\x1d';
/** Ends the message. */
export const END_OF_TRANSMISSION = '\x04';
/** Stand around a text where a scanner is set to frame what it sends. */
export const START_OF_TEXT = '\x02';
export const END_OF_TEXT = '\x03';

const SPELLED: readonly (readonly [RegExp, string])[] = [
  [/[<{]RS[>}]|\u241e/gi, RECORD_SEPARATOR],
  [/[<{](?:GS|FNC1)[>}]|\u241d/gi, GROUP_SEPARATOR],
  [/[<{]EOT[>}]|\u2404/gi, END_OF_TRANSMISSION],
  [/[<{]STX[>}]|\u2402/gi, START_OF_TEXT],
  [/[<{]ETX[>}]|\u2403/gi, END_OF_TEXT],
];

/**
 * A symbol's text with its control characters, where a scanner that types has spelled them: <GS> {GS} <FNC1>, <RS>,
 * <EOT>, in either bracket. What a scanner adds behind the text (line end, tab, blanks) is taken off.
 */
export function controlCharacters(text: string): string {
  const bare = text.replace(/^[ \t\r\n]+|[ \t\r\n]+$/g, '');
  if (!/[<{\u2400-\u241f]/.test(bare)) return bare;
  return SPELLED.reduce((spelled, [name, character]) => spelled.replace(name, character), bare);
}

const CONTROLS = 'NUL SOH STX ETX EOT ENQ ACK BEL BS HT LF VT FF CR SO SI'
  .split(' ')
  .concat('DLE DC1 DC2 DC3 DC4 NAK SYN ETB CAN EM SUB ESC FS GS RS US'.split(' '));

const CONTROL = /[\x00-\x1f]/g;

/** Whether a text holds characters that no one can see. */
export const hasControls = (text: string): boolean => text.search(CONTROL) >= 0;

/** A symbol's text with its control characters spelled, for a sentence. */
export function spelledOut(text: string): string {
  return text.replace(CONTROL, (control) => `<${CONTROLS[control.charCodeAt(0)]!}>`);
}
