import type { Block } from '../../src/report/sheet.ts';
import { address } from '../../src/report/sheet.ts';
import { rangeOf } from '../../taskpane/host/cellAddress.ts';
import { eachCell, empty, enter } from './cellEntry.ts';
import type { Member } from './member.ts';
import { movedFormula } from './movedFormula.ts';
import { bag, notFound } from './member.ts';
import { noteHeads, noteCalculated } from './modelTables.ts';
import type { ModelSheet, ModelWorkbook, Value } from './workbookModel.ts';
import {
  ErrorValue,
  numberFormatAt,
  overlap,
  Refusal,
  sheetInAddress,
  usedBlock,
  within,
} from './workbookModel.ts';

/** The widest and highest a sheet can be. */
export const SHEET_SIZE = { rows: 1_048_576, columns: 16_384 } as const;

/** Where a range lies, for calls that take one as an argument. */
const places = new WeakMap<Member, { readonly sheet: ModelSheet; readonly block: Block }>();

/** The sheet and block of a range that was handed over. */
export function placeOf(range: Member): { readonly sheet: ModelSheet; readonly block: Block } {
  return places.get(range) ?? notFound('a range');
}

/** The block that an address names. */
export function blockOf(text: string): Block {
  const range = rangeOf(text.replace(/^.*!/, ''));
  if (range === undefined) throw new Refusal('InvalidArgument', `no address: ${text}`);
  const { startRow: row, startColumn: column, endRow, endColumn } = range;
  return { row, column, rows: endRow - row + 1, columns: endColumn - column + 1 };
}

/** Fails where a sheet is protected. */
export function refuseProtected(sheet: ModelSheet): void {
  if (sheet.isProtected) throw new Refusal('AccessDenied', 'the sheet is protected');
}

/** The range over a block of a sheet. */
export function rangeMember(workbook: ModelWorkbook, sheet: ModelSheet, block: Block): Member {
  refuseOutside(block);
  const write = (given: unknown): void => writeCells(workbook, sheet, block, given);
  const look = (property: string, value: unknown): void => {
    refuseProtected(sheet);
    sheet.looks.push({ block, property, value });
  };
  const member: Member = {
    of: 'Range',
    get: { ...placeGetters(sheet, block), ...cellGetters(sheet, block) },
    set: {
      Values: write,
      Formulas: write,
      NumberFormat: (given: unknown) => setNumberFormat(sheet, block, given),
    },
    child: {
      Worksheet: () => sheetAsParent(sheet),
      Format: () => formatMember(look, [block]),
    },
    call: {
      _ValidateArraySize: (rows: number, columns: number) => {
        if (rows !== block.rows || columns !== block.columns) refuseShape();
      },
      GetRow: (row: number) => rangeMember(workbook, sheet, { ...block, row: block.row + row, rows: 1 }),
      GetBoundingRect: (other: Member) => rangeMember(workbook, sheet, around(block, placeOf(other).block)),
      Clear: (what: string | null) => clear(workbook, sheet, block, what),
      Merge: () => void (refuseProtected(sheet), sheet.merges.push(block)),
      Select: () => {
        workbook.active = sheet;
        workbook.selected = { sheet, block };
        workbook.onSelect();
      },
      GetEntireRow: () => rangeMember(workbook, sheet, { ...block, column: 0, columns: SHEET_SIZE.columns }),
      GetUsedRangeOrNullObject: () => {
        const used = usedBlock(sheet, block);
        return used === undefined ? null : rangeMember(workbook, sheet, used);
      },
      GetSpecialCellsOrNullObject: (type: string) => visibleRows(workbook, sheet, block, type),
    },
  };
  places.set(member, { sheet, block });
  return member;
}

function around(a: Block, b: Block): Block {
  const [row, column] = [Math.min(a.row, b.row), Math.min(a.column, b.column)];
  const rows = Math.max(a.row + a.rows, b.row + b.rows) - row;
  return { row, column, rows, columns: Math.max(a.column + a.columns, b.column + b.columns) - column };
}

const sheetAsParent = (sheet: ModelSheet): Member => ({
  of: 'Worksheet',
  id: sheet.id,
  get: { Name: () => sheet.name, Id: () => sheet.id },
});

function refuseOutside({ row, column, rows, columns }: Block): void {
  const fits = row >= 0 && column >= 0 && rows > 0 && columns > 0;
  if (!fits || row + rows > SHEET_SIZE.rows || column + columns > SHEET_SIZE.columns)
    throw new Refusal('InvalidArgument', 'the range lies outside of the sheet');
}

function placeGetters(sheet: ModelSheet, block: Block): Record<string, () => unknown> {
  const { row, column, rows, columns } = block;
  const last = rows * columns === 1 ? '' : `:${address(row + rows - 1, column + columns - 1)}`;
  return {
    Address: () => `${sheetInAddress(sheet.name)}!${address(row, column)}${last}`,
    RowIndex: () => row,
    ColumnIndex: () => column,
    RowCount: () => rows,
    ColumnCount: () => columns,
    RowHidden: () => {
      let hidden = 0;
      for (const each of sheet.hiddenRows) if (each >= row && each < row + rows) hidden += 1;
      return hidden === 0 ? false : hidden === rows ? true : null;
    },
  };
}

function cellGetters(sheet: ModelSheet, block: Block): Record<string, () => unknown> {
  const table = (answer: (row: number, column: number) => unknown) => () =>
    Array.from({ length: block.rows }, (_, row) =>
      Array.from({ length: block.columns }, (__, column) => answer(block.row + row, block.column + column)),
    );
  const valueAt = (row: number, column: number): unknown => shown(sheet.cells[row]?.[column]);
  return {
    Values: table(valueAt),
    ValueTypes: table((row, column) => typeName(sheet.cells[row]?.[column])),
    Formulas: table((row, column) => sheet.formulas.get(`${row},${column}`) ?? valueAt(row, column)),
    NumberFormat: numberFormats(sheet, block, table),
  };
}

// Most blocks have one format for each column or for all; looking each cell up would take long.
function numberFormats(
  sheet: ModelSheet,
  block: Block,
  table: (answer: (row: number, column: number) => unknown) => () => unknown,
): () => unknown {
  return () => {
    const looks = sheet.looks.filter(
      (look) => look.property === 'numberFormat' && overlap(look.block, block),
    );
    const small = { ...sheet, looks };
    return table((row, column) => numberFormatAt(small, row, column))();
  };
}

const shown = (value: Value | undefined): unknown =>
  value instanceof ErrorValue ? value.code : (value ?? '');

function typeName(value: Value | undefined): string {
  if (value === undefined) return 'Empty';
  if (value instanceof ErrorValue) return 'Error';
  return { number: 'Double', string: 'String', boolean: 'Boolean' }[typeof value as 'number'] ?? 'Unknown';
}

function refuseShape(): never {
  throw new Refusal('InvalidArgument', 'the array does not have the size of the range');
}

function asTable(given: unknown, block: Block): (row: number, column: number) => unknown {
  // One formula for many cells is taken as if it were filled down and to the right.
  if (!Array.isArray(given))
    return (row, column) =>
      typeof given === 'string' && given.startsWith('=')
        ? movedFormula(given, row - block.row, column - block.column)
        : given;
  const rows = given as unknown[][];
  if (rows.length !== block.rows || rows.some((row) => row.length !== block.columns)) refuseShape();
  return (row, column) => rows[row - block.row]![column - block.column];
}

function writeCells(workbook: ModelWorkbook, sheet: ModelSheet, block: Block, given: unknown): void {
  refuseProtected(sheet);
  const at = asTable(given, block);
  eachCell(block, (row, column) => enter(workbook, sheet, row, column, at(row, column)));
  noteHeads(sheet, block);
  noteCalculated(sheet, block);
}

function setNumberFormat(sheet: ModelSheet, block: Block, given: unknown): void {
  refuseProtected(sheet);
  const at = asTable(given, block);
  const first = at(block.row, block.column);
  let same = true;
  eachCell(block, (row, column) => (same &&= at(row, column) === first));
  if (same) return void sheet.looks.push({ block, property: 'numberFormat', value: first });
  eachCell(block, (row, column) =>
    sheet.looks.push({
      block: { row, column, rows: 1, columns: 1 },
      property: 'numberFormat',
      value: at(row, column),
    }),
  );
}

function clear(workbook: ModelWorkbook, sheet: ModelSheet, block: Block, what: string | null): void {
  refuseProtected(sheet);
  if (what !== 'Formats') {
    workbook.changed = true;
    const lastRow = Math.min(block.row + block.rows, sheet.cells.length);
    if (lastRow > block.row)
      eachCell({ ...block, rows: lastRow - block.row }, (row, column) => empty(sheet, row, column));
  }
  if (what === 'Contents') return;
  const kept = sheet.looks.filter((look) => !within(look.block, block));
  sheet.looks.splice(0, sheet.looks.length, ...kept);
  sheet.merges.splice(0, sheet.merges.length, ...sheet.merges.filter((merge) => !within(merge, block)));
}

const FONT = ['Bold', 'Italic', 'Size', 'Color', 'Name'] as const;
const EDGES = ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight', 'InsideHorizontal', 'InsideVertical'];

// A row alone has no edge between rows.
const hasEdge = ({ rows, columns }: Block, edge: string): boolean =>
  (edge !== 'InsideHorizontal' || rows > 1) && (edge !== 'InsideVertical' || columns > 1);

/** The format of cells; what is set on it goes to `look`. */
export function formatMember(
  look: (property: string, value: unknown) => void,
  blocks: readonly Block[],
): Member {
  const own = [
    'WrapText',
    'HorizontalAlignment',
    'VerticalAlignment',
    'IndentLevel',
    'ColumnWidth',
    'RowHeight',
  ];
  const format = bag('RangeFormat', look, '', own, { Font: FONT, Fill: ['Color'] });
  const borders: Member = {
    of: 'RangeBorderCollection',
    item: (edge) =>
      EDGES.includes(String(edge)) && blocks.every((block) => hasEdge(block, String(edge)))
        ? bag('RangeBorder', look, `borders/${String(edge)}/`, ['Style', 'Color', 'Weight'])
        : notFound(`border ${String(edge)}`),
  };
  const call = { AutofitRows: () => look('rowHeight', 'fitted') };
  return { ...format, child: { ...format.child, Borders: () => borders }, call };
}

function visibleRows(workbook: ModelWorkbook, sheet: ModelSheet, block: Block, type: string): Member | null {
  if (type !== 'Visible') throw new Refusal('NotModelled', `special cells ${type} are not modelled`);
  const runs: Block[] = [];
  for (let row = block.row; row < block.row + block.rows; row += 1) {
    const last = runs.at(-1);
    if (sheet.hiddenRows.has(row)) continue;
    if (last !== undefined && last.row + last.rows === row)
      runs[runs.length - 1] = { ...last, rows: last.rows + 1 };
    else runs.push({ ...block, row, rows: 1 });
  }
  if (runs.length === 0) return null;
  const areas = runs.map((run) => rangeMember(workbook, sheet, run));
  return { of: 'RangeAreas', child: { Areas: () => ({ of: 'RangeCollection', items: () => areas }) } };
}
