import type { Cell, CellStyle, SheetChart, TableDefinition, WriteSheet } from 'hucre/xlsx';
import type { Chart, Format, Meaning, Sheet, SheetCell } from '../../src/report/sheet.ts';
import { address, fixedBlock, quotedSheet } from '../../src/report/sheet.ts';

/** How a spreadsheet shows a number of each format; codes are the file format's own (ISO/IEC 29500). */
const NUMBER_CODES: Record<Format, string | undefined> = {
  text: '@',
  whole: '#,##0',
  oneDecimal: '#,##0.0',
  months: '0.0',
  share: '0%',
  chance: '0.0%',
  money: '#,##0.00',
  date: 'yyyy-mm-dd',
  plain: undefined,
};

const INK = { rgb: '1F2A33' };
const GREY = { rgb: '5B6670' };
const HAIR = { style: 'thin', color: { rgb: 'B8BFC6' } } as const;
const RULE = { style: 'medium', color: INK } as const;
const font = (size: number, more: object = {}) => ({ name: 'Calibri', size, color: INK, ...more });
const fill = (rgb: string) => ({ type: 'pattern', pattern: 'solid', fgColor: { rgb } }) as const;

/** The one look of every sheet that the tool writes: readable in black and white, inputs boxed. */
const LOOKS: Record<Meaning, CellStyle> = {
  title: { font: font(18, { bold: true }) },
  subtitle: { font: font(12, { color: GREY }) },
  heading: { font: font(13, { bold: true }), border: { bottom: RULE } },
  columnHead: {
    font: font(10, { bold: true }),
    fill: fill('E9ECEF'),
    border: { bottom: RULE, top: HAIR },
    alignment: { wrapText: true, vertical: 'bottom' },
  },
  label: { font: font(10), alignment: { vertical: 'top' } },
  body: { font: font(10), border: { bottom: HAIR }, alignment: { vertical: 'top' } },
  input: { font: font(10, { bold: true }), border: { top: RULE, bottom: RULE, left: RULE, right: RULE } },
  total: { font: font(10, { bold: true }), border: { top: RULE, bottom: RULE } },
  note: { font: font(9, { italic: true, color: GREY }), alignment: { wrapText: true, vertical: 'top' } },
  caution: {
    font: font(10, { bold: true }),
    border: { left: RULE },
    alignment: { wrapText: true, vertical: 'top' },
  },
};

/** The sheet in the terms of the .xlsx writer. Text stays text whatever it begins with. */
export function sheetForFile(sheet: Sheet): WriteSheet {
  return {
    name: sheet.name,
    rows: sheet.rows.map((row) => row.map((cell) => (cell === null ? null : cell.value))),
    cells: cellsOf(sheet),
    rowDefs: rowHeights(sheet),
    rowBreaks: [...sheet.pageBreaks].map((row) => row - 1),
    columns: sheet.widths.map((width) => ({ width })),
    merges: sheet.spans.map(({ row, column, columns }) => ({
      startRow: row,
      endRow: row,
      startCol: column,
      endCol: column + columns - 1,
    })),
    freezePane: sheet.frozenRows > 0 ? { rows: sheet.frozenRows } : undefined,
    tables: sheet.tables.map(tableForFile),
    charts: sheet.charts.map((chart) => chartForFile(chart, quotedSheet(sheet.name))),
    pageSetup: printSetup(sheet),
    headerFooter: { oddFooter: '&L&A&RPage &P of &N' },
    view: { showGridLines: false },
  };
}

/** The sheet's named cells as names that are known on that sheet only. */
export function namesForFile(sheet: Sheet): { name: string; range: string; scope: string }[] {
  return sheet.names.map(({ name, row, column }) => ({
    name,
    range: `${quotedSheet(sheet.name)}!${fixedBlock({ row, column, rows: 1, columns: 1 }).split(':')[0]}`,
    scope: sheet.name,
  }));
}

function cellsOf(sheet: Sheet): Map<string, Partial<Cell>> {
  const cells = new Map<string, Partial<Cell>>();
  sheet.rows.forEach((row, r) =>
    row.forEach((cell, c) => {
      if (cell !== null) cells.set(`${r},${c}`, cellForFile(cell, placing(sheet, r, c)));
    }),
  );
  return cells;
}

type Placing = { readonly horizontal?: 'right'; readonly wrapText?: true };

/** Heads of numbers stand where their numbers stand, at the right; sentences across columns are wrapped. */
function placing({ rows, spans }: Sheet, row: number, column: number): Placing {
  if (spans.some((span) => span.row === row && span.column === column)) return { wrapText: true };
  const below = rows[row + 1]?.[column];
  const overNumbers = below !== null && below !== undefined && below.format !== 'text';
  return rows[row]?.[column]?.meaning === 'columnHead' && overNumbers ? { horizontal: 'right' } : {};
}

const LINE = 13.5;
const TALL: Partial<Record<Meaning, number>> = { title: 28, subtitle: 17, heading: 24 };

/** Rows as high as their longest text needs; spreadsheets differ in whether they would see to it themselves. */
function rowHeights(sheet: Sheet): Map<number, { height: number }> {
  const across = new Map(sheet.spans.map(({ row, columns }) => [row, columns]));
  const heights = new Map<number, { height: number }>();
  sheet.rows.forEach((cells, row) => {
    const lines = cells.map((cell, column) => linesOf(sheet, cell, column, across.get(row)));
    const tall = Math.max(0, ...cells.map((cell) => (cell === null ? 0 : (TALL[cell.meaning] ?? 0))));
    const height = Math.max(tall, LINE * Math.max(1, ...lines));
    if (height > LINE) heights.set(row, { height });
  });
  return heights;
}

// Only sentences across columns and heads are wrapped; bold letters are a tenth wider than a column's measure.
function linesOf({ widths }: Sheet, cell: SheetCell | null, column: number, across = 1): number {
  const wrapped =
    cell !== null && typeof cell.value === 'string' && (across > 1 || cell.meaning === 'columnHead');
  if (!wrapped) return 1;
  const width = widths.slice(column, column + across).reduce((sum, each) => sum + each, 0);
  return Math.ceil((String(cell.value).length * 1.1) / Math.max(1, width));
}

const stylesMade = new Map<string, CellStyle>();

function styleOf({ meaning, format }: SheetCell, placed: Placing): CellStyle {
  const key = `${meaning}|${format}|${placed.horizontal}|${placed.wrapText}`;
  const known = stylesMade.get(key);
  if (known !== undefined) return known;
  const look = LOOKS[meaning];
  const style = { ...look, alignment: { ...look.alignment, ...placed }, numFmt: NUMBER_CODES[format] };
  stylesMade.set(key, style);
  return style;
}

function cellForFile(cell: SheetCell, placed: Placing): Partial<Cell> {
  const style = styleOf(cell, placed);
  if (cell.formula === undefined) {
    return typeof cell.value === 'string'
      ? { value: cell.value, type: 'string', style }
      : { value: cell.value, style };
  }
  return { value: cell.value, type: 'formula', formula: cell.formula, formulaResult: cell.value, style };
}

function tableForFile(table: Sheet['tables'][number]): TableDefinition {
  const last = address(table.row + table.rows, table.column + table.heads.length - 1);
  return {
    name: table.name,
    range: `${address(table.row, table.column)}:${last}`,
    columns: table.heads.map((name) => ({ name })),
    style: 'TableStyleLight1',
    showRowStripes: false,
  };
}

/** The first series solid and dark, the others lighter and dashed: told apart without colour. */
const SERIES_LOOKS = [
  { color: '1F2A33', stroke: { width: 2.5 }, marker: { symbol: 'none' } },
  { color: '8A97A3', stroke: { width: 1.25, dash: 'dash' }, marker: { symbol: 'none' } },
  { color: '8A97A3', stroke: { width: 1.25, dash: 'sysDot' }, marker: { symbol: 'none' } },
] as const;

function chartForFile(chart: Chart, sheet: string): SheetChart {
  const { row, column, rows, columns } = chart.at;
  return {
    type: chart.kind,
    title: chart.title,
    legend: chart.series.length > 1 ? 'bottom' : false,
    axes: { x: { title: chart.xTitle }, y: { title: chart.yTitle } },
    series: chart.series.map(({ name, values }, index) => ({
      name,
      values: `${sheet}!${fixedBlock(values)}`,
      categories: `${sheet}!${fixedBlock(chart.categories)}`,
      ...SERIES_LOOKS[index % SERIES_LOOKS.length]!,
    })),
    anchor: { from: { row, col: column }, to: { row: row + rows, col: column + columns } },
    altText: `${chart.title}: ${chart.yTitle} by ${chart.xTitle}`,
  } as SheetChart;
}

function printSetup({ repeatedRows }: Sheet): WriteSheet['pageSetup'] {
  return {
    paperSize: 'a4',
    orientation: 'landscape',
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    margins: { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
    printTitlesRow: repeatedRows && `$${repeatedRows[0] + 1}:$${repeatedRows[1] + 1}`,
  };
}
