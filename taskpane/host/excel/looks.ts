import type { CellStyle } from 'hucre/xlsx';
import type { Block, Sheet } from '../../../src/report/sheet.ts';
import { address } from '../../../src/report/sheet.ts';
import { forAll, rangeOn } from './cells.ts';
import type { Pending } from './session.ts';
import { styleAt } from '../xlsx/sheetFile.ts';

/** Cells that look alike. */
type Patch<Key> = { readonly key: Key; readonly block: Block };

/** The fewest blocks that the eye finds: runs of a row that look alike, grown downwards while the next row agrees. */
function patchesOf<Key>(
  sheet: Pick<Sheet, 'rows'>,
  keyAt: (row: number, column: number) => Key | undefined,
): Patch<Key>[] {
  const done: Patch<Key>[] = [];
  let growing: Patch<Key>[] = [];
  sheet.rows.forEach((_, row) => {
    const next = runsOf(sheet, row, keyAt).map((run) => {
      const above = growing.find((each) => sameRun(each, run));
      return above === undefined ? run : { ...above, block: { ...above.block, rows: above.block.rows + 1 } };
    });
    done.push(...growing.filter((each) => !next.some((run) => sameRun(each, run))));
    growing = next;
  });
  return [...done, ...growing];
}

function sameRun<Key>(a: Patch<Key>, b: Patch<Key>): boolean {
  return a.key === b.key && a.block.column === b.block.column && a.block.columns === b.block.columns;
}

function runsOf<Key>(
  { rows }: Pick<Sheet, 'rows'>,
  row: number,
  keyAt: (row: number, column: number) => Key | undefined,
): Patch<Key>[] {
  const runs: Patch<Key>[] = [];
  rows[row]!.forEach((_, column) => {
    const key = keyAt(row, column);
    const last = runs.at(-1);
    if (key === undefined) return;
    if (last !== undefined && last.key === key && last.block.column + last.block.columns === column)
      runs[runs.length - 1] = { key, block: { ...last.block, columns: last.block.columns + 1 } };
    else runs.push({ key, block: { row, column, rows: 1, columns: 1 } });
  });
  return runs;
}

/** Blocks of one look, and whether they have edges inside. */
type Alike = { readonly style: CellStyle; readonly inner: Inner; readonly blocks: Block[] };
type Inner = { readonly rows: boolean; readonly columns: boolean };

// Bytes of one property on the line, about.
const SETTING_BYTES = 350;

/** Gives every cell its look and its number format. */
export async function writeLooks(on: Excel.Worksheet, sheet: Sheet, pending: Pending): Promise<void> {
  const styled = patchesOf(sheet, (row, column) =>
    sheet.rows[row]![column] == null ? undefined : styleAt(sheet, row, column),
  );
  const alike = new Map<string, Alike>();
  for (const { key, block } of styled) {
    const { numFmt, ...look } = key;
    // Only blocks of several rows or columns have edges inside.
    const inner = { rows: block.rows > 1, columns: block.columns > 1 };
    const name = JSON.stringify([look, inner]);
    const known = alike.get(name);
    if (known === undefined) alike.set(name, { style: key, inner, blocks: [block] });
    else known.blocks.push(block);
  }
  for (const each of alike.values()) await writeLook(on, each, pending);
  await writeNumberFormats(on, sheet, pending);
}

async function writeNumberFormats(on: Excel.Worksheet, sheet: Sheet, pending: Pending): Promise<void> {
  // A cell with a formula and the format of texts would show the formula when it is edited.
  const patches = patchesOf(sheet, (row, column) => {
    const cell = sheet.rows[row]![column];
    const code = cell == null ? undefined : styleAt(sheet, row, column).numFmt;
    return code === '@' && cell?.formula !== undefined ? undefined : code;
  });
  for (const { key, block } of patches) {
    await pending.spend(SETTING_BYTES);
    rangeOn(on, block).numberFormat = forAll(key);
  }
}

// The longest list of addresses that one call takes.
const MOST_ADDRESS = 8_000;

async function writeLook(
  on: Excel.Worksheet,
  { style, inner, blocks }: Alike,
  pending: Pending,
): Promise<void> {
  for (const addresses of addressLists(blocks)) {
    await pending.spend(SETTING_BYTES * 20 + addresses.length);
    setLook(on.getRanges(addresses).format, style, inner);
  }
}

/** Blocks as lists of addresses, none longer than a call takes. */
function addressLists(blocks: readonly Block[]): string[] {
  const lists: string[] = [];
  for (const { row, column, rows, columns } of blocks) {
    const each = `${address(row, column)}:${address(row + rows - 1, column + columns - 1)}`;
    const last = lists.at(-1);
    if (last === undefined || last.length + each.length > MOST_ADDRESS) lists.push(each);
    else lists[lists.length - 1] = `${last},${each}`;
  }
  return lists;
}

const colour = (rgb: string | undefined): string => `#${(rgb ?? '000000').slice(-6)}`;

function setLook(
  format: Excel.RangeFormat,
  { font, fill, border, alignment }: CellStyle,
  inner: Inner,
): void {
  if (font?.name !== undefined) format.font.name = font.name;
  if (font?.size !== undefined) format.font.size = font.size;
  if (font?.color?.rgb !== undefined) format.font.color = colour(font.color.rgb);
  if (font?.bold === true) format.font.bold = true;
  if (font?.italic === true) format.font.italic = true;
  if (fill?.type === 'pattern' && fill.fgColor?.rgb !== undefined)
    format.fill.color = colour(fill.fgColor.rgb);
  if (alignment?.wrapText === true) format.wrapText = true;
  if (alignment?.horizontal !== undefined)
    format.horizontalAlignment = ACROSS[alignment.horizontal] ?? 'General';
  if (alignment?.indent !== undefined) format.indentLevel = alignment.indent;
  if (alignment?.vertical !== undefined)
    format.verticalAlignment = alignment.vertical === 'center' ? 'Center' : 'Bottom';
  setBorders(format.borders, border, inner);
}

const ACROSS: Readonly<Record<string, 'Left' | 'Right'>> = { left: 'Left', right: 'Right' };

type Edge = 'EdgeTop' | 'EdgeBottom' | 'EdgeLeft' | 'EdgeRight' | 'InsideHorizontal' | 'InsideVertical';

/** The edges of a block that a side of each of its cells makes. */
const EDGES: readonly (readonly ['top' | 'bottom' | 'left' | 'right', readonly Edge[]])[] = [
  ['top', ['EdgeTop', 'InsideHorizontal']],
  ['bottom', ['EdgeBottom', 'InsideHorizontal']],
  ['left', ['EdgeLeft', 'InsideVertical']],
  ['right', ['EdgeRight', 'InsideVertical']],
];

function setBorders(borders: Excel.RangeBorderCollection, border: CellStyle['border'], inner: Inner): void {
  for (const [side, edges] of EDGES) {
    const line = border?.[side];
    if (line === undefined) continue;
    for (const edge of edges) {
      if (edge === 'InsideHorizontal' ? !inner.rows : edge === 'InsideVertical' && !inner.columns) continue;
      const drawn = borders.getItem(edge);
      drawn.style = 'Continuous';
      drawn.weight = line.style === 'medium' ? 'Medium' : 'Thin';
      drawn.color = colour(line.color?.rgb);
    }
  }
}
