import { answer, problem } from '../../src/basics/outcome.ts';
import type { Sheet } from '../../src/report/sheet.ts';
import type {
  FilledColumn,
  FillRequest,
  HostCell,
  SheetBlock,
  SheetHost,
  SheetInfo,
} from '../../taskpane/host/sheetHost.ts';

/** A sheet of the workbook in memory: its rows, and which columns hold dates below the first row. */
export type MemorySheet = {
  readonly name: string;
  readonly rows: readonly (readonly HostCell[])[];
  readonly dateColumns?: readonly number[];
};

/** What was done to the workbook in memory. */
export type Done = {
  readonly added: (readonly Sheet[])[];
  readonly replaced: Sheet[];
  readonly workbooks: { readonly fileName: string; readonly sheets: readonly Sheet[] }[];
  readonly filled: FillRequest[];
  readonly appended: { readonly sheet: string; readonly cells: readonly HostCell[] }[];
  readonly selected: SheetBlock[];
  copies: number;
};

/** A workbook in memory that the pane's tests can look into. */
export function memoryHost(sheets: readonly MemorySheet[]): { host: SheetHost; done: Done } {
  const done: Done = {
    ...{ added: [], replaced: [], workbooks: [], filled: [], appended: [], selected: [] },
    copies: 0,
  };
  const names = new Map<string, { sheet: string; row: number; column: number }>();
  const listeners = new Set<(at: SheetBlock) => void>();
  const infos = (): SheetInfo[] => [
    ...sheets.map(infoOf),
    ...[...done.added.flat(), ...done.replaced].map(({ name, rows }) =>
      infoOf({ name, rows: [rows.map(() => '')] }),
    ),
  ];
  const host: SheetHost = {
    kind: 'builtIn',
    workbook: async () =>
      answer({
        fileName: 'inventory.xlsx',
        sheets: infos(),
        selected: { sheet: sheets[0]!.name, block: { row: 0, column: 0, rows: 1, columns: 1 } },
        dates1904: false,
        warnings: [],
      }),
    readBlock: async ({ sheet: name, block }, work) => {
      work?.signal.throwIfAborted();
      const sheet = sheets.find((each) => each.name === name);
      if (sheet === undefined) return problem('badInput', 'notAWord', 'sheet', name);
      const rows = Array.from({ length: block.rows }, (_, row) =>
        Array.from(
          { length: block.columns },
          (_, column) => sheet.rows[block.row + row]?.[block.column + column] ?? null,
        ),
      );
      return answer({ rows, dateCells: dateCells(sheet), hiddenRows: new Set<number>() });
    },
    select: async (at) => {
      done.selected.push(at);
      for (const listener of listeners) listener(at);
      return answer(undefined);
    },
    onSelect: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    addSheets: async (added, work) => {
      work?.signal.throwIfAborted();
      const taken = added.find(({ name }) => infos().some((each) => each.name === name));
      if (taken !== undefined) return problem('badInput', 'notAWord', 'sheet', taken.name);
      done.added.push(added);
      return answer(undefined);
    },
    replaceSheet: async (sheet) => {
      done.replaced.push(sheet);
      return answer(undefined);
    },
    newWorkbook: async (fileName, made) => {
      done.workbooks.push({ fileName, sheets: made });
      return answer(undefined);
    },
    workInCopy: async () => {
      done.copies += 1;
      return answer('inventory (copy).xlsx');
    },
    fill: async (request) => {
      done.filled.push(request);
      return answer(undefined);
    },
    appendRow: async (sheet, _heads, cells) => {
      done.appended.push({ sheet, cells: cells.map(({ value }) => value) });
      return answer(done.appended.length);
    },
    nameCell: async ({ name, at }) => {
      names.set(name, at);
      return answer(undefined);
    },
    namedCell: async (name) => answer(names.get(name)),
    repairFormulas: async () => answer(0),
  };
  return { host, done };
}

function infoOf({ name, rows }: MemorySheet): SheetInfo {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const used = rows.length === 0 ? undefined : { row: 0, column: 0, rows: rows.length, columns };
  return { name, hidden: false, isProtected: false, used, tables: [] };
}

function dateCells({ rows, dateColumns = [] }: MemorySheet): Map<number, Set<number>> {
  const below = rows.flatMap((_, row) => (row > 0 ? [row] : []));
  return new Map(dateColumns.map((column) => [column, new Set(below)]));
}

/** One column as a fill writes it, for tests that look only at heads and values. */
export const headsOf = (columns: readonly FilledColumn[]): string[] => columns.map(({ head }) => head);
