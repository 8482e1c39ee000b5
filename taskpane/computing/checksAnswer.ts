import type { Outcome } from '../../src/basics/outcome.ts';
import { answer } from '../../src/basics/outcome.ts';
import { rowsToCheckSheet } from '../../src/report/rowsToCheckSheet.ts';
import type { Sheet } from '../../src/report/sheet.ts';
import type { Memory } from './memory.ts';

/** The name that the sheet of rows to check will have, and that of the inventory's own sheet. */
export type ChecksAsked = { readonly name: string; readonly tab: string };

/** Everything doubtful in the inventory that was read, as a sheet. */
export function checksAnswer({ inventory, settings }: Memory, { name, tab }: ChecksAsked): Outcome<Sheet> {
  if (inventory === undefined || settings === undefined) throw new Error('no inventory has been read yet');
  return answer(rowsToCheckSheet({ toCheck: inventory.toCheck, tab, settings }, name));
}
