import { eachCell, enter } from './cellEntry.ts';
import type { Member } from './member.ts';
import { notFound } from './member.ts';
import { addColumn, addTable, bodyOf, nameTable, resizeTable } from './modelTables.ts';
import { blockOf, placeOf, rangeMember, refuseProtected } from './rangeMember.ts';
import type { ModelSheet, ModelTable, ModelWorkbook } from './workbookModel.ts';
import { Refusal, tableNamed } from './workbookModel.ts';

/** Tables of one sheet, or of the whole workbook where no sheet is given. */
export function tablesMember(workbook: ModelWorkbook, sheet?: ModelSheet): Member {
  const all = (): Member[] =>
    (sheet === undefined ? workbook.sheets : [sheet]).flatMap((each) =>
      each.tables.map((table) => tableMember(workbook, each, table)),
    );
  const find = (key: unknown): Member | null => {
    const [at, table] = tableNamed(workbook, key) ?? [];
    return table === undefined || (sheet !== undefined && at !== sheet)
      ? null
      : tableMember(workbook, at!, table);
  };
  return {
    of: 'TableCollection',
    items: all,
    item: (key) => find(key) ?? notFound(`table ${String(key)}`),
    call: {
      GetItemOrNullObject: find,
      Add: (range: Member | string, hasHeaders: boolean) => {
        const place = typeof range === 'string' ? { sheet: sheet!, block: blockOf(range) } : placeOf(range);
        refuseProtected(place.sheet);
        if (!hasHeaders) throw new Refusal('NotModelled', 'a table without heads');
        return tableMember(workbook, place.sheet, addTable(workbook, place.sheet, place.block));
      },
    },
  };
}

function tableMember(workbook: ModelWorkbook, sheet: ModelSheet, table: ModelTable): Member {
  const set =
    <K extends 'style' | 'showBandedRows' | 'showFilterButton'>(key: K) =>
    (value: ModelTable[K]) => {
      refuseProtected(sheet);
      table[key] = value;
    };
  return {
    of: 'Table',
    id: table.id,
    get: {
      Id: () => table.id,
      Name: () => table.name,
      Style: () => table.style,
      ShowHeaders: () => table.showHeaders,
    },
    set: {
      Name: (name: string) => nameTable(workbook, table, name),
      Style: set('style'),
      ShowBandedRows: set('showBandedRows'),
      ShowFilterButton: set('showFilterButton'),
    },
    child: {
      Columns: () => columnsMember(workbook, sheet, table),
      Worksheet: () => ({ of: 'Worksheet', id: sheet.id, get: { Name: () => sheet.name } }),
    },
    call: {
      GetRange: () => rangeMember(workbook, sheet, table.block),
      GetHeaderRowRange: () => rangeMember(workbook, sheet, { ...table.block, rows: 1 }),
      GetDataBodyRange: () => rangeMember(workbook, sheet, bodyOf(table)),
      Resize: (range: Member) => {
        refuseProtected(sheet);
        resizeTable(sheet, table, placeOf(range).block);
        fillCalculated(workbook, sheet, table);
      },
      ConvertToRange: () => {
        removeTable(sheet, table);
        return rangeMember(workbook, sheet, table.block);
      },
      Delete: () => {
        eachCell(table.block, (row, column) => enter(workbook, sheet, row, column, ''));
        removeTable(sheet, table);
      },
    },
  };
}

function removeTable(sheet: ModelSheet, table: ModelTable): void {
  refuseProtected(sheet);
  sheet.tables.splice(sheet.tables.indexOf(table), 1);
}

// A row that joins a table gets the formulas that fill its columns.
function fillCalculated(workbook: ModelWorkbook, sheet: ModelSheet, table: ModelTable): void {
  const body = bodyOf(table);
  table.heads.forEach((head, index) => {
    const formula = table.calculated.get(head);
    if (formula === undefined) return;
    eachCell({ ...body, column: body.column + index, columns: 1 }, (row, column) => {
      if (sheet.cells[row]?.[column] === undefined) enter(workbook, sheet, row, column, formula);
    });
  });
}

function columnsMember(workbook: ModelWorkbook, sheet: ModelSheet, table: ModelTable): Member {
  const column = (index: number): Member => columnMember(workbook, sheet, table, index);
  const find = (key: unknown): Member | null => {
    const index = table.heads.findIndex((head) => head.toLowerCase() === String(key).toLowerCase());
    return index < 0 ? null : column(index);
  };
  return {
    of: 'TableColumnCollection',
    items: () => table.heads.map((_, index) => column(index)),
    item: (key) => find(key) ?? notFound(`column ${String(key)}`),
    call: {
      GetItemOrNullObject: find,
      Add: (index: number | null, values: unknown, name: string) => {
        refuseProtected(sheet);
        if (index !== null || values !== null) throw new Refusal('NotModelled', 'a column in between');
        addColumn(sheet, table, name);
        return column(table.heads.length - 1);
      },
    },
  };
}

function columnMember(workbook: ModelWorkbook, sheet: ModelSheet, table: ModelTable, index: number): Member {
  const block = { ...table.block, column: table.block.column + index, columns: 1 };
  const name = table.heads[index]!;
  return {
    of: 'TableColumn',
    id: name,
    get: { Name: () => name, Index: () => index },
    call: {
      GetRange: () => rangeMember(workbook, sheet, block),
      GetDataBodyRange: () =>
        rangeMember(workbook, sheet, { ...block, row: block.row + 1, rows: block.rows - 1 }),
      Delete: () => {
        refuseProtected(sheet);
        if (index !== table.heads.length - 1)
          throw new Refusal('NotModelled', 'removing a column in between');
        eachCell(block, (row, at) => enter(workbook, sheet, row, at, ''));
        table.heads.pop();
        table.calculated.delete(name);
        table.block = { ...table.block, columns: table.block.columns - 1 };
      },
    },
  };
}
