import type { IBorderData, IBorderStyleData, IStyleData } from '@univerjs/core';
import type { AlignmentStyle, BorderSide, BorderStyle, CellStyle, FillStyle, FontStyle } from 'hucre';
import { colourOf } from '../xlsx/colours.ts';

/** The looks of a workbook as the built-in one keeps them: each once, cells name it. */
export type LookTable = {
  readonly styles: Record<string, IStyleData>;
  /** The name of a look, or undefined where it is the plain one. */
  readonly nameOf: (look: CellStyle) => string | undefined;
};

/** A table of looks for a file with these theme colours. */
export function newLookTable(theme: readonly string[]): LookTable {
  const styles: Record<string, IStyleData> = {};
  const known = new Map<string, string>();
  // The reader hands out one object for each font, fill and border of the file: much cheaper to compare than contents.
  const numbers = new Map<object, number>();
  const numberOf = (part: object | undefined): number =>
    part === undefined ? 0 : (numbers.get(part) ?? (numbers.set(part, numbers.size + 1), numbers.size));
  const nameOf = (look: CellStyle): string | undefined => {
    const parts = [look.font, look.fill, look.border, look.alignment].map(numberOf);
    const key = `${parts.join()},${look.numFmt ?? ''}`;
    if (!known.has(key)) {
      const made = lookForGrid(look, theme);
      const name = Object.keys(made).length === 0 ? '' : `look${known.size}`;
      known.set(key, name);
      if (name !== '') styles[name] = made;
    }
    return known.get(key) || undefined;
  };
  return { styles, nameOf };
}

/** A cell's look in a file as the built-in workbook draws it. */
export function lookForGrid(look: CellStyle, theme: readonly string[]): IStyleData {
  const { font, fill, border, alignment, numFmt } = look;
  return {
    ...(font && fontForGrid(font, theme)),
    ...(fill && fillForGrid(fill, theme)),
    ...(border && bordersForGrid(border, theme)),
    ...(alignment && placingForGrid(alignment)),
    ...(numFmt !== undefined && numFmt !== 'General' && { n: { pattern: numFmt } }),
  };
}

const RAISED = { subscript: 2, superscript: 3 } as const;

function fontForGrid(font: FontStyle, theme: readonly string[]): IStyleData {
  const colour = colourOf(font.color, theme);
  return {
    ...(font.name !== undefined && { ff: font.name }),
    ...(font.size !== undefined && { fs: font.size }),
    ...(font.bold && { bl: 1 }),
    ...(font.italic && { it: 1 }),
    ...(font.underline && { ul: { s: 1 } }),
    ...(font.strikethrough && { st: { s: 1 } }),
    ...(colour !== undefined && { cl: { rgb: colour } }),
    ...(font.vertAlign && { va: RAISED[font.vertAlign] }),
  };
}

function fillForGrid(fill: FillStyle, theme: readonly string[]): IStyleData {
  if (fill.type === 'gradient') return background(colourOf(fill.stops[0]?.color, theme));
  if (fill.pattern === 'none') return {};
  // A pattern of dots or lines is drawn as its ground.
  const ground = fill.pattern === 'solid' ? fill.fgColor : fill.bgColor;
  return background(colourOf(ground, theme));
}

const background = (colour: string | undefined): IStyleData =>
  colour === undefined ? {} : { bg: { rgb: colour } };

const LINES: Record<BorderSide['style'], number> = {
  thin: 1,
  hair: 2,
  dotted: 3,
  dashed: 4,
  dashDot: 5,
  dashDotDot: 6,
  double: 7,
  medium: 8,
  mediumDashed: 9,
  mediumDashDot: 10,
  mediumDashDotDot: 11,
  slantDashDot: 12,
  thick: 13,
};

function bordersForGrid(border: BorderStyle, theme: readonly string[]): IStyleData {
  const line = (side: BorderSide): IBorderStyleData => ({
    s: LINES[side.style] as IBorderStyleData['s'],
    cl: { rgb: colourOf(side.color, theme) ?? '#000000' },
  });
  const { top, right, bottom, left, diagonal, diagonalUp, diagonalDown } = border;
  const drawn: IBorderData = {
    ...(top && { t: line(top) }),
    ...(right && { r: line(right) }),
    ...(bottom && { b: line(bottom) }),
    ...(left && { l: line(left) }),
    ...(diagonal && diagonalDown && { tl_br: line(diagonal) }),
    ...(diagonal && diagonalUp && { bl_tr: line(diagonal) }),
  };
  return Object.keys(drawn).length === 0 ? {} : { bd: drawn };
}

const ACROSS: Partial<Record<NonNullable<AlignmentStyle['horizontal']>, number>> = {
  left: 1,
  center: 2,
  right: 3,
  justify: 4,
  centerContinuous: 2,
  distributed: 6,
};
const DOWN: Record<NonNullable<AlignmentStyle['vertical']>, number> = {
  top: 1,
  center: 2,
  bottom: 3,
  justify: 2,
  distributed: 2,
};

/** Pixels that one step of indent takes. */
const INDENT = 9;

function placingForGrid(alignment: AlignmentStyle): IStyleData {
  const { horizontal, vertical, wrapText, textRotation, indent } = alignment;
  const across = horizontal && ACROSS[horizontal];
  return {
    ...(across && { ht: across as NonNullable<IStyleData['ht']> }),
    ...(vertical && { vt: DOWN[vertical] as NonNullable<IStyleData['vt']> }),
    ...(wrapText && { tb: 3 }),
    ...(textRotation && { tr: rotation(textRotation) }),
    ...(indent && { pd: horizontal === 'right' ? { r: indent * INDENT } : { l: indent * INDENT } }),
  };
}

// A file counts turns up to 90 and turns down from 91 on; 255 is letters upon each other.
function rotation(turn: number): NonNullable<IStyleData['tr']> {
  if (turn === 255) return { a: 0, v: 1 };
  return { a: turn > 90 ? turn - 90 : -turn };
}
