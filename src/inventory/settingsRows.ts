import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { Cell } from './inventory.ts';
import { nearest } from './nearest.ts';
import type { GivenSettings, Settings } from './settings.ts';
import { SETTING_KEYS, settingsFrom } from './settings.ts';

/** The name of the sheet on which a workbook keeps its settings. */
export const SETTINGS_SHEET = 'Crankbook settings';

/** The row of a settings sheet that holds the day of the question; it is asked anew each time, so it is no setting. */
export const AS_OF_KEY = 'asOf';

/** What a settings sheet says where no column holds a field: an empty cell would say nothing. */
export const NO_COLUMN = '(none)';

/** Settings as keys and values, before they are checked. */
export type RawSettings = Readonly<Record<string, unknown>>;

type Tree = { [key: string]: unknown };

// A maker, a site or a cause may itself hold a dot: what stands between the known words is one name.
const NAMED = new Set(['columns', 'layouts', 'causes', 'constructions']);
const LISTS = new Set(['onOrder', 'fleetChanges']);
const PARTS = new Set(['prior', 'money', 'policy', 'store']);

/**
 * Settings from the rows of a settings sheet: two columns, key and value, with or without a header; nested keys are
 * written with dots (`money.unitPrice`, `sites.North depot.coldest`, `onOrder.1.month`). A row without a value says nothing.
 * @param rows  rows of cells
 * @returns keys and values, to be checked by settingsFrom
 * @problem badInput  when a key is not known or ends in a dot
 * @example settingsFromRows([['years', 5]]).value.years // 5
 */
export function settingsFromRows(rows: readonly (readonly Cell[])[]): Outcome<RawSettings> {
  const tree: Tree = {};
  for (const [index, [key, value]] of rows.entries()) {
    if (typeof key !== 'string' || key.trim() === '' || isHeader(key, value, index)) continue;
    if (key.trim() === AS_OF_KEY) continue;
    if (value === null || value === undefined || (value === '' && !key.startsWith('columns.'))) continue;
    const path = pathOf(key.trim());
    if (path === undefined)
      return problem('badInput', 'settingRow', 'key', key, { more: { row: index + 1 } });
    if (!SETTING_KEYS.includes(path[0]!)) return unknown(path[0]!);
    put(tree, path, plainValue(value, path[0]!));
  }
  return answer(withLists(tree));
}

const isHeader = (key: string, value: Cell, index: number): boolean =>
  index === 0 && /^(key|setting)$/i.test(key.trim()) && typeof value === 'string';

const unknown = (key: string): Outcome<never> =>
  problem('badInput', 'settingUnknown', key, undefined, { more: { nearest: nearest(key, SETTING_KEYS) } });

function pathOf(key: string): readonly string[] | undefined {
  const [first = '', ...rest] = key.split('.');
  if (rest.length === 0) return [first];
  if (rest.some((part) => part.trim() === '') && !NAMED.has(first) && first !== 'sites') return undefined;
  if (NAMED.has(first)) return [first, rest.join('.')];
  if (PARTS.has(first) || LISTS.has(first)) return [first, ...rest];
  return rest.length === 1 ? [first, rest[0]!] : [first, rest.slice(0, -1).join('.'), rest.at(-1)!];
}

function put(tree: Tree, path: readonly string[], value: unknown): void {
  let at = tree;
  for (const key of path.slice(0, -1)) {
    if (!Object.hasOwn(at, key) || typeof at[key] !== 'object') own(at, key, {});
    at = at[key] as Tree;
  }
  own(at, path.at(-1)!, value);
}

// Keys come from a sheet: "__proto__" must stay a name.
const own = (at: Tree, key: string, value: unknown): void => {
  Object.defineProperty(at, key, { value, enumerable: true, configurable: true, writable: true });
};

// Names of columns and causes stay text; elsewhere a text such as TRUE, null or 3 says what it spells.
function plainValue(value: Cell, key: string): unknown {
  if (typeof value === 'object' && value !== null) return value.error;
  if (key === 'columns') return value === NO_COLUMN ? '' : String(value);
  if (typeof value !== 'string') return value;
  if (/^(true|false)$/i.test(value)) return value.toLowerCase() === 'true';
  if (value === 'null') return null;
  return /^-?\d+(\.\d+)?$/.test(value) && key !== 'ask' && key !== 'tab' ? Number(value) : value;
}

function withLists(tree: Tree): Tree {
  for (const key of LISTS) {
    const list = tree[key];
    if (typeof list === 'object' && list !== null) tree[key] = Object.values(list);
  }
  return tree;
}

/**
 * The settings as rows of a settings sheet: key and value, a header first; what settingsFromRows reads back.
 * @param settings  settings
 * @returns rows of two cells
 * @example settingsToRows(DEFAULT_SETTINGS)[1] // ["version",1]
 */
export function settingsToRows(settings: Settings): [string, string | number | boolean][] {
  const rows: [string, string | number | boolean][] = [['key', 'value']];
  for (const [key, value] of Object.entries(settings)) addRows(rows, key, value);
  return rows;
}

function addRows(rows: [string, string | number | boolean][], key: string, value: unknown): void {
  if (Array.isArray(value)) value.forEach((item, index) => addRows(rows, `${key}.${index + 1}`, item));
  else if (typeof value === 'object' && value !== null)
    for (const [inner, item] of Object.entries(value)) addRows(rows, `${key}.${inner}`, item);
  else if (value === null) rows.push([key, 'null']);
  else if (value !== undefined) rows.push([key, value as string | number | boolean]);
}

/**
 * The settings of a job: those of the settings file win over those of the workbook's own sheet, key by key; what
 * neither says has its default.
 * @param file  parsed JSON of the settings file, or undefined
 * @param rows  rows of the workbook's settings sheet, or undefined
 * @returns settings with every default filled in
 * @problem badInput  as settingsFrom and settingsFromRows
 * @example jointSettings({ years: 5 }, [['years', 2], ['recovered', 0.4]]).value.recovered // 0.4
 */
export function jointSettings(file: unknown, rows?: readonly (readonly Cell[])[]): Outcome<Settings> {
  const sheet = rows === undefined ? answer<RawSettings>({}) : settingsFromRows(rows);
  if (!sheet.ok) return sheet;
  return settingsFrom(file === undefined ? sheet.value : merged(sheet.value, file));
}

/** What was given with a change put over it, key by key. */
export function changedSettings(given: GivenSettings, change: GivenSettings): GivenSettings {
  return merged(given, change) as GivenSettings;
}

const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function merged(under: unknown, over: unknown): unknown {
  if (!isTree(under) || !isTree(over)) return over;
  const both: Tree = { ...under };
  for (const [key, value] of Object.entries(over))
    own(both, key, Object.hasOwn(both, key) ? merged(both[key], value) : value);
  return both;
}
