import type { ICellData } from '@univerjs/core';
import type { LiveSheet } from './workbookLive.ts';
import type { Mutation, Steps } from './workbookSteps.ts';

/** New cells by row and column; what a cell doesn't mention stays as it is. */
export type CellPatch = Map<number, ReadonlyMap<number, ICellData>>;

/** A cell with nothing in it, said in full: what is left out would stay. */
const EMPTY = { v: null, f: null, si: null, p: null, custom: null };

/** What clears the contents of a cell and leaves its look. */
export const CLEARED = EMPTY as unknown as ICellData;

/** Writes cells of a sheet in one call, and remembers what was there. */
export function writeCells(steps: Steps, live: LiveSheet, patch: CellPatch): void {
  const [after, before]: Record<number, Record<number, ICellData>>[] = [{}, {}];
  for (const [row, cells] of patch) {
    const [newRow, oldRow] = [(after![row] ??= {}), (before![row] ??= {})];
    for (const [column, cell] of cells) {
      newRow[column] = { ...CLEARED, ...cell };
      const old = live.sheet.getCellRaw(row, column) ?? {};
      oldRow[column] = { ...CLEARED, s: null, ...structuredClone(old) };
    }
  }
  steps.make(setValues(live, after!), setValues(live, before!));
}

const setValues = ({ bookId, id }: LiveSheet, cellValue: object): Mutation => ({
  id: 'sheet.mutation.set-range-values',
  params: { unitId: bookId, subUnitId: id, cellValue },
});
