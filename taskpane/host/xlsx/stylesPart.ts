import { isDateFormat } from '../dateFormat.ts';
import { attribute, elements, elementsIn, openingTag, prefixOf, prefixed, withAttribute } from './xml.ts';
import { escaped, insertBefore } from './xml.ts';

/** The lists of a styles part that a cell's look is made of, each with the name of its entries, in the format's order. */
const LISTS = [
  ['numFmts', 'numFmt'],
  ['fonts', 'font'],
  ['fills', 'fill'],
  ['borders', 'border'],
  ['cellXfs', 'xf'],
] as const;
const AFTER = ['cellStyleXfs', 'cellXfs', 'cellStyles', 'dxfs', 'tableStyles', 'colors'];
const ORDER = [...LISTS.slice(0, 4).map(([list]) => list), ...AFTER];

type ListName = (typeof LISTS)[number][0];

/** A styles part being changed. */
export type StylesPart = { text: string };

const EMPTY = { numFmts: 'numFmt', fonts: 'font', fills: 'fill', borders: 'border', cellXfs: 'xf' } as const;

function listOf({ text }: StylesPart, list: ListName): string | undefined {
  return elements(prefixOf(text) + list).exec(text)?.[0];
}

/** The entries of a list, whole. */
function entriesOf(styles: StylesPart, list: ListName): string[] {
  const whole = listOf(styles, list);
  if (whole === undefined) return [];
  return elementsIn(whole.slice(openingTag(whole).length), prefixOf(styles.text) + EMPTY[list]);
}

/** Adds entries at the end of a list. @returns how many there were before */
function append(styles: StylesPart, list: ListName, added: readonly string[]): number {
  const [before, prefix] = [entriesOf(styles, list), prefixOf(styles.text)];
  if (added.length === 0) return before.length;
  const all = [...before, ...added.map((entry) => prefixed(entry, prefix))];
  const whole = listOf(styles, list);
  const head = whole === undefined ? `<${prefix}${list}>` : openingTag(whole).replace('/>', '>');
  const made = `${withAttribute(head, 'count', all.length)}${all.join('')}</${prefix}${list}>`;
  styles.text =
    whole === undefined
      ? insertBefore(styles.text, ORDER.slice(ORDER.indexOf(list) + 1), made)
      : styles.text.replace(whole, () => made);
  return before.length;
}

// Below are the formats that every program knows by number alone.
const FIRST_OWN_FORMAT = 164;

/** The number under which a part knows a number format; it is added where it is new. */
export function numberFormat(styles: StylesPart, code: string): number {
  const known = entriesOf(styles, 'numFmts').map((entry) => ({
    id: Number(attribute(entry, 'numFmtId')),
    code: attribute(entry, 'formatCode'),
  }));
  const found = BUILT_IN[code] ?? known.find((each) => each.code === code)?.id;
  if (found !== undefined) return found;
  const id = Math.max(FIRST_OWN_FORMAT - 1, ...known.map((each) => each.id)) + 1;
  append(styles, 'numFmts', [`<numFmt numFmtId="${id}" formatCode="${escaped(code)}"/>`]);
  return id;
}

const BUILT_IN: Record<string, number> = {
  General: 0,
  '0': 1,
  '0.00': 2,
  '#,##0': 3,
  '#,##0.00': 4,
  '0%': 9,
  '0.00%': 10,
  '@': 49,
};

/** Adds all looks of another part of ours. @returns for each of its cell styles the number it has here */
export function addStyles(styles: StylesPart, other: StylesPart): readonly number[] {
  const codes = new Map(
    entriesOf(other, 'numFmts').map((entry) => [
      attribute(entry, 'numFmtId')!,
      attribute(entry, 'formatCode')!,
    ]),
  );
  const first = {
    fontId: append(styles, 'fonts', entriesOf(other, 'fonts').map(lettered(styles))),
    fillId: append(styles, 'fills', entriesOf(other, 'fills')),
    borderId: append(styles, 'borders', entriesOf(other, 'borders')),
  };
  const moved = entriesOf(other, 'cellXfs').map((entry) => {
    let xf = withAttribute(entry, 'xfId', 0);
    for (const [name, offset] of Object.entries(first))
      xf = withAttribute(xf, name, Number(attribute(openingTag(entry), name) ?? 0) + offset);
    const code = codes.get(attribute(openingTag(entry), 'numFmtId') ?? '');
    return code === undefined ? xf : withAttribute(xf, 'numFmtId', numberFormat(styles, code));
  });
  const start = append(styles, 'cellXfs', moved);
  return moved.map((_, index) => start + index);
}

/** Letters that don't say their face or size have those of the file. */
function lettered(styles: StylesPart): (font: string) => string {
  const base = entriesOf(styles, 'fonts')[0] ?? '';
  const own = (name: string): string =>
    prefixFree(elements(prefixOf(styles.text) + name).exec(base)?.[0] ?? '', prefixOf(styles.text));
  const [size, face] = [own('sz'), own('name')];
  return (font) => {
    const open = font.endsWith('/>') ? `${font.slice(0, -2)}></font>` : font;
    const more = (/<sz[\s/>]/.test(open) ? '' : size) + (/<name[\s/>]/.test(open) ? '' : face);
    return open.replace(/<\/font>$/, `${more}</font>`);
  };
}

/** The cell style that is as another one but for its number format. */
export function withNumberFormat(styles: StylesPart, style: number, code: string): number {
  const id = numberFormat(styles, code);
  const all = entriesOf(styles, 'cellXfs');
  const base = all[style] ?? '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>';
  const made = withAttribute(withAttribute(base, 'numFmtId', id), 'applyNumberFormat', 1);
  const found = all.indexOf(made);
  return found >= 0 ? found : append(styles, 'cellXfs', [prefixFree(made, prefixOf(styles.text))]);
}

const prefixFree = (element: string, prefix: string): string =>
  prefix === '' ? element : element.replaceAll(`<${prefix}`, '<').replaceAll(`</${prefix}`, '</');

/** Whether numbers of a cell style are shown as dates. */
export function dateStyles(styles: StylesPart): (style: number) => boolean {
  const codes = new Map(
    entriesOf(styles, 'numFmts').map((entry) => [
      Number(attribute(entry, 'numFmtId')),
      attribute(entry, 'formatCode')!,
    ]),
  );
  const ids = entriesOf(styles, 'cellXfs').map((xf) => Number(attribute(openingTag(xf), 'numFmtId') ?? 0));
  return (style) => {
    const id = ids[style] ?? 0;
    return (id >= 14 && id <= 22) || (id >= 45 && id <= 47) || isDateFormat(codes.get(id) ?? '');
  };
}
