/** Begins the part of a message in one format, and ends it. */
export const RECORD_SEPARATOR = '\x1e';
/** Stands between two fields; in GS1 symbols the FNC1 character arrives as it. */
export const GROUP_SEPARATOR = '\x1d';
/** Ends the message. */
export const END_OF_TRANSMISSION = '\x04';

const SPELLED: readonly (readonly [RegExp, string])[] = [
  [/[<{]RS[>}]|\u241e/gi, RECORD_SEPARATOR],
  [/[<{](?:GS|FNC1)[>}]|\u241d/gi, GROUP_SEPARATOR],
  [/[<{]EOT[>}]|\u2404/gi, END_OF_TRANSMISSION],
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

/** A symbol's text with its control characters spelled, for a sentence. */
export function spelledOut(text: string): string {
  return text
    .replaceAll(RECORD_SEPARATOR, '<RS>')
    .replaceAll(GROUP_SEPARATOR, '<GS>')
    .replaceAll(END_OF_TRANSMISSION, '<EOT>');
}
