import type { Outcome } from '../../../src/basics/outcome.ts';
import type { Sheet, SheetCell } from '../../../src/report/sheet.ts';
import type {
  BlockContents,
  CellAt,
  FillRequest,
  HostCell,
  SheetHost,
  SheetInfo,
  Work,
} from '../../../taskpane/host/sheetHost.ts';

/** A workbook that every host must be able to begin with. */
export type StartSheet = {
  readonly name: string;
  readonly rows: readonly (readonly (string | number | boolean | null)[])[];
  /** Columns whose numbers are shown as dates. */
  readonly dateColumns: readonly number[];
  /** A table over all rows. */
  readonly table?: string;
  readonly hiddenRows: readonly number[];
  readonly isProtected: boolean;
};

/** A host that has opened the start sheets, and what only a test may ask. */
export type HostUnderTest = {
  readonly host: SheetHost;
  /** The formula in a cell without its "=", or undefined. */
  readonly formulaAt: (at: CellAt) => Promise<string | undefined>;
  /** Code of a cell's number format. */
  readonly numberCodeAt: (at: CellAt) => Promise<string | undefined>;
  /** Takes back the last step as the user would; left out where the host gives no way to. */
  readonly undo?: () => Promise<void>;
};

export const ROWS = 5;

/** What the tested workbook holds at the start. */
export const START: readonly StartSheet[] = [
  {
    name: 'Fleet',
    rows: [
      ['Serial', 'Volts', 'Fitted'],
      ['0514', 12.6, 45_000],
      ['S2', 12.4, 45_100],
      ['S3', null, null],
      ['S4', 0, 45_300],
      ['S5', true, 45_400],
    ],
    dateColumns: [2],
    table: 'Units',
    hiddenRows: [3],
    isProtected: false,
  },
  {
    name: 'Store',
    rows: [
      ['Serial', 'Volts'],
      ['T1', 12.6],
      ['T2', 12.2],
    ],
    dateColumns: [],
    hiddenRows: [],
    isProtected: false,
  },
  {
    name: 'Locked',
    rows: [
      ['Serial', 'Volts'],
      ['L1', 12.6],
    ],
    dateColumns: [],
    hiddenRows: [],
    isProtected: true,
  },
];

export const cell = (value: SheetCell['value'], more: Partial<SheetCell> = {}): SheetCell => ({
  value,
  meaning: 'body',
  format: 'plain',
  ...more,
});

/** A small sheet of our own: a named input, a formula that uses it, a table, a text that looks like a formula. */
export function reportSheet(name: string, more: Partial<Sheet> = {}): Sheet {
  return {
    name,
    rows: [
      [cell('Forecast', { meaning: 'title', format: 'text' })],
      [cell('price'), cell(200, { meaning: 'input', format: 'money' })],
      [cell('twice'), cell(400, { formula: 'unitPrice*2', format: 'money' })],
      [cell('month', { meaning: 'columnHead' }), cell('note', { meaning: 'columnHead' })],
      [cell(45_000, { format: 'date' }), cell('=not a formula', { format: 'text' })],
      [cell(45_031, { format: 'date' }), cell('0514', { format: 'text' })],
    ],
    widths: [14, 30],
    frozenRows: 1,
    names: [{ name: 'unitPrice', row: 1, column: 1 }],
    tables: [{ name: 'months', row: 3, column: 0, rows: 2, heads: ['month', 'note'] }],
    charts: [],
    pageBreaks: [],
    spans: [{ row: 0, column: 0, columns: 2 }],
    ...more,
  };
}

/** The value of an outcome that must be one. */
export function valueOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`refused: ${outcome.problem.because}`);
  return outcome.value;
}

export const becauseOf = <T>(outcome: Outcome<T>): string | undefined =>
  outcome.ok ? undefined : outcome.problem.because;

export const followed = (): Work & { readonly shares: number[] } => {
  const shares: number[] = [];
  return { signal: new AbortController().signal, progress: (share) => shares.push(share), shares };
};

/** Work that the user gives up as soon as it tells of its progress for the first time. */
export function givenUp(): Work {
  const control = new AbortController();
  return { signal: control.signal, progress: () => control.abort() };
}

/** What the tests ask again and again of the host of the moment. */
export function askingOf(now: () => HostUnderTest) {
  const host = (): SheetHost => now().host;
  const infoOf = async (sheet: string): Promise<SheetInfo> =>
    valueOf(await host().workbook()).sheets.find((each) => each.name === sheet)!;
  const namesNow = async (): Promise<string[]> =>
    valueOf(await host().workbook()).sheets.map((sheet) => sheet.name);
  const read = async (sheet: string, rows: number, columns: number): Promise<BlockContents> =>
    valueOf(await host().readBlock({ sheet, block: { row: 0, column: 0, rows, columns } }));
  const fill = (more: Partial<FillRequest>): FillRequest => ({
    sheet: 'Fleet',
    as: 'values',
    headRow: 0,
    rows: ROWS,
    column: 3,
    columns: [{ head: 'Checked', format: 'whole', values: [1, 2, null, 4, 5] }],
    overwrite: false,
    ...more,
  });
  const column = async (sheet: string, at: number, rows: number): Promise<HostCell[]> =>
    (await read(sheet, rows, at + 1)).rows.map((row) => row[at]!);
  return { infoOf, namesNow, read, fill, column };
}
