import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Sheet } from '../../../src/report/sheet.ts';
import { freeSheetName } from '../../../src/report/sheetName.ts';
import { dateShift, firstDayOf1904 } from './dates.ts';
import type { Pending } from './session.ts';
import { allOrNone } from './session.ts';
import type { SheetDraft } from './sheet.ts';
import { draftsOf, writeSheet } from './sheet.ts';
import type { Work } from '../sheetHost.ts';

/** What is in the workbook already, by name. */
type Taken = {
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
  readonly dateShift: number;
  /** Where the user stands, by the sheet's own id. */
  readonly active: string;
};

/** Adds sheets, all or none, under temporary names that become their own at the end. */
export function addExcelSheets(sheets: readonly Sheet[], work?: Work): Promise<Outcome<void>> {
  let drafts: readonly SheetDraft[] = [];
  let ids: readonly string[] = [];
  let active = '';
  return allOrNone<void>({
    work,
    make: async (context, pending) => {
      const taken = await namesTaken(context);
      if (!taken.ok) return taken;
      const double = sheets.find(({ name }, index) =>
        isTaken(name, [...taken.value.sheets, ...namesOf(sheets.slice(0, index))]),
      );
      if (double !== undefined) return problem('badInput', 'sheetNameTaken', 'sheet', double.name);
      work?.signal.throwIfAborted();
      ({ active } = taken.value);
      drafts = draftsOf(sheets, temporaryNames(sheets, taken.value.sheets), taken.value.dateShift);
      const made = await writeDrafts(context, drafts, taken.value, pending);
      ids = made.map(({ id }) => id);
      // Whatever was refused has been refused by now: from here on the sheets are there.
      drafts.forEach(({ sheet }, index) => (made[index]!.name = sheet.name));
      made[0]?.activate();
      await context.sync();
      return answer(undefined);
    },
    takeBack: (context) => removeSheets(context, ids.length > 0 ? ids : namesOfDrafts(drafts), active),
    what: () => namesOfDrafts(drafts).join(', '),
  });
}

const namesOf = (named: readonly { readonly name: string }[]): string[] => named.map(({ name }) => name);

const namesOfDrafts = (drafts: readonly SheetDraft[]): string[] => drafts.map(({ temporary }) => temporary);

const isTaken = (name: string, taken: readonly string[]): boolean =>
  taken.some((each) => each.toLowerCase() === name.toLowerCase());

function temporaryNames(sheets: readonly Sheet[], taken: readonly string[]): string[] {
  return sheets.reduce<string[]>(
    (chosen) => [...chosen, freeSheetName('Crankbook is writing', [...taken, ...chosen, ...namesOf(sheets)])],
    [],
  );
}

async function namesTaken(context: Excel.RequestContext): Promise<Outcome<Taken>> {
  const { worksheets, tables, names, protection } = context.workbook;
  worksheets.load('items/name');
  tables.load('items/name');
  names.load('items/name');
  protection.load('protected');
  const first = firstDayOf1904(context.workbook);
  const active = worksheets.getActiveWorksheet();
  active.load('id');
  await context.sync();
  if (protection.protected) return problem('badInput', 'excelStructureProtected', 'workbook');
  return answer({
    sheets: namesOf(worksheets.items),
    tables: [...namesOf(tables.items), ...namesOf(names.items)],
    dateShift: dateShift(first),
    active: active.id,
  });
}

async function writeDrafts(
  context: Excel.RequestContext,
  drafts: readonly SheetDraft[],
  taken: Taken,
  pending: Pending,
): Promise<Excel.Worksheet[]> {
  const { worksheets } = context.workbook;
  const free = freeTableNames(taken.tables);
  for (const { chunks } of drafts) pending.expect(chunks.reduce((sum, { bytes }) => sum + bytes, 0));
  await pending.spend(400 * drafts.length);
  const made = drafts.map(({ temporary }) => worksheets.add(temporary));
  for (const [index, draft] of drafts.entries()) await writeSheet(made[index]!, draft, free, pending);
  made.forEach((sheet) => sheet.load('id'));
  await pending.send();
  return made;
}

/** Gives each table a name that neither a table nor a name of the workbook has. */
function freeTableNames(taken: readonly string[]): (wanted: string) => string {
  const used = new Set(taken.map((name) => name.toLowerCase()));
  return (wanted) => {
    let name = wanted;
    for (let number = 2; used.has(name.toLowerCase()); number += 1) name = `${wanted}_${number}`;
    used.add(name.toLowerCase());
    return name;
  };
}

// Excel goes to the sheet beside one that is deleted; the user was elsewhere.
async function removeSheets(
  context: Excel.RequestContext,
  keys: readonly string[],
  active: string,
): Promise<void> {
  if (keys.length === 0) return;
  const found = keys.map((key) => context.workbook.worksheets.getItemOrNullObject(key));
  const before = context.workbook.worksheets.getItemOrNullObject(active);
  await context.sync();
  for (const sheet of found) if (!sheet.isNullObject) sheet.delete();
  if (!before.isNullObject) before.activate();
  await context.sync();
}
