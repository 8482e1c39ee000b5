import type { Color } from 'hucre';

// The legacy palette of the file format (ISO/IEC 29500-1, 18.8.27), from index 8 on; 0 to 7 repeat its first eight.
const PALETTE = (
  '000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF 800000 008000 000080 808000 800080 008080 C0C0C0 808080 ' +
  '9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF 000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF ' +
  '00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 ' +
  '003366 339966 003300 333300 993300 993366 333399 333333'
).split(' ');

// A cell's colour counts the light one of each pair first, the theme itself the dark one.
const THEME_ORDER = [1, 0, 3, 2];

/** A colour of a file as `#RRGGBB`, or undefined where it is the reader's own (automatic). */
export function colourOf(color: Color | undefined, theme: readonly string[]): string | undefined {
  if (color === undefined) return undefined;
  if (color.rgb !== undefined) return `#${color.rgb.slice(-6)}`;
  if (color.theme !== undefined) {
    const base = theme[THEME_ORDER[color.theme] ?? color.theme];
    return base === undefined ? undefined : `#${tinted(base, color.tint ?? 0)}`;
  }
  const index = color.indexed;
  if (index === undefined || index > 63) return undefined;
  return `#${PALETTE[index < 8 ? index : index - 8]}`;
}

/** Lighter (to 1) or darker (to -1) in its luminance; hue and saturation stay (ISO/IEC 29500-1, 18.8.19). */
function tinted(hex: string, tint: number): string {
  const channels = [0, 2, 4].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255);
  const had = (Math.max(...channels) + Math.min(...channels)) / 2;
  const has = tint < 0 ? had * (1 + tint) : had + (1 - had) * tint;
  const stretch = had === 0 || had === 1 ? 0 : (1 - Math.abs(2 * has - 1)) / (1 - Math.abs(2 * had - 1));
  const mixed = channels.map((each) => Math.round(255 * (has + (each - had) * stretch)));
  return mixed.map((each) => each.toString(16).padStart(2, '0').toUpperCase()).join('');
}
