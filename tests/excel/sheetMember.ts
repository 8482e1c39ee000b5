import { quotedSheet } from '../../src/report/sheet.ts';
import { chartsMember } from './chartMember.ts';
import type { Member } from './member.ts';
import { bag, notFound } from './member.ts';
import { namesMember } from './nameMember.ts';
import { blockOf, formatMember, rangeMember, refuseProtected, SHEET_SIZE } from './rangeMember.ts';
import { tablesMember } from './tableMember.ts';
import type { ModelSheet, ModelWorkbook } from './workbookModel.ts';
import { emptySheet, Refusal, sheetNamed, usedBlock } from './workbookModel.ts';

/** The worksheets of the workbook. */
export function sheetsMember(workbook: ModelWorkbook): Member {
  const find = (key: unknown): Member | null => {
    const sheet = sheetNamed(workbook, key);
    return sheet === undefined ? null : sheetMember(workbook, sheet);
  };
  return {
    of: 'WorksheetCollection',
    items: () => workbook.sheets.map((sheet) => sheetMember(workbook, sheet)),
    item: (key) => find(key) ?? notFound(`sheet ${String(key)}`),
    call: {
      GetItemOrNullObject: find,
      GetActiveWorksheet: () => sheetMember(workbook, workbook.active),
      Add: (name: string) => {
        refuseStructure(workbook);
        refuseName(workbook, name);
        const sheet = emptySheet(name);
        workbook.sheets.push(sheet);
        return sheetMember(workbook, sheet);
      },
      ...eventCalls,
    },
  };
}

// The program starts to tell; the library keeps the handlers.
const eventCalls = Object.fromEntries(
  [
    '_RegisterSelectionChangedEvent',
    '_UnregisterSelectionChangedEvent',
    '_RegisterActivatedEvent',
    '_UnregisterActivatedEvent',
  ].map((name) => [name, () => undefined]),
);

function refuseStructure(workbook: ModelWorkbook): void {
  if (workbook.isProtected) throw new Refusal('AccessDenied', 'the structure of the workbook is protected');
}

function refuseName(workbook: ModelWorkbook, name: string): void {
  if (typeof name !== 'string' || name === '' || name.length > 31 || /[\\/?*[\]:]|^'|'$/.test(name))
    throw new Refusal('InvalidArgument', `a sheet cannot have the name ${name}`);
  if (sheetNamed(workbook, name) !== undefined)
    throw new Refusal('ItemAlreadyExists', `a sheet with the name ${name} already exists`);
}

/** One worksheet. */
export function sheetMember(workbook: ModelWorkbook, sheet: ModelSheet): Member {
  const range = (block: Parameters<typeof rangeMember>[2]): Member => rangeMember(workbook, sheet, block);
  return {
    of: 'Worksheet',
    id: sheet.id,
    get: { Id: () => sheet.id, Name: () => sheet.name, Visibility: () => sheet.visibility },
    set: {
      Name: (name: string) => rename(workbook, sheet, name),
      Visibility: (value: ModelSheet['visibility']) => void (sheet.visibility = value),
      Gridlines: (value: boolean) => void (sheet.showGridlines = value),
    },
    child: {
      Tables: () => tablesMember(workbook, sheet),
      Charts: () => chartsMember(sheet),
      Names: () => namesMember(workbook, sheet.names, sheet),
      FreezePanes: () => freezePanes(sheet),
      PageLayout: () => pageLayout(sheet),
      HorizontalPageBreaks: () => pageBreaks(sheet),
      Protection: () => ({ of: 'WorksheetProtection', get: { Protected: () => sheet.isProtected } }),
    },
    call: {
      GetRange: (address: string | null) =>
        range(address === null ? { row: 0, column: 0, ...SHEET_SIZE } : blockOf(address)),
      GetRangeByIndexes: (row: number, column: number, rows: number, columns: number) =>
        range({ row, column, rows, columns }),
      GetRanges: (addresses: string) => rangesMember(sheet, addresses),
      GetUsedRangeOrNullObject: () => {
        const block = usedBlock(sheet);
        return block === undefined ? null : range(block);
      },
      Activate: () => {
        if (sheet.visibility !== 'Visible')
          throw new Refusal('InvalidOperation', 'a hidden sheet cannot be shown');
        workbook.active = sheet;
      },
      Delete: () => remove(workbook, sheet),
    },
  };
}

/** Several blocks at once, to be formatted together. */
function rangesMember(sheet: ModelSheet, addresses: string): Member {
  if (addresses.length > 8_192) throw new Refusal('InvalidArgument', 'the list of addresses is too long');
  const blocks = addresses.split(',').map(blockOf);
  const look = (property: string, value: unknown): void => {
    refuseProtected(sheet);
    for (const block of blocks) sheet.looks.push({ block, property, value });
  };
  return { of: 'RangeAreas', child: { Format: () => formatMember(look, blocks) } };
}

function rename(workbook: ModelWorkbook, sheet: ModelSheet, name: string): void {
  refuseStructure(workbook);
  if (sheetNamed(workbook, name) !== sheet) refuseName(workbook, name);
  for (const each of workbook.sheets)
    for (const [cell, formula] of each.formulas)
      each.formulas.set(cell, formula.replaceAll(`${quotedSheet(sheet.name)}!`, `${quotedSheet(name)}!`));
  sheet.name = name;
}

function remove(workbook: ModelWorkbook, sheet: ModelSheet): void {
  refuseStructure(workbook);
  const others = workbook.sheets.filter((each) => each !== sheet && each.visibility === 'Visible');
  if (others.length === 0) throw new Refusal('InvalidOperation', 'the last sheet cannot be deleted');
  workbook.sheets.splice(workbook.sheets.indexOf(sheet), 1);
  if (workbook.active === sheet) workbook.active = others[0]!;
}

const freezePanes = (sheet: ModelSheet): Member => ({
  of: 'WorksheetFreezePanes',
  call: {
    FreezeRows: (rows: number) => void (sheet.frozenRows = rows),
    Unfreeze: () => void (sheet.frozenRows = 0),
  },
});

function pageLayout(sheet: ModelSheet): Member {
  const remember = (path: string, value: unknown): void => {
    refuseProtected(sheet);
    sheet.page.set(path, value);
  };
  const margins = ['LeftMargin', 'RightMargin', 'TopMargin', 'BottomMargin', 'HeaderMargin', 'FooterMargin'];
  const layout = bag('PageLayout', remember, '', ['Orientation', 'PaperSize', 'Zoom', ...margins]);
  const footers = (): Member => bag('HeaderFooter', remember, 'footer/', ['LeftFooter', 'RightFooter']);
  return {
    ...layout,
    child: { HeadersFooters: () => ({ of: 'HeadersFooters', child: { DefaultForAllPages: footers } }) },
    call: {
      SetPrintArea: (area: string) => remember('printArea', area),
      SetPrintTitleRows: (rows: string) => remember('titleRows', rows),
    },
  };
}

const pageBreaks = (sheet: ModelSheet): Member => ({
  of: 'PageBreakCollection',
  call: {
    Add: (at: string) => {
      sheet.pageBreaks.push(at);
      return { of: 'PageBreak' };
    },
    RemovePageBreaks: () => void (sheet.pageBreaks.length = 0),
  },
});
