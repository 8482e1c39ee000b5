import type { Engine } from './workbookFunctions.ts';

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
  if (releaseOf(engine) !== PATCHED_RELEASE) return;
  const index = engine.CELL_INVERTED_INDEX_CACHE as unknown as Index;
  const plainSet = index.set.bind(index);
  const valueOfRow = new WeakMap<Positions, Map<number, unknown>>();
  index.set = (book, sheet, column, value, row, force = false) => {
    const positions = index._cache.get(book)?.get(sheet)?.get(column);
    if (!force || positions === undefined) return plainSet(book, sheet, column, value, row, force);
    const rows = valueOfRow.get(positions) ?? rowsOf(positions);
    valueOfRow.set(positions, rows);
    positions.get(rows.get(row))?.delete(row);
    const key = keyOf(value);
    const own = positions.get(key) ?? new Set<number>();
    positions.set(key, own.add(row));
    rows.set(row, key);
  };

  // The engine's own key for a value: text without case, an empty cell under a symbol of its own.
  const scratch = new (index as unknown as { constructor: new () => Index }).constructor();
  function keyOf(value: unknown): unknown {
    scratch._cache.clear();
    scratch.set('', '', 0, value, 0, true);
    return scratch._cache.get('')!.get('')!.get(0)!.keys().next().value;
  }
}

const releaseOf = ({ UniverFormulaEnginePlugin: plugin }: Engine): unknown =>
  (plugin as unknown as { readonly version?: unknown }).version;

function rowsOf(positions: Positions): Map<number, unknown> {
  const rows = new Map<number, unknown>();
  for (const [value, own] of positions) for (const row of own) rows.set(row, value);
  return rows;
}
