import type { Day } from '../../src/basics/calendar.ts';
import { dayFrom } from '../../src/basics/calendar.ts';
import { problemText } from '../../src/basics/problemText.ts';
import type { FindingKind } from '../../src/inventory/findingKinds.ts';
import type { Cell, Finding, Inventory, SheetRows } from '../../src/inventory/inventory.ts';
import type { InventoryRequest } from '../../src/inventory/readInventory.ts';
import { readInventory } from '../../src/inventory/readInventory.ts';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import { settingsFrom } from '../../src/inventory/settings.ts';

/** The day that a text such as 2026-06-30 names. */
export function day(text: string): Day {
  const read = dayFrom(text, 'day');
  if (!read.ok) throw new Error(problemText(read.problem));
  return read.value;
}

/** As-of of every example. */
export const AS_OF = day('2026-06-30');

/** A row by header; what is left out of it is an empty cell. */
export type Row = Readonly<Record<string, Cell>>;

/** A sheet with one header row from rows by header, the headers in order of first appearance. */
export function sheetOf(rows: readonly Row[], more: Partial<SheetRows> = {}): SheetRows {
  const heads = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return { rows: [heads, ...rows.map((row) => heads.map((head) => row[head] ?? null))], ...more };
}

/** A battery in service about which nothing is doubtful; `change` says what is. */
export function plain(change: Row = {}, number = 1): Row {
  return {
    Serial: `A${1000 + number}`,
    NSN: '6140-99-000-0123',
    Maker: '9ZZ98',
    Type: '6T AGM',
    'Date code': '1023-117',
    Site: 'North',
    Vehicle: `NF-${number}`,
    Installed: day('2024-02-10'),
    ...change,
  };
}

/** Some plain batteries, so that a column shows what its cells are. */
export function fleet(count = 6, from = 100): Row[] {
  return Array.from({ length: count }, (_, index) => plain({}, from + index));
}

/** What is asked, beside the rows. */
export type Asked = Partial<Omit<InventoryRequest, 'settings'>> & { readonly settings?: GivenSettings };

/** The inventory that rows of a sheet give; a problem is thrown. */
export function inventoryFrom(rows: readonly Row[] | SheetRows, asked: Asked = {}): Inventory {
  const settings = settingsFrom(asked.settings ?? {});
  if (!settings.ok) throw new Error(problemText(settings.problem));
  const sheet = 'rows' in rows ? rows : sheetOf(rows);
  const read = readInventory({ sheet, asOf: AS_OF, ...asked, settings: settings.value });
  if (!read.ok) throw new Error(problemText(read.problem));
  return read.value;
}

/** The findings of one kind. */
export function found({ toCheck }: Inventory, kind: FindingKind): readonly Finding[] {
  return toCheck.filter((finding) => finding.kind === kind);
}

/** The sum of the four fates of a row; equals the rows read. */
export function accounted({ rows }: Inventory): number {
  return rows.used + rows.repaired + rows.ageUnknown + rows.leftOut;
}
