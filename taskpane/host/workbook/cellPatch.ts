import type { ICellData, Nullable } from '@univerjs/core';
import type { LiveSheet } from './live.ts';
import type { Mutation, Steps } from './steps.ts';

/** New cells by row and column; what a cell doesn't mention stays as it is. */
export type CellPatch = Map<number, ReadonlyMap<number, ICellData>>;

/** A cell with nothing in it, said in full: what is left out would stay. */
const EMPTY = { v: null, f: null, si: null, p: null, custom: null };

/** What clears the contents of a cell and leaves its look. */
export const CLEARED = EMPTY as unknown as ICellData;

type Cells = Record<number, Record<number, ICellData>>;

/** Writes cells of a sheet in one call, and remembers what was there. */
export function writeCells(steps: Steps, live: LiveSheet, patch: CellPatch): void {
  const [after, before]: [Cells, Cells] = [{}, {}];
  for (const [row, cells] of patch) {
    const [newRow, oldRow] = [(after[row] ??= {}), (before[row] ??= {})];
    for (const [column, cell] of cells) {
      newRow[column] = cell === CLEARED ? cell : { ...CLEARED, ...cell };
      oldRow[column] = restoring(live, live.sheet.getCellRaw(row, column), cell);
    }
  }
  steps.make(setValues(live, after), setValues(live, before));
}

// One object for the many cells that were empty.
const UNFILLED = { ...EMPTY, s: null } as unknown as ICellData;

/** What brings a cell back: the grid lays a look over the one that is there, so what was not there is taken off. */
function restoring(live: LiveSheet, old: Nullable<ICellData>, cell: ICellData): ICellData {
  if (!old) return UNFILLED;
  const contents = { ...CLEARED, ...structuredClone(old) };
  if (!cell.s) return contents;
  const styles = live.facade.getWorkbook().getStyles();
  const added = Object.keys(styles.get(cell.s) ?? {}).map((key) => [key, null] as const);
  return { ...contents, s: { ...Object.fromEntries(added), ...styles.getStyleByCell(old) } };
}

const setValues = ({ bookId, id }: LiveSheet, cellValue: object): Mutation => ({
  id: 'sheet.mutation.set-range-values',
  params: { unitId: bookId, subUnitId: id, cellValue },
});
