import { fixedBlock } from '../../src/report/sheet.ts';
import { rangeOf } from '../../taskpane/host/cellAddress.ts';
import type { Member } from './member.ts';
import { notFound } from './member.ts';
import { blockOf, placeOf, rangeMember } from './rangeMember.ts';
import type { ModelName, ModelSheet, ModelWorkbook } from './workbookModel.ts';
import { Refusal, sheetInAddress, sheetNamed } from './workbookModel.ts';

/** Names of the workbook, or of one sheet. */
export function namesMember(workbook: ModelWorkbook, names: ModelName[], scope?: ModelSheet): Member {
  const find = (key: unknown): Member | null => {
    const found = names.find(({ name }) => name.toLowerCase() === String(key).toLowerCase());
    return found === undefined ? null : nameMember(workbook, names, found);
  };
  return {
    of: 'NamedItemCollection',
    items: () => names.map((each) => nameMember(workbook, names, each)),
    item: (key) => find(key) ?? notFound(`name ${String(key)}`),
    call: {
      GetItemOrNullObject: find,
      Add: (name: string, range: Member | string) => {
        refuseName(name);
        if (find(name) !== null) throw new Refusal('ItemAlreadyExists', `the name ${name} already exists`);
        const added = { name, ...(typeof range === 'string' ? placeMeant(workbook, range) : placeOf(range)) };
        if (scope !== undefined && added.sheet !== scope)
          throw new Refusal('NotModelled', 'a name for elsewhere');
        names.push(added);
        return nameMember(workbook, names, added);
      },
    },
  };
}

const formulaOf = ({ sheet, block }: ModelName): string =>
  `=${sheetInAddress(sheet.name)}!${fixedBlock(block)}`;

// A name may mean any formula; the model knows those that mean cells.
function placeMeant(workbook: ModelWorkbook, formula: string): Pick<ModelName, 'sheet' | 'block'> {
  const [, quoted, plain, cells] = /^=(?:'([^!]*)'|([^!']*))!(.*)$/.exec(formula) ?? [];
  const sheet = sheetNamed(workbook, quoted?.replaceAll("''", "'") ?? plain);
  if (sheet === undefined || cells === undefined) throw new Refusal('NotModelled', `a name for ${formula}`);
  return { sheet, block: blockOf(cells.replaceAll('$', '')) };
}

function refuseName(name: string): void {
  if (!/^[A-Za-z_\\][A-Za-z0-9_.]*$/.test(name) || rangeOf(name) !== undefined)
    throw new Refusal('InvalidArgument', `a name cannot be ${name}`);
}

function nameMember(workbook: ModelWorkbook, names: ModelName[], each: ModelName): Member {
  return {
    of: 'NamedItem',
    id: each.name,
    get: { Name: () => each.name, Formula: () => formulaOf(each) },
    call: {
      Delete: () => void names.splice(names.indexOf(each), 1),
      GetRangeOrNullObject: () =>
        workbook.sheets.includes(each.sheet) ? rangeMember(workbook, each.sheet, each.block) : null,
    },
  };
}
