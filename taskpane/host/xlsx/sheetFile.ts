import type { Cell, CellStyle, SheetChart, TableDefinition, WriteSheet } from 'hucre/xlsx';
import type { Chart, DateShown, Sheet, SheetCell } from '../../../src/report/sheet.ts';
import { address, fixedBlock, quotedSheet } from '../../../src/report/sheet.ts';
import { asksOurs, formulaForFile } from './formulaNames.ts';
import { rowHeights } from '../rowHeights.ts';
import { LOOKS, NUMBER_CODES, numberCode } from '../sheetLooks.ts';

/** The sheet in the terms of the .xlsx writer. Text stays text whatever it begins with. */
export function sheetForFile(sheet: Sheet): WriteSheet {
  return {
    name: sheet.name,
    rows: sheet.rows.map((row) => row.map((cell) => (cell === null ? null : writable(cell.value)))),
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
    pageSetup: PRINT_SETUP,
    headerFooter: { oddFooter: '&L&A&RPage &P of &N' },
    view: { showGridLines: false },
  };
}

/** The sheet's named cells as names that are known on that sheet only. */
export function namesForFile(sheet: Sheet): { name: string; range: string; scope: string }[] {
  const [scope, quoted] = [sheet.name, quotedSheet(sheet.name)];
  const names = sheet.names.map(({ name, row, column }) => {
    const [corner] = fixedBlock({ row, column, rows: 1, columns: 1 }).split(':');
    return { name, range: `${quoted}!${corner}`, scope };
  });
  return [
    ...names,
    ...printNames(sheet).map(({ name, place }) => ({ name, range: `${quoted}!${place}`, scope })),
  ];
}

// The writer's own settings leave the sheet's name unquoted, which spreadsheets refuse.
function printNames({ rows, printedColumns, repeatedRows }: Sheet): { name: string; place: string }[] {
  const area =
    printedColumns === undefined
      ? []
      : [fixedBlock({ row: 0, column: 0, rows: rows.length, columns: printedColumns })];
  const titles = repeatedRows === undefined ? [] : [`$${repeatedRows[0] + 1}:$${repeatedRows[1] + 1}`];
  return [
    ...area.map((place) => ({ name: '_xlnm.Print_Area', place })),
    ...titles.map((place) => ({ name: '_xlnm.Print_Titles', place })),
  ];
}

function cellsOf(sheet: Sheet): Map<string, Partial<Cell>> {
  const cells = new Map<string, Partial<Cell>>();
  sheet.rows.forEach((row, r) =>
    row.forEach((cell, c) => {
      if (cell !== null) cells.set(`${r},${c}`, cellForFile(cell, styleAt(sheet, r, c)));
    }),
  );
  return cells;
}

type Placing = { readonly horizontal?: 'left' | 'right'; readonly indent?: 1; readonly wrapText?: boolean };

/** Heads stand where what is below them stands: over numbers at the right. Text keeps away from the number before it. */
function placing({ rows, spans }: Sheet, row: number, column: number): Placing {
  const cell = rows[row]![column]!;
  if (spans.some((span) => span.row === row && span.column === column)) return { wrapText: !isTall(cell) };
  const isHead = cell.meaning === 'columnHead';
  const below = isHead ? rows[row + 1]?.[column] : cell;
  if (below?.format !== undefined && below.format !== 'text') return isHead ? { horizontal: 'right' } : {};
  const inTable = isHead || ['body', 'wrapped', 'note', 'label'].includes(cell.meaning);
  return inTable && column > 0 ? { horizontal: 'left', indent: 1 } : {};
}

const isTall = ({ meaning }: SheetCell): boolean => meaning === 'title' || meaning === 'heading';

/** The look of a filled cell: of its meaning, its format and its place. The same look is the same object. */
export function styleAt(sheet: Sheet, row: number, column: number): CellStyle {
  return styleOf(sheet.rows[row]![column]!, placing(sheet, row, column), sheet.dateShown);
}

const stylesMade = new Map<string, CellStyle>();

function styleOf({ meaning, format }: SheetCell, placed: Placing, dates?: DateShown): CellStyle {
  const key = [meaning, format, placed.horizontal, placed.wrapText, dates].join('|');
  const known = stylesMade.get(key);
  if (known !== undefined) return known;
  const look = LOOKS[meaning];
  const style = { ...look, alignment: { ...look.alignment, ...placed }, numFmt: numberCode(format, dates) };
  stylesMade.set(key, style);
  return style;
}

function cellForFile(cell: SheetCell, style: CellStyle): Partial<Cell> {
  const value = writable(cell.value);
  if (cell.formula !== undefined)
    return { value, type: 'formula', formula: formulaInFile(cell.formula), formulaResult: value, style };
  if (typeof value !== 'string') return { value, style };
  // The library would write a text such as #N/A as the error of that name.
  return { value, type: 'string', style, ...(value.startsWith('#') && { richText: [{ text: value }] }) };
}

// What every spreadsheet has had for long is named alike in the file and on the sheet.
const formulaInFile = (formula: string): string => (asksOurs(formula) ? formulaForFile(formula) : formula);

/** The file format reads _x0041_ in a text as the letter A; its own escape keeps such a text as it is. */
export function writable<T>(value: T): T | string {
  return typeof value === 'string' ? value.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_') : value;
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

const TICKS = { majorTickMark: 'out', minorTickMark: 'none', labelFontSize: 9 } as const;

/** Series told apart without colour: lines by thickness and dashes, columns by dark and light. */
const SERIES_LOOKS = {
  line: [
    { color: '1F2A33', stroke: { width: 2.5 }, marker: { symbol: 'none' } },
    { color: '5B6670', stroke: { width: 1.25, dash: 'dash' }, marker: { symbol: 'none' } },
    { color: '5B6670', stroke: { width: 1.25, dash: 'sysDot' }, marker: { symbol: 'none' } },
  ],
  column: [{ color: '1F2A33' }, { color: 'B8BFC6' }],
} as const;

function chartForFile(chart: Chart, sheet: string): SheetChart {
  const { row, column, rows, columns } = chart.at;
  return {
    type: chart.kind,
    title: chart.title,
    legend: chart.series.length > 1 ? 'bottom' : false,
    axes: {
      x: { title: chart.xTitle, ...TICKS, gridlines: { major: false } },
      y: {
        title: chart.yTitle,
        ...TICKS,
        gridlines: { major: true },
        ...(chart.kind === 'line' && { scale: { min: 0 } }),
        numberFormat: { formatCode: NUMBER_CODES[chart.yFormat] ?? 'General' },
      },
    },
    series: chart.series.map(({ name, values }, index) => ({
      name,
      values: `${sheet}!${fixedBlock(values)}`,
      categories: `${sheet}!${fixedBlock(chart.categories)}`,
      ...SERIES_LOOKS[chart.kind][index % SERIES_LOOKS[chart.kind].length]!,
    })),
    anchor: { from: { row, col: column }, to: { row: row + rows, col: column + columns } },
    altText: `${chart.title}: ${chart.yTitle} by ${chart.xTitle}`,
  } as SheetChart;
}

const PRINT_SETUP: WriteSheet['pageSetup'] = {
  paperSize: 'a4',
  orientation: 'landscape',
  fitToPage: true,
  fitToWidth: 1,
  fitToHeight: 0,
  margins: { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
};
