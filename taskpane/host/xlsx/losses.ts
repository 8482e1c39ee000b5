import type { Package } from './package.ts';
import { partText } from './package.ts';
import { reachable, relationsOf, workbookPath } from './parts.ts';
import { countsFrom1904, listedSheets } from './bookPart.ts';
import { asksOurs } from './formulaNames.ts';
import { sheetText } from './sheetPart.ts';
import type { WorkbookState } from './workbookState.ts';

/** What a person calls the things that a part is related to. */
const RELATED: Record<string, string> = {
  chart: 'charts',
  chartsheet: 'chart sheets',
  image: 'pictures',
  drawing: 'drawings',
  comments: 'comments',
  threadedComment: 'threaded comments',
  table: 'tables',
  pivotTable: 'pivot tables',
  slicer: 'slicers',
  timeline: 'timelines',
  hyperlink: 'links',
  externalLink: 'links to other workbooks',
  oleObject: 'embedded objects',
  package: 'embedded objects',
  ctrlProp: 'form controls',
  control: 'form controls',
  connections: 'data connections',
  queryTable: 'data queries',
  printerSettings: 'printer settings',
  theme: 'the theme',
  customXml: 'attached data',
  vbaProject: 'macros',
  xlMacrosheet: 'macro sheets',
};

/** What a person calls the things that a sheet's own part holds. */
const IN_SHEET: Record<string, string> = {
  cfRule: 'conditional formats',
  dataValidation: 'rules for what may be typed',
  mergeCell: 'merged cells',
  hyperlink: 'links',
  sheetProtection: 'protection',
  protectedRange: 'protection',
  autoFilter: 'filters',
  pane: 'frozen rows or columns',
  pageMargins: 'print set-up',
  pageSetup: 'print set-up',
  printOptions: 'print set-up',
  headerFooter: 'headers and footers',
  brk: 'page breaks',
  sparkline: 'small charts in cells',
  tabColor: 'tab colours',
  outlinePr: 'outline settings',
};
const IN_BOOK: Record<string, string> = { definedName: 'defined names', workbookProtection: 'protection' };
const IN_STYLES: Record<string, string> = {
  cellStyle: 'named cell styles',
  dxf: 'conditional formats',
  font: 'fonts',
  fill: 'fills',
  border: 'borders',
  numFmt: 'number formats',
};

/** How many of each thing there are, under a sheet's name or '' for the whole file. */
type Inventory = ReadonlyMap<string, number>;

/**
 * What a saved file does not have any more, in plain words: what an .xlsx may not hold, what did not move with inserted
 * rows, and whatever else is fewer after than before. Empty where nothing was lost.
 */
export async function lossesBetween(
  before: Package,
  after: Package,
  state: WorkbookState,
): Promise<string[]> {
  const kept = new Map(
    state.sheets.flatMap(({ original, name }) => (original === undefined ? [] : [[original, name]])),
  );
  const now = new Map([...kept.values()].map((name) => [name, name]));
  // Parts that were not touched are the very same object; what they lead to is looked at in any case.
  const isSame = (path: string): boolean => before.get(path) === after.get(path);
  const [had, has] = [await inventory(before, kept, isSame), await inventory(after, now, isSame)];
  const fewer = [...had].flatMap(([key, count]) => lossOf(key, count, has.get(key) ?? 0));
  return [
    ...new Set([...fewer, ...(await shiftedLosses(before, state)), ...(await dateLosses(before, state))]),
  ];
}

const MACROS = 'its macros: an .xlsx file can hold none';

function lossOf(key: string, had: number, has: number): string[] {
  if (has >= had) return [];
  const [sheet, what] = key.split('\n') as [string, string];
  if (what === 'macros' || what === 'macro sheets') return [MACROS];
  if (what === 'signature') return ['its digital signature: a changed file has to be signed anew'];
  const count = `${what}: ${had} before, ${has} after`;
  return [sheet === '' ? count : `sheet ${sheet}: ${count}`];
}

type Counts = Map<string, number>;

const add = (counts: Counts, sheet: string, what: string, count = 1): void => {
  const key = `${sheet}\n${what}`;
  counts.set(key, (counts.get(key) ?? 0) + count);
};

/** Counts what a file has; the sheets under the names that they have after, those that were deleted not at all. */
async function inventory(
  parts: Package,
  names: ReadonlyMap<string, string>,
  isSame: (path: string) => boolean = () => false,
): Promise<Inventory> {
  const counts: Counts = new Map();
  const book = await workbookPath(parts);
  const relations = await relationsOf(parts, book);
  const xml = (await partText(parts, book)) ?? '';
  const listed = listedSheets(xml);
  countElements(
    counts,
    '',
    withoutNamesOf(xml, (sheet) => !names.has(listed[sheet]?.name ?? '')),
    IN_BOOK,
  );
  for (const { name, relation } of listed) {
    const path = relations.find(({ id }) => id === relation)?.target;
    const now = names.get(name);
    if (path === undefined || now === undefined) continue;
    if (!isSame(path)) await countOwn(counts, parts, path, now);
    await countRelated(counts, parts, path, now);
  }
  for (const { kind, target } of relations) {
    if (kind !== 'worksheet' && RELATED[kind] !== undefined) add(counts, '', RELATED[kind]);
    if (kind === 'styles') countElements(counts, '', (await partText(parts, target)) ?? '', IN_STYLES);
  }
  if ([...(await reachable(parts))].some((path) => path.startsWith('_xmlsignatures/')))
    add(counts, '', 'signature');
  return counts;
}

// A sheet that was deleted took the names along that it alone knew.
const withoutNamesOf = (xml: string, isGone: (sheet: number) => boolean): string =>
  xml.replace(/<(?:\w+:)?definedName\s[^>]*\blocalSheetId="(\d+)"/g, (tag, sheet: string) =>
    isGone(Number(sheet)) ? '' : tag,
  );

async function countOwn(counts: Counts, parts: Package, path: string, name: string): Promise<void> {
  const xml = (await partText(parts, path)) ?? '';
  const { before, after } = /<(?:\w+:)?sheetData[\s/>]/.test(xml)
    ? sheetText(xml)
    : { before: xml, after: '' };
  countElements(counts, name, before + after, IN_SHEET);
}

async function countRelated(counts: Counts, parts: Package, path: string, name: string): Promise<void> {
  const [open, seen] = [[path], new Set([path])];
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    for (const { kind, target, outside } of await relationsOf(parts, part)) {
      if (RELATED[kind] !== undefined && kind !== 'hyperlink') add(counts, name, RELATED[kind]);
      if (outside || seen.has(target) || kind === 'pivotCacheDefinition') continue;
      seen.add(target);
      open.push(target);
    }
  }
}

function countElements(counts: Counts, sheet: string, xml: string, words: Record<string, string>): void {
  for (const [, name] of xml.matchAll(/<(?:\w+:)?(\w+)(?=[\s/>])/g)) {
    const what = words[name!];
    if (what !== undefined) add(counts, sheet, what);
  }
}

/** What hangs on places and stayed where it was when rows or columns were inserted or deleted. */
async function shiftedLosses(before: Package, { sheets }: WorkbookState): Promise<string[]> {
  const found: string[] = [];
  for (const { original, name, shifted } of sheets) {
    if (!shifted || original === undefined) continue;
    const counts = [...(await inventory(before, new Map([[original, name]])))];
    const words = counts.flatMap(([key]) => {
      const [sheet, what] = key.split('\n') as [string, string];
      return sheet === name && MOVING.includes(what) ? [what] : [];
    });
    if (words.length === 0) continue;
    found.push(
      `sheet ${name}: rows or columns were inserted or deleted, but its ${inOneLine(words)} stand where they stood before`,
    );
  }
  return found;
}

const MOVING = [
  'charts',
  'pictures',
  'comments',
  'threaded comments',
  'tables',
  'pivot tables',
  'conditional formats',
].concat(['rules for what may be typed', 'links', 'filters', 'page breaks', 'small charts in cells']);

const inOneLine = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** Our functions answer dates of the 1900 system, which a file that counts from 1904 shows four years late. */
async function dateLosses(before: Package, { sheets }: WorkbookState): Promise<string[]> {
  const book = (await partText(before, await workbookPath(before))) ?? '';
  const asks = sheets.some(({ cells }) =>
    cells.some(({ formula }) => formula !== undefined && asksOurs(formula)),
  );
  if (!countsFrom1904(book) || !asks) return [];
  return [
    'the file counts its dates from 1904: dates that the CRANK functions answer show four years late in it; save them as values',
  ];
}
