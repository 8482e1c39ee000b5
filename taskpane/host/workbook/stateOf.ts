import type { ICellData } from '@univerjs/core';
import type { CellStyle } from 'hucre/xlsx';
import type { CellRange } from '../cellAddress.ts';
import type { HostCell, HostTable } from '../sheetHost.ts';
import type { Changes, SheetChanges } from './changes.ts';
import { formulaAt } from './describing.ts';
import type { StartedWorkbook } from './engine.ts';
import { holdsSomething, tablesOn } from './info.ts';
import type { LiveSheet } from './live.ts';
import { liveSheets } from './live.ts';
import { lookForFile } from './lookForFile.ts';
import { namedLiveCell } from './names.ts';
import type { OriginalSheet } from './fileWork.ts';
import type { Answer, ChangedCell, ChangedTable, SheetState, WorkbookState } from '../xlsx/workbookState.ts';
import type { Followed } from './turns.ts';
import { inBlocks, partOf } from './turns.ts';

/** What the workbook has become, from what has happened to it and from what stands in it now. */
export async function stateOf(
  started: StartedWorkbook,
  changes: Changes,
  work?: Followed,
): Promise<WorkbookState> {
  const sheets: SheetState[] = [];
  const all = liveSheets(started);
  for (const [index, live] of all.entries()) {
    const part = partOf(work, index / all.length, 1 / all.length);
    sheets.push(await sheetState(started, live, changes, part));
  }
  const names = [...changes.names].flatMap((name) => {
    const at = namedLiveCell(started, name);
    return at === undefined ? [] : [{ name, at }];
  });
  return { sheets, names };
}

async function sheetState(
  started: StartedWorkbook,
  live: LiveSheet,
  { sheets, originals }: Changes,
  work: Followed,
): Promise<SheetState> {
  const changed = sheets.get(live.id);
  const original = originals?.find(({ name }) => name === changed?.original);
  const { facade } = live;
  return {
    name: live.name,
    ...(original !== undefined && { original: original.name }),
    ...(changed?.drawn !== undefined && { drawn: changed.drawn }),
    ...(changed?.hidden === true && { hidden: facade.isSheetHidden() }),
    ...(await changedCells(started, live, changed, original, work)),
    tables: changedTables(started, live, changed, original),
    widths: new Map([...(changed?.widths ?? [])].map((column) => [column, characters(live, column)])),
    ...(changed?.merges === true && { merges: facade.getMergedRanges().map((each) => each.getRange()) }),
    ...(changed?.shifted === true && original !== undefined && { shifted: true }),
  };
}

const characters = ({ facade }: LiveSheet, column: number): number =>
  Math.max(0, (facade.getColumnWidth(column) - 5) / 7);

async function changedCells(
  started: StartedWorkbook,
  live: LiveSheet,
  changed: SheetChanges | undefined,
  original: OriginalSheet | undefined,
  work: Followed,
): Promise<Pick<SheetState, 'cells' | 'recalculated'>> {
  const isKnown = original !== undefined || changed?.drawn !== undefined;
  const listed = isKnown && changed?.shifted !== true;
  const covered = spilledOver(live);
  const isStyled = (row: number, column: number): boolean =>
    !isKnown || changed?.looks.get(row)?.has(column) === true;
  const [cells, recalculated]: [ChangedCell[], Answer[]] = [[], []];
  const spots = listed ? changed!.cells : await everyCell(live, original, work);
  await eachSpot(spots, work, (row, column) => {
    if (!covered(row, column)) cells.push(changedCell(started, live, row, column, isStyled(row, column)));
  });
  await eachSpot(listed ? changed!.calculated : new Map(), work, (row, column) => {
    if (changed!.cells.get(row)?.has(column) === true || covered(row, column)) return;
    // An answer that spills may reach less or more far than it did.
    const isWhole = original === undefined || live.ranges[row]?.[column] !== undefined;
    if (isWhole) cells.push(changedCell(started, live, row, column, false));
    else recalculated.push({ row, column, value: live.value(row, column) });
  });
  return { cells, recalculated };
}

/** Visits cells row by row, in order, with turns of the event loop between blocks of rows. */
async function eachSpot(
  spots: ReadonlyMap<number, ReadonlySet<number>>,
  work: Followed,
  visit: (row: number, column: number) => void,
): Promise<void> {
  const rows = [...spots.keys()].sort((a, b) => a - b);
  await inBlocks(rows.length, work, (from, to) => {
    for (const row of rows.slice(from, to))
      for (const column of [...spots.get(row)!].sort((a, b) => a - b)) visit(row, column);
  });
}

/** Every filled cell of now, and every one that was filled in the original. */
async function everyCell(
  live: LiveSheet,
  original: OriginalSheet | undefined,
  work: Followed,
): Promise<Map<number, Set<number>>> {
  const spots = new Map<number, Set<number>>();
  const mark = (row: number, column: number): void => {
    const columns = spots.get(row);
    if (columns === undefined) spots.set(row, new Set([column]));
    else columns.add(column);
  };
  const now = Object.entries(
    live.sheet.getCellMatrix().getMatrix() as Record<number, Record<number, ICellData>>,
  );
  await inBlocks(now.length, work, (from, to) => {
    for (const [row, cells] of now.slice(from, to))
      for (const [column, cell] of Object.entries(cells ?? {}))
        if (holdsSomething(cell)) mark(Number(row), Number(column));
  });
  const filled = original?.filled ?? [];
  await inBlocks(filled.length / 3, work, (from, to) => {
    for (let at = from * 3; at < to * 3; at += 3)
      for (let column = filled[at + 1]!; column <= filled[at + 2]!; column += 1) mark(filled[at]!, column);
  });
  return spots;
}

/** Whether a cell shows an answer of another cell's formula. */
function spilledOver({ ranges }: LiveSheet): (row: number, column: number) => boolean {
  const all: { range: CellRange; row: number; column: number }[] = [];
  for (const [row, columns] of Object.entries(ranges))
    for (const [column, range] of Object.entries(columns ?? {}))
      if (range !== undefined && isWide(range)) all.push({ range, row: Number(row), column: Number(column) });
  return (row, column) =>
    all.some(
      ({ range, row: top, column: left }) =>
        (row !== top || column !== left) &&
        range.startRow <= row &&
        row <= range.endRow &&
        range.startColumn <= column &&
        column <= range.endColumn,
    );
}

const isWide = ({ startRow, endRow, startColumn, endColumn }: CellRange): boolean =>
  endRow > startRow || endColumn > startColumn;

function changedCell(
  started: StartedWorkbook,
  live: LiveSheet,
  row: number,
  column: number,
  isStyled: boolean,
): ChangedCell {
  const formula = formulaAt(started, live, row, column);
  const range = live.ranges[row]?.[column];
  const spills = formula !== undefined && range !== undefined && isWide(range);
  const look = isStyled ? lookAt(live, row, column) : undefined;
  return {
    row,
    column,
    value: live.value(row, column),
    ...(formula !== undefined && { formula: formula.replace(/^=/, '') }),
    ...(spills && live.sheet.getCellRaw(row, column)?.v !== '#SPILL!' && { spill: answers(live, range) }),
    ...(look !== undefined && { look }),
  };
}

function answers(live: LiveSheet, { startRow, startColumn, endRow, endColumn }: CellRange): HostCell[][] {
  return Array.from({ length: endRow - startRow + 1 }, (_, down) =>
    Array.from({ length: endColumn - startColumn + 1 }, (_each, right) =>
      live.value(startRow + down, startColumn + right),
    ),
  );
}

function lookAt(live: LiveSheet, row: number, column: number): CellStyle | undefined {
  const styles = live.facade.getWorkbook().getStyles();
  const style = styles.getStyleByCell(live.sheet.getCellRaw(row, column));
  return style === null || style === undefined ? undefined : lookForFile(style);
}

/** Tables that are new, or have other corners than in the file. */
function changedTables(
  started: StartedWorkbook,
  live: LiveSheet,
  changed: SheetChanges | undefined,
  original: OriginalSheet | undefined,
): ChangedTable[] {
  const drawn = new Set(changed?.drawn?.tables.map(({ name }) => name));
  return tablesOn(started, live)
    .filter(({ name }) => !drawn.has(name))
    .map((table) => tableState(started, live, table))
    .filter((table) => {
      const before = original?.tables.find(({ name }) => name === table.name);
      const end = before === undefined ? -1 : before.range.endRow - (before.totalRow ? 1 : 0);
      return end !== table.block.endRow || before?.range.endColumn !== table.block.endColumn;
    });
}

function tableState(
  started: StartedWorkbook,
  live: LiveSheet,
  { name, block, heads }: HostTable,
): ChangedTable {
  const formulas = new Map<string, string>();
  heads.forEach((head, index) => {
    const formula = formulaAt(started, live, block.row + 1, block.column + index);
    if (formula?.includes('[#This Row]') === true) formulas.set(head, formula.replace(/^=/, ''));
  });
  return {
    name,
    block: {
      startRow: block.row,
      startColumn: block.column,
      endRow: block.row + block.rows - 1,
      endColumn: block.column + block.columns - 1,
    },
    heads,
    ...(formulas.size > 0 && { formulas }),
  };
}
