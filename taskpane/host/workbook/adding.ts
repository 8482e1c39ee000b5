import type {} from '@univerjs/sheets-table/facade';
import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Sheet, Table } from '../../../src/report/sheet.ts';
import type { Work } from '../sheetHost.ts';
import { calculated } from './calculation.ts';
import type { StartedWorkbook } from './engine.ts';
import { openBook } from './engine.ts';
import { define, placeText } from './names.ts';
import type { DrawnSheet } from './sheetCells.ts';
import { drawnSheet } from './sheetCells.ts';
import type { Steps } from './steps.ts';
import { allOrNone } from './steps.ts';

/** What is told about each sheet that came in. */
export type Added = (sheet: Sheet, id: string) => void;

/**
 * Adds sheets, all or none. They are drawn block by block outside the workbook and come in together between two
 * turns, under their own names: formulas of one may speak of another, and nobody ever sees half a sheet.
 */
export async function addLiveSheets(
  started: StartedWorkbook,
  sheets: readonly Sheet[],
  work: Work | undefined,
  added: Added,
  shown = true,
): Promise<Outcome<void>> {
  const taken = takenName(started, sheets);
  if (taken !== undefined) return problem('badInput', 'sheetNameTaken', 'sheets', taken);
  const drawn = await drawAll(sheets, work);
  return allOrNone(started, async (steps) => {
    // A sheet that came in meanwhile under one of the names.
    const late = takenName(started, sheets);
    if (late !== undefined) return problem('badInput', 'sheetNameTaken', 'sheets', late);
    const calculates = sheets.some((sheet) => sheet.rows.some((row) => row.some((cell) => cell?.formula)));
    const insert = (): void =>
      drawn.forEach((each, index) => insertSheet(started, steps, sheets[index]!, each));
    if (calculates) await calculated(started, insert, work && { signal: work.signal });
    else insert();
    work?.signal.throwIfAborted();
    if (shown) showFirst(started, drawn);
    sheets.forEach((sheet, index) => added(sheet, drawn[index]!.sheet.id!));
    work?.progress(1);
    return answer(undefined);
  });
}

/** The first name that a sheet of the workbook has already, or that two of the new ones share. */
function takenName(started: StartedWorkbook, sheets: readonly Sheet[]): string | undefined {
  const folded = (name: string): string => name.normalize('NFC').toLowerCase();
  const taken = new Set(
    openBook(started)
      .getSheets()
      .map((sheet) => folded(sheet.getSheetName())),
  );
  return sheets.find(({ name }) => taken.size === taken.add(folded(name)).size)?.name;
}

let made = 0;

async function drawAll(sheets: readonly Sheet[], work: Work | undefined): Promise<DrawnSheet[]> {
  const drawn: DrawnSheet[] = [];
  const all = sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0) || 1;
  let done = 0;
  for (const sheet of sheets) {
    const share = (part: number): void => work?.progress((0.8 * (done + part * sheet.rows.length)) / all);
    made += 1;
    const followed = work === undefined ? undefined : { signal: work.signal, progress: share };
    drawn.push(await drawnSheet(sheet, `added${made}`, followed));
    done += sheet.rows.length;
  }
  return drawn;
}

function insertSheet(started: StartedWorkbook, steps: Steps, sheet: Sheet, drawn: DrawnSheet): void {
  const book = openBook(started);
  const [unitId, id] = [book.getId(), drawn.sheet.id!];
  const whole = started.core.mergeWorksheetSnapshotWithDefault(drawn.sheet);
  steps.make(
    {
      id: 'sheet.mutation.insert-sheet',
      params: { unitId, index: book.getSheets().length, sheet: whole, styles: drawn.styles },
    },
    { id: 'sheet.mutation.remove-sheet', params: { unitId, subUnitId: id, subUnitName: sheet.name } },
  );
  for (const { name, row, column } of sheet.names)
    define(started, steps, name, placeText({ sheet: sheet.name, row, column }), id);
  for (const table of sheet.tables) addTable(started, steps, id, table);
}

/** Adds a table over cells that are there; a name that is taken gets a number. */
export function addTable(started: StartedWorkbook, steps: Steps, subUnitId: string, table: Table): void {
  const book = openBook(started);
  const taken = new Set(book.getTableList().map(({ name }) => name.toLowerCase()));
  let { name } = table;
  for (let number = 2; taken.has(name.toLowerCase()); number += 1) name = `${table.name}_${number}`;
  const range = {
    startRow: table.row,
    startColumn: table.column,
    endRow: table.row + table.rows,
    endColumn: table.column + table.heads.length - 1,
  };
  const [unitId, tableId] = [book.getId(), `${subUnitId}-${name}`];
  steps.make(
    {
      id: 'sheet.mutation.add-table',
      params: { unitId, subUnitId, tableId, name, range, header: [...table.heads], options: {} },
    },
    { id: 'sheet.mutation.delete-table', params: { unitId, subUnitId, tableId } },
  );
}

function showFirst(started: StartedWorkbook, drawn: readonly DrawnSheet[]): void {
  const [first] = drawn;
  if (first !== undefined) openBook(started).setActiveSheet(first.sheet.id!);
}
