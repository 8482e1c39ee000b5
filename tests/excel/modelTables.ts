import type { Block } from '../../src/report/sheet.ts';
import { eachCell } from './cellEntry.ts';
import type { ModelSheet, ModelTable, ModelWorkbook } from './workbookModel.ts';
import { newId, overlap, Refusal, tableNamed } from './workbookModel.ts';

/** The data rows of a table. */
export function bodyOf({ block }: ModelTable): Block {
  return { ...block, row: block.row + 1, rows: block.rows - 1 };
}

/** The heads as the cells of a table's first row have them. */
function headsIn(sheet: ModelSheet, block: Block): string[] {
  return Array.from({ length: block.columns }, (_, index) => {
    const head = sheet.cells[block.row]?.[block.column + index];
    if (head === undefined || head === '') throw new Refusal('NotModelled', 'a table with an empty head');
    return String(head);
  });
}

function refuseDoubleHeads(heads: readonly string[]): void {
  const lower = heads.map((head) => head.toLowerCase());
  if (new Set(lower).size < lower.length)
    throw new Refusal('NotModelled', 'a table with the same head twice, which would be renamed');
}

/** Defines a table over a block that begins with its heads. */
export function addTable(workbook: ModelWorkbook, sheet: ModelSheet, block: Block): ModelTable {
  if (sheet.tables.some((table) => overlap(table.block, block)))
    throw new Refusal('InvalidArgument', 'a table cannot overlap another table');
  if (sheet.merges.some((merge) => overlap(merge, block)))
    throw new Refusal('NotModelled', 'a table over merged cells, which would be taken apart');
  if (block.rows < 2) throw new Refusal('NotModelled', 'a table without data rows');
  const heads = headsIn(sheet, block);
  refuseDoubleHeads(heads);
  const count = workbook.sheets.flatMap(({ tables }) => tables).length;
  const plain = {
    style: 'TableStyleMedium2',
    showBandedRows: true,
    showFilterButton: true,
    showHeaders: true,
  };
  const table = {
    id: newId('table'),
    name: `Table${count + 1}`,
    block,
    heads,
    ...plain,
    calculated: new Map(),
  };
  sheet.tables.push(table);
  return table;
}

/** Gives a table a name that nothing else in the workbook has. */
export function nameTable(workbook: ModelWorkbook, table: ModelTable, name: string): void {
  const other = tableNamed(workbook, name)?.[1];
  const taken = (other !== undefined && other !== table) || workbook.names.some((each) => each.name === name);
  if (taken || !/^[A-Za-z_\\][A-Za-z0-9_.]*$/.test(name))
    throw new Refusal('InvalidArgument', `the table name ${name} is taken or not allowed`);
  table.name = name;
}

/** Makes a table larger or smaller; its heads stay where they are. */
export function resizeTable(sheet: ModelSheet, table: ModelTable, block: Block): void {
  if (block.row !== table.block.row || block.column !== table.block.column)
    throw new Refusal('InvalidArgument', 'the heads must stay in the same row, and the tables overlap');
  const others = sheet.tables.filter((each) => each !== table);
  if (others.some((each) => overlap(each.block, block)))
    throw new Refusal('InvalidArgument', 'a table cannot overlap another table');
  const heads = headsIn(sheet, block);
  refuseDoubleHeads(heads);
  table.block = block;
  table.heads = heads;
  for (const head of table.calculated.keys()) if (!heads.includes(head)) table.calculated.delete(head);
}

/** Adds a column at the end; what stands beside the table moves to the right. */
export function addColumn(sheet: ModelSheet, table: ModelTable, name: string): void {
  const { row, rows, column, columns } = table.block;
  const end = column + columns;
  for (let r = row; r < row + rows; r += 1) {
    const cells = (sheet.cells[r] ??= []);
    for (let c = cells.length; c > end; c -= 1) {
      const moved = cells[c - 1];
      if (moved === undefined) delete cells[c];
      else cells[c] = moved;
    }
    delete cells[end];
  }
  (sheet.cells[row] ??= [])[end] = name;
  table.block = { ...table.block, columns: columns + 1 };
  table.heads.push(name);
}

/** Follows heads that were written in a table's first row. */
export function noteHeads(sheet: ModelSheet, written: Block): void {
  for (const table of sheet.tables)
    if (overlap({ ...table.block, rows: 1 }, written)) table.heads = headsIn(sheet, table.block);
}

/** Follows formulas that fill a whole column of a table: new rows get them too. */
export function noteCalculated(sheet: ModelSheet, written: Block): void {
  for (const table of sheet.tables) {
    const body = bodyOf(table);
    if (!overlap(body, written)) continue;
    table.heads.forEach((head, index) => {
      const found = new Set<string | undefined>();
      const column = { ...body, column: body.column + index, columns: 1 };
      if (!overlap(column, written)) return;
      eachCell(column, (row, at) => found.add(sheet.formulas.get(`${row},${at}`)));
      const [only] = [...found];
      if (found.size === 1 && only !== undefined) table.calculated.set(head, only);
      else table.calculated.delete(head);
    });
  }
}
