import type { CellStyle } from 'hucre/xlsx';
import type { CellRange } from '../cellAddress.ts';
import type { HostCell } from '../sheetHost.ts';
import type { CellToWrite } from './cellXml.ts';
import { withWidths } from './columnsXml.ts';
import { asksOurs, formulaForFile } from './formulaNames.ts';
import { withMerges, withoutOurFormulas } from './sheetEdits.ts';
import type { CellsToWrite, SheetText, ValueInStyle } from './sheetPart.ts';
import { blockAddress, sheetText, withCells, withDimension } from './sheetPart.ts';
import { freedRows } from './sharedFormulas.ts';
import type { ChangedCell, SheetState } from './workbookState.ts';
import { thisRowForFile } from './tablePart.ts';
import { prefixOf } from './xml.ts';

/** What the cells of a sheet are written with. */
export type Writing = {
  readonly as: 'formulas' | 'values';
  /** The number that a changed look has in the file. */
  readonly lookNumber: (look: CellStyle) => number;
  /** The style that is as another but for its number format. */
  readonly formatted: (had: number, code: string) => number;
  /** The mark of formulas that spill. */
  readonly dynamic: number;
  readonly value: ValueInStyle;
  /** The tables of the sheet: in them a formula may name its own row. */
  readonly tables: readonly { readonly name: string; readonly block: CellRange }[];
};

/** The text of a sheet with everything in it that was changed, but for its tables. */
export function changedSheetXml(xml: string, state: SheetState, writing: Writing): string {
  const whole = sheetText(xml);
  const prefix = prefixOf(whole.before);
  const bare = writing.as === 'values' ? withoutOurFormulas(whole.rows, prefix) : whole.rows;
  const freed = freedRows(bare, prefix, cellsOf(state, writing));
  const text: SheetText = { ...whole, rows: freed.rows };
  const after = state.merges === undefined ? whole.after : withMerges(whole.after, prefix, state.merges);
  const before = withWidths(withDimension(whole.before, freed.cells), state.widths ?? new Map());
  return before + withCells(text, freed.cells, writing.value) + after;
}

/** Whether a sheet has anything to be written into its own part. */
export const isChanged = ({ cells, recalculated, merges, widths }: SheetState): boolean =>
  cells.length > 0 || (recalculated?.length ?? 0) > 0 || merges !== undefined || (widths?.size ?? 0) > 0;

function cellsOf(state: SheetState, writing: Writing): CellsToWrite {
  const rows = new Map<number, Map<number, CellToWrite>>();
  const put = (row: number, column: number, cell: CellToWrite): void => {
    const own = rows.get(row) ?? new Map<number, CellToWrite>();
    rows.set(row, own.set(column, cell));
  };
  for (const { row, column, value } of state.recalculated ?? [])
    put(row, column, { value, keepsFormula: true });
  for (const cell of state.cells) {
    cell.spill?.forEach((values, down) =>
      values.forEach((value, right) =>
        put(cell.row + down, cell.column + right, { value, ...styleOf(cell, writing) }),
      ),
    );
    put(cell.row, cell.column, cellToWrite(cell, writing));
  }
  return rows;
}

function cellToWrite(cell: ChangedCell, writing: Writing): CellToWrite {
  const { row, column, formula } = cell;
  const value = firstOf(cell.spill) ?? cell.value;
  const head = headAt(writing.tables, cell);
  const plain = { value: head ?? value, ...styleOf(cell, writing) };
  if (head !== undefined) return plain;
  if (formula === undefined || (writing.as === 'values' && asksOurs(formula))) return plain;
  const table = writing.tables.find(({ block }) => isIn(block, row, column))?.name;
  const written = { ...plain, formula: thisRowForFile(formulaForFile(formula), table) };
  if (!spills(cell)) return written;
  return { ...written, fills: blockAddress(spillBlock(cell)), dynamic: writing.dynamic };
}

/** What stands in the cell where it is the head of a table's column: always a text, and never nothing. */
export function headAt(tables: Writing['tables'], { row, column, value }: ChangedCell): string | undefined {
  const table = tables.find(({ block }) => isIn(block, row, column) && row === block.startRow);
  if (table === undefined) return undefined;
  if (typeof value === 'object' && value !== null) return value.error;
  return value === null || value === '' ? `Column${column - table.block.startColumn + 1}` : String(value);
}

const firstOf = (spill: ChangedCell['spill']): HostCell | undefined => spill?.[0]?.[0];

/** Whether a cell's formula fills more than itself. */
export const spills = ({ formula, spill }: ChangedCell): boolean =>
  formula !== undefined && spill !== undefined && (spill.length > 1 || (spill[0]?.length ?? 0) > 1);

const spillBlock = ({ row, column, spill }: ChangedCell): CellRange => ({
  startRow: row,
  startColumn: column,
  endRow: row + spill!.length - 1,
  endColumn: column + spill![0]!.length - 1,
});

const isIn = (block: CellRange, row: number, column: number): boolean =>
  row >= block.startRow && row <= block.endRow && column >= block.startColumn && column <= block.endColumn;

function styleOf({ look, numberCode }: ChangedCell, writing: Writing): Pick<CellToWrite, 'style'> {
  const start = look && writing.lookNumber(look);
  if (numberCode === undefined) return start === undefined ? {} : { style: start };
  return { style: (had) => writing.formatted(start ?? had, numberCode) };
}
