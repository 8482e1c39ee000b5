import type { Sheet } from '../../../src/report/sheet.ts';
import type { StartedWorkbook } from './engine.ts';
import type { OriginalSheet } from './fileWork.ts';
import type { WorkbookState } from '../xlsx/workbookState.ts';
import { stateOf } from './stateOf.ts';
import type { Followed } from './turns.ts';

/** What has happened to one sheet since it was opened or added. */
export type SheetChanges = {
  /** Its name in the file; undefined for a new one. */
  readonly original: string | undefined;
  /** The data from which it was drawn. */
  readonly drawn: Sheet | undefined;
  /** Cells that were written to, by row and column. */
  readonly cells: Map<number, Set<number>>;
  /** Formula cells that were calculated anew. */
  readonly calculated: Map<number, Set<number>>;
  /** Those of them whose look was set. */
  readonly looks: Map<number, Set<number>>;
  readonly widths: Set<number>;
  hidden: boolean;
  merges: boolean;
  shifted: boolean;
};

/** Everything that has happened since. */
export type Changes = {
  readonly sheets: ReadonlyMap<string, SheetChanges>;
  /** Names defined or moved for the whole workbook. */
  readonly names: ReadonlySet<string>;
  /** The sheets of the file that was opened; undefined where the workbook was new. */
  readonly originals: readonly OriginalSheet[] | undefined;
};

/** Follows what the user and the pane do, so that saving knows what to put into the original. */
export type ChangeTracker = {
  /** Starts anew with what has just been opened; without a file everything is new. */
  readonly begin: (originals: readonly OriginalSheet[] | undefined) => void;
  readonly pause: () => void;
  readonly resume: () => void;
  /** A sheet was drawn from our own data. */
  readonly drawn: (sheet: Sheet, id: string) => void;
  readonly state: (work?: Followed) => Promise<WorkbookState>;
  readonly onChange: (listener: () => void) => () => void;
  readonly dispose: () => void;
};

type CellsByRow = Record<number, Record<number, { readonly s?: unknown } | null> | null | undefined>;
type Params = {
  readonly subUnitId?: string;
  readonly sheet?: { readonly id?: string };
  readonly cellValue?: CellsByRow;
  readonly ranges?: readonly { readonly startColumn: number; readonly endColumn: number }[];
  readonly name?: string;
  readonly localSheetId?: string;
  readonly unitData?: Record<string, Record<string, CellsByRow | null> | null>;
};

const SHIFTS =
  /^sheet\.mutation\.(insert-row|insert-col|remove-rows|remove-col|move-range|move-rows|move-columns|move-cols|reorder-range)$/;

/** Begins to follow the changes of whatever is open. */
export function trackChanges(started: StartedWorkbook): ChangeTracker {
  let sheets = new Map<string, SheetChanges>();
  let names = new Set<string>();
  let originals: readonly OriginalSheet[] | undefined;
  let paused = true;
  const listeners = new Set<() => void>();
  const sheetOf = (id: string): SheetChanges => {
    if (!sheets.has(id)) sheets.set(id, newSheet(undefined));
    return sheets.get(id)!;
  };
  const commands = started.univer.__getInjector().get(started.core.ICommandService);
  const watching = commands.onCommandExecuted(({ id, params }, options) => {
    if (paused || params === undefined) return;
    const isResult = options?.['fromFormula'] === true || options?.['onlyLocal'] === true;
    if (isResult && id === 'sheet.mutation.set-range-values') return;
    if (note(id, params as Params, sheetOf, names)) listeners.forEach((tell) => tell());
  });
  return {
    begin: (opened) => {
      [sheets, names, originals, paused] = [new Map(), new Set(), opened, false];
      const open = started.api.getActiveWorkbook()!.getSheets();
      open.forEach((sheet, index) => {
        sheets.set(sheet.getSheetId(), newSheet(opened?.[index]?.name));
      });
    },
    pause: () => {
      paused = true;
    },
    resume: () => {
      paused = false;
    },
    drawn: (sheet, id) => void sheets.set(id, newSheet(undefined, sheet)),
    state: (work) => stateOf(started, { sheets, names, originals }, work),
    onChange: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    dispose: () => {
      listeners.clear();
      watching.dispose();
    },
  };
}

const newSheet = (original: string | undefined, drawn?: Sheet): SheetChanges => ({
  original,
  drawn,
  cells: new Map(),
  calculated: new Map(),
  looks: new Map(),
  widths: new Set(),
  hidden: false,
  merges: false,
  shifted: false,
});

/** Notes one change; answers whether it was one. */
function note(
  id: string,
  params: Params,
  sheetOf: (id: string) => SheetChanges,
  names: Set<string>,
): boolean {
  if (id === 'formula.mutation.set-formula-calculation-result') return noteResults(params, sheetOf);
  if (id === 'formula.mutation.set-defined-name') {
    if (params.localSheetId === 'AllDefaultWorkbook') names.add(params.name!);
    return true;
  }
  if (!id.startsWith('sheet.mutation.') || params.subUnitId === undefined)
    return id.startsWith('sheet.mutation.');
  const sheet = sheetOf(params.subUnitId);
  if (id === 'sheet.mutation.set-range-values') noteCells(sheet, params.cellValue ?? {}, true);
  if (SHIFTS.test(id)) sheet.shifted = true;
  if (id.endsWith('worksheet-merge')) sheet.merges = true;
  if (id === 'sheet.mutation.set-worksheet-hidden') sheet.hidden = true;
  if (id === 'sheet.mutation.set-worksheet-col-width') {
    for (const { startColumn, endColumn } of params.ranges ?? [])
      for (let column = startColumn; column <= endColumn; column += 1) sheet.widths.add(column);
  }
  return true;
}

function noteResults({ unitData }: Params, sheetOf: (id: string) => SheetChanges): boolean {
  let any = false;
  for (const results of Object.values(unitData ?? {})) {
    for (const [id, cells] of Object.entries(results ?? {})) {
      if (cells === null) continue;
      noteCells(sheetOf(id), cells, false);
      any = true;
    }
  }
  return any;
}

function noteCells(sheet: SheetChanges, cellValue: CellsByRow, isWritten: boolean): void {
  for (const [row, cells] of Object.entries(cellValue)) {
    for (const [column, cell] of Object.entries(cells ?? {})) {
      mark(isWritten ? sheet.cells : sheet.calculated, Number(row), Number(column));
      if (isWritten && cell?.s !== undefined) mark(sheet.looks, Number(row), Number(column));
    }
  }
}

function mark(spots: Map<number, Set<number>>, row: number, column: number): void {
  const columns = spots.get(row);
  if (columns === undefined) spots.set(row, new Set([column]));
  else columns.add(column);
}
