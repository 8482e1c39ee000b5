import type { Engine } from './functions.ts';

/** The engine's release whose index was measured and mended; another one is left as it is. */
export const PATCHED_RELEASE = '0.25.1';

type Positions = Map<unknown, Set<number>>;
type Index = {
  _cache: Map<string, Map<string, Map<number, Positions>>>;
  set: (book: string, sheet: string, column: number, value: unknown, row: number, force?: boolean) => void;
  shouldContinueBuildingCache: (book: string, sheet: string, column: number, row: number) => boolean;
};

/**
 * Mends the engine's index of cell values. A forced update looks for a row in the set of every distinct value, so
 * a spill of 20,000 different lots takes a time that grows with its square. Beside each column we keep the value
 * under which a row stands, and take it out there. Touches a private field: a test holds it.
 */
export function patchIndex(engine: Engine): void {
  const index = engine.CELL_INVERTED_INDEX_CACHE as unknown as Index;
  if (releaseOf(engine) !== PATCHED_RELEASE || Object.hasOwn(index, 'set')) return;
  const keyOf = engineKeys(index);
  const keyOfRow = new WeakMap<Positions, Map<number, unknown>>();
  index.set = (book, sheet, column, value, row, force = false) => {
    if (!force && !index.shouldContinueBuildingCache(book, sheet, column, row)) return;
    const sheets = inMap(index._cache, book, newMap<string, Map<number, Positions>>);
    const positions = inMap(
      inMap(sheets, sheet, newMap<number, Positions>),
      column,
      newMap<unknown, Set<number>>,
    );
    const rows = inMap(keyOfRow, positions, newMap<number, unknown>);
    if (rows.has(row)) positions.get(rows.get(row))?.delete(row);
    const key = keyOf(value);
    inMap(positions, key, () => new Set<number>()).add(row);
    rows.set(row, key);
  };
}

// The engine's own key for a value: text without case, an empty cell under a symbol of its own.
function engineKeys(index: Index): (value: unknown) => unknown {
  const scratch = new (index as unknown as { constructor: new () => Index }).constructor();
  return (value) => {
    scratch._cache.clear();
    scratch.set('', '', 0, value, 0, true);
    return scratch._cache.get('')!.get('')!.get(0)!.keys().next().value;
  };
}

const newMap = <K, V>(): Map<K, V> => new Map<K, V>();

type MapLike<K, V> = { readonly get: (key: K) => V | undefined; readonly set: (key: K, value: V) => unknown };

function inMap<K, V>(map: MapLike<K, V>, key: K, make: () => V): V {
  const found = map.get(key);
  if (found !== undefined) return found;
  const made = make();
  map.set(key, made);
  return made;
}

const releaseOf = ({ UniverFormulaEnginePlugin: plugin }: Engine): unknown =>
  (plugin as unknown as { readonly version?: unknown }).version;
