import type { Block } from '../../src/report/sheet.ts';
import { quotedSheet } from '../../src/report/sheet.ts';

/** An error that a cell shows. */
export class ErrorValue {
  constructor(readonly code: string) {}
}

/** What a cell holds; a cell that was never written is undefined. */
export type Value = number | string | boolean | ErrorValue;

/** A look given to a block: the path of the property, such as `font/bold`, and its value. The last one counts. */
export type Look = { readonly block: Block; readonly property: string; readonly value: unknown };

/** A table of the model; its block holds the heads. */
export type ModelTable = {
  readonly id: string;
  name: string;
  block: Block;
  heads: string[];
  style: string;
  showBandedRows: boolean;
  showFilterButton: boolean;
  showHeaders: boolean;
  /** Formulas that fill whole columns, by head. */
  readonly calculated: Map<string, string>;
};

/** A chart of the model: what was set on it, by path. */
export type ModelChart = {
  readonly id: string;
  readonly type: string;
  readonly settings: Map<string, unknown>;
  readonly series: ModelSeries[];
  at: readonly [string, string] | undefined;
};

/** A series of a chart: its blocks and what was set on it. */
export type ModelSeries = {
  values: Block | undefined;
  categories: Block | undefined;
  readonly settings: Map<string, unknown>;
};

/** A name for a cell, of the workbook or of one sheet. */
export type ModelName = { readonly name: string; sheet: ModelSheet; block: Block };

/** A worksheet of the model. */
export type ModelSheet = {
  readonly id: string;
  name: string;
  visibility: 'Visible' | 'Hidden' | 'VeryHidden';
  isProtected: boolean;
  readonly cells: Value[][];
  /** By row and column, joined with a comma. */
  readonly formulas: Map<string, string>;
  readonly spills: Map<string, Block>;
  readonly looks: Look[];
  readonly hiddenRows: Set<number>;
  readonly tables: ModelTable[];
  readonly names: ModelName[];
  readonly charts: ModelChart[];
  readonly merges: Block[];
  readonly page: Map<string, unknown>;
  readonly pageBreaks: string[];
  frozenRows: number;
  showGridlines: boolean;
};

/** What is open in the program. */
export type ModelWorkbook = {
  name: string;
  readonly sheets: ModelSheet[];
  readonly names: ModelName[];
  active: ModelSheet;
  /** Undefined where something other than cells is selected. */
  selected: { readonly sheet: ModelSheet; readonly block: Block } | undefined;
  /** Called when the selection has moved. */
  onSelect: () => void;
  dates1904: boolean;
  isProtected: boolean;
  /** Whether the functions of the add-in are there; without them formulas show #NAME?. */
  knowsOurFunctions: boolean;
  /** Whether cells have changed since formulas were last answered. */
  changed: boolean;
  enableEvents: boolean;
  calculationMode: string;
  /** Workbooks that were opened beside this one, as the texts of their bytes. */
  readonly opened: string[];
};

/** A refusal of the program, with the code that the library turns into its own error. */
export class Refusal extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

let made = 0;

/** An identifier that nothing else has. */
export function newId(kind: string): string {
  made += 1;
  return `{${kind}-${made}}`;
}

/** A sheet without content. */
export function emptySheet(name: string): ModelSheet {
  const lists = { looks: [], tables: [], names: [], charts: [], merges: [], pageBreaks: [] };
  const maps = { formulas: new Map(), spills: new Map(), page: new Map(), hiddenRows: new Set<number>() };
  const plain = { visibility: 'Visible', isProtected: false, frozenRows: 0, showGridlines: true } as const;
  return { id: newId('sheet'), name, cells: [], ...lists, ...maps, ...plain };
}

/** A workbook with one empty sheet for each name. */
export function emptyWorkbook(names: readonly string[]): ModelWorkbook {
  const sheets = names.map(emptySheet);
  const plain = { dates1904: false, isProtected: false, enableEvents: true, calculationMode: 'Automatic' };
  return {
    name: 'Fleet.xlsx',
    sheets,
    names: [],
    opened: [],
    onSelect: () => undefined,
    active: sheets[0]!,
    selected: { sheet: sheets[0]!, block: { row: 0, column: 0, rows: 1, columns: 1 } },
    ...{ knowsOurFunctions: true, changed: false },
    ...plain,
  };
}

/** The sheet that a name or an identifier means. */
export function sheetNamed(workbook: ModelWorkbook, key: unknown): ModelSheet | undefined {
  const wanted = String(key).toLowerCase();
  return workbook.sheets.find(({ id, name }) => id === key || name.toLowerCase() === wanted);
}

/** Whether two blocks have a cell in common. */
export function overlap(a: Block, b: Block): boolean {
  return (
    a.row < b.row + b.rows &&
    b.row < a.row + a.rows &&
    a.column < b.column + b.columns &&
    b.column < a.column + a.columns
  );
}

/** Whether the inner block lies in the outer one. */
export function within(inner: Block, outer: Block): boolean {
  return (
    inner.row >= outer.row &&
    inner.column >= outer.column &&
    inner.row + inner.rows <= outer.row + outer.rows &&
    inner.column + inner.columns <= outer.column + outer.columns
  );
}

/** The smallest block that holds every written cell, of the whole sheet or of a part; undefined for none. */
export function usedBlock(sheet: ModelSheet, part?: Block): Block | undefined {
  let [top, left, bottom, right] = [Infinity, Infinity, -1, -1];
  sheet.cells.forEach((cells, row) =>
    cells.forEach((_, column) => {
      if (part !== undefined && !within({ row, column, rows: 1, columns: 1 }, part)) return;
      [top, left] = [Math.min(top, row), Math.min(left, column)];
      [bottom, right] = [Math.max(bottom, row), Math.max(right, column)];
    }),
  );
  if (bottom < 0) return undefined;
  return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** The number format of a cell. */
export function numberFormatAt(sheet: ModelSheet, row: number, column: number): string {
  const cell = { row, column, rows: 1, columns: 1 };
  for (let index = sheet.looks.length - 1; index >= 0; index -= 1) {
    const { property, block, value } = sheet.looks[index]!;
    if (property === 'numberFormat' && within(cell, block)) return value as string;
  }
  return 'General';
}

/** A table of the workbook by its name or identifier. */
export function tableNamed(workbook: ModelWorkbook, key: unknown): [ModelSheet, ModelTable] | undefined {
  const wanted = String(key).toLowerCase();
  for (const sheet of workbook.sheets) {
    const table = sheet.tables.find(({ id, name }) => id === key || name.toLowerCase() === wanted);
    if (table !== undefined) return [sheet, table];
  }
  return undefined;
}

/** A sheet's name as an address writes it. */
export function sheetInAddress(name: string): string {
  return /^[A-Za-z_][A-Za-z0-9_.]*$/.test(name) ? name : quotedSheet(name);
}
