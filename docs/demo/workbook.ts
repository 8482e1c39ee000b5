import type { Cell, CellStyle, CellValue, WriteOptions, WriteSheet } from 'hucre';
import { writeXlsx } from 'hucre/xlsx';
import { columnLetters, ROWS_ABOVE } from './arrange.ts';
import type { DemoCell } from './columns.ts';
import { COLUMNS } from './columns.ts';
import { notesLines } from './notes.ts';
import type { Row } from './register.ts';
import type { SideSheet } from './sideSheets.ts';

/** The sheets of the demonstration before they are written. */
export type DemoBook = { readonly register: readonly Row[]; readonly sides: readonly SideSheet[] };

/** The line under the title; every reader is to see that nothing here is real. */
const NOTE_LINE = 'Norrfell winter-road and rescue service – fictional demo data, invented numbers';

const HEAD: CellStyle = {
  font: { bold: true },
  fill: { type: 'pattern', pattern: 'solid', fgColor: { rgb: 'FFD9E2EC' } },
  border: { bottom: { style: 'thin' } },
  alignment: { wrapText: true, vertical: 'top' },
};
const TITLE: CellStyle = { font: { bold: true, size: 14 } };
const NOTE: CellStyle = { font: { italic: true } };
const BOLD: CellStyle = { font: { bold: true } };

/** The bytes of the .xlsx; the same book gives the same bytes. */
export function writeDemo(book: DemoBook): Promise<Uint8Array> {
  const sheets = [
    registerSheet(book.register, 'Battery register – all stations'),
    ...book.sides.map(sideSheet),
    notesSheet(),
  ];
  return writeXlsx({ sheets, properties: PROPERTIES });
}

/** The bytes of last month's file of one station; its days are counted from 1904, as some spreadsheets do. */
export function writeLastMonth(rows: readonly Row[]): Promise<Uint8Array> {
  const sheets = [registerSheet(rows.map(from1904), 'Battery register – Isvarg Pass, 31 May 2026')];
  return writeXlsx({ sheets, properties: PROPERTIES, dateSystem: '1904' });
}

const DAYS_FROM_1900_TO_1904 = 1462;

function from1904(row: Row): Row {
  const cells = Object.entries(row.cells).map(([key, cell]) => [
    key,
    typeof cell === 'object' && 'day' in cell ? { ...cell, day: cell.day - DAYS_FROM_1900_TO_1904 } : cell,
  ]);
  return { ...row, cells: Object.fromEntries(cells) };
}

// The clock of the machine would change the bytes of each run.
const WRITTEN = new Date(Date.UTC(2026, 5, 30, 12));
const PROPERTIES: WriteOptions['properties'] = {
  title: 'Battery register (fictional demonstration)',
  creator: 'docs/demo/makeDemo.ts',
  created: WRITTEN,
  modified: WRITTEN,
};

type Grid = { readonly rows: CellValue[][]; readonly cells: Map<string, Partial<Cell>> };

function put({ rows, cells }: Grid, row: number, column: number, given: DemoCell, style?: CellStyle): void {
  const line = (rows[row] ??= []);
  while (line.length < column) line.push(null);
  line[column] = valueOf(given);
  const detail = detailOf(given, style);
  if (detail !== undefined) cells.set(`${row},${column}`, detail);
}

function valueOf(given: DemoCell): CellValue {
  if (typeof given !== 'object') return given;
  return 'day' in given ? given.day : given.result;
}

const ERROR_TEXT = /^#(N\/A|DIV\/0!)$/;

function detailOf(given: DemoCell, style?: CellStyle): Partial<Cell> | undefined {
  if (typeof given === 'string' && ERROR_TEXT.test(given)) return { type: 'error', value: given };
  if (typeof given !== 'object') return style === undefined ? undefined : { style };
  const formatted = { style: { ...style, numFmt: given.format } };
  if ('day' in given) return formatted;
  return { ...formatted, type: 'formula', formula: given.formula, formulaResult: given.result };
}

function registerSheet(register: readonly Row[], title: string): WriteSheet {
  const grid: Grid = { rows: [[], [], [], []], cells: new Map() };
  put(grid, 0, 0, title, TITLE);
  put(grid, 1, 0, NOTE_LINE, NOTE);
  COLUMNS.forEach(({ group, header }, column) => {
    put(grid, 2, column, group, HEAD);
    put(grid, 3, column, header, HEAD);
  });
  register.forEach((row, index) => putRow(grid, ROWS_ABOVE + index, row));
  const last = columnLetters(COLUMNS.length - 1);
  return {
    name: 'Inventory',
    ...grid,
    columns: COLUMNS.map(({ width }) => ({ width })),
    rowDefs: hiddenRows(register),
    freezePane: { rows: ROWS_ABOVE, columns: 2 },
    autoFilter: { range: `A${ROWS_ABOVE}:${last}${ROWS_ABOVE + register.length}` },
    pageSetup: {
      orientation: 'landscape',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printTitlesRow: '$3:$4',
    },
  };
}

function putRow(grid: Grid, index: number, row: Row): void {
  grid.rows[index] = [];
  const bold = row.kind === 'battery' ? undefined : BOLD;
  COLUMNS.forEach((column, position) => {
    const given = row.cells[column.key];
    if (given === undefined || given === '') return;
    const format = 'format' in column && typeof given === 'number' ? { numFmt: column.format } : undefined;
    put(grid, index, position, given, format ?? bold);
  });
}

function hiddenRows(register: readonly Row[]): NonNullable<WriteSheet['rowDefs']> {
  const hidden = register.flatMap((row, index) => (row.hidden === true ? [ROWS_ABOVE + index] : []));
  return new Map(hidden.map((index) => [index, { hidden: true }]));
}

function sideSheet({ name, head, widths, lines }: SideSheet): WriteSheet {
  const grid: Grid = { rows: [[]], cells: new Map() };
  head.forEach((header, column) => put(grid, 0, column, header, HEAD));
  lines.forEach((line, index) => {
    grid.rows[index + 1] = [];
    line.forEach((given, column) => {
      if (given !== undefined && given !== '') put(grid, index + 1, column, given);
    });
  });
  return { name, ...grid, columns: widths.map((width) => ({ width })), freezePane: { rows: 1 } };
}

function notesSheet(): WriteSheet {
  const grid: Grid = { rows: [], cells: new Map() };
  notesLines.forEach((text, row) =>
    put(grid, row, 0, text, row === 0 ? TITLE : { alignment: { wrapText: true } }),
  );
  return { name: 'Notes', ...grid, columns: [{ width: 110 }] };
}
