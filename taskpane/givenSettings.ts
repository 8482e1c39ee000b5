import type { GivenSettings } from '../src/inventory/settings.ts';

type Tree = Readonly<Record<string, unknown>>;

const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A dotted path such as money.unitPrice, or its keys one by one where a name may itself hold a dot. */
export type SettingPath = string | readonly string[];

const keysOf = (path: SettingPath): readonly string[] => (typeof path === 'string' ? path.split('.') : path);

/** The value that stands at a path, or undefined. */
export function settingAt(settings: object, path: SettingPath): unknown {
  return keysOf(path).reduce<unknown>((value, key) => (isTree(value) ? value[key] : undefined), settings);
}

/** The settings with another value at a path; undefined takes the key out, so that its default holds. */
export function withSetting(given: GivenSettings, path: SettingPath, value: unknown): GivenSettings {
  return put(given as Tree, keysOf(path), value) as GivenSettings;
}

function put(tree: Tree, [key = '', ...rest]: readonly string[], value: unknown): Tree {
  const { [key]: before, ...others } = tree;
  const now = rest.length === 0 ? value : put(isTree(before) ? before : {}, rest, value);
  return now === undefined ? others : { ...others, [key]: now };
}
