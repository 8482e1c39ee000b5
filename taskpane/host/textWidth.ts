/** Characters of about one width in a face without serifs, by that width in digits (measured on the face of the sheets). */
const CLASSES: readonly (readonly [width: number, characters: string])[] = [
  [0.4, "ijl'|"],
  [0.5, 'ft.,:;/!I[] '],
  [0.6, 'r()-"`{}*'],
  [0.9, 'scvxyzkJ'],
  [1.5, 'mMW%@'],
  [1.3, 'wACDGHKNOQRUBEPSVXY&'],
  [1.1, 'FTZL+=<>~'],
];

const WIDTHS = new Map(
  CLASSES.flatMap(([width, characters]) => [...characters].map((each) => [each, width])),
);

// Digits and most small letters are as wide as the measure itself; scripts from here on are set about twice as wide.
const USUAL = 1;
const WIDE_FROM = 0x2e80;
const WIDE = 2;

// A digit of the sheet's text, in the characters in which columns are measured: its face is a little wider.
const DIGIT = 1.06;

/** How much wider bold letters are. */
export const BOLD = 1.08;

const widthOf = (character: string): number =>
  WIDTHS.get(character) ?? (character.codePointAt(0)! >= WIDE_FROM ? WIDE : USUAL);

/** Width of a text on a sheet, in the characters in which a column's width is given. */
export function textWidth(text: string): number {
  let width = 0;
  for (const character of text) width += widthOf(character);
  return width * DIGIT;
}

/** Width of the space between words. */
export const SPACE = 0.5 * DIGIT;
