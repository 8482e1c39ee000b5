import type { IBorderStyleData, IStyleData, Nullable } from '@univerjs/core';
import type { CellStyle } from 'hucre/xlsx';

type Side = NonNullable<NonNullable<CellStyle['border']>['top']>;
type Across = NonNullable<NonNullable<CellStyle['alignment']>['horizontal']>;
type Down = NonNullable<NonNullable<CellStyle['alignment']>['vertical']>;

/** Line kinds of the file format in the order of the engine's own numbers, from 1. */
const LINES: readonly Side['style'][] = [
  'thin',
  'hair',
  'dotted',
  'dashed',
  'dashDot',
  'dashDotDot',
  'double',
  'medium',
  'mediumDashed',
  'mediumDashDot',
  'mediumDashDotDot',
  'slantDashDot',
  'thick',
];
const ACROSS: readonly (Across | undefined)[] = [undefined, 'left', 'center', 'right', 'justify'];
const DOWN: readonly (Down | undefined)[] = [undefined, 'top', 'center', 'bottom'];
const WRAP = 3;
const PIXELS_OF_INDENT = 9;

/** A look of the grid in the terms of a file. */
export function lookForFile(look: IStyleData): CellStyle {
  const { bg, bd, n } = look;
  const [font, alignment] = [fontForFile(look), placingForFile(look)];
  const sides = { top: lineOf(bd?.t), bottom: lineOf(bd?.b), left: lineOf(bd?.l), right: lineOf(bd?.r) };
  const border = withoutGaps(sides);
  return withoutGaps({
    font: hasAny(font) ? font : undefined,
    fill: bg?.rgb ? { type: 'pattern', pattern: 'solid', fgColor: { rgb: plainRgb(bg.rgb) } } : undefined,
    border: hasAny(border) ? border : undefined,
    alignment: hasAny(alignment) ? alignment : undefined,
    numFmt: n?.pattern,
  }) as CellStyle;
}

const hasAny = (part: object): boolean => Object.keys(part).length > 0;

const withoutGaps = <T extends object>(part: T): Partial<T> =>
  Object.fromEntries(Object.entries(part).filter(([, value]) => value !== undefined)) as Partial<T>;

// The grid writes colours as #1f2a33 or rgb(31,42,51).
function plainRgb(colour: string): string {
  const parts = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(colour);
  if (parts === null) return colour.replace('#', '').toUpperCase();
  return parts
    .slice(1, 4)
    .map((part) => Number(part).toString(16).padStart(2, '0'))
    .join('')
    .toUpperCase();
}

const fontForFile = ({ ff, fs, bl, it, ul, st, cl }: IStyleData): object =>
  withoutGaps({
    name: ff ?? undefined,
    size: fs,
    bold: bl === 1 ? true : undefined,
    italic: it === 1 ? true : undefined,
    underline: ul?.s === 1 ? true : undefined,
    strikethrough: st?.s === 1 ? true : undefined,
    color: cl?.rgb ? { rgb: plainRgb(cl.rgb) } : undefined,
  });

const placingForFile = ({ ht, vt, tb, pd }: IStyleData): object =>
  withoutGaps({
    horizontal: ACROSS[ht ?? 0],
    vertical: DOWN[vt ?? 0],
    wrapText: tb === WRAP ? true : undefined,
    indent: pd?.l !== undefined && pd.l >= PIXELS_OF_INDENT ? Math.round(pd.l / PIXELS_OF_INDENT) : undefined,
  });

function lineOf(line: Nullable<IBorderStyleData>): Side | undefined {
  if (!line) return undefined;
  const style = LINES[line.s - 1];
  return style && { style, color: { rgb: plainRgb(line.cl.rgb ?? '#000000') } };
}
