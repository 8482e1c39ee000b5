import type { Day } from '../../src/basics/calendar.ts';
import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import type { Inventory } from '../../src/inventory/inventory.ts';
import { readInventory } from '../../src/inventory/readInventory.ts';
import type { CheckGroup } from '../../src/inventory/rowsToCheck.ts';
import { rowsToCheck } from '../../src/inventory/rowsToCheck.ts';
import type { Settings } from '../../src/inventory/settings.ts';
import type { Memory } from './memory.ts';
import type { SentSheet } from './sentSheet.ts';
import { rowsOf } from './sentSheet.ts';

/** What an inventory is read from. */
export type ReadRequest = {
  readonly sheet: SentSheet;
  readonly tests?: SentSheet;
  readonly charges?: SentSheet;
  readonly asOf: Day;
  readonly settings: Settings;
};

/** What the pane shows of an inventory; batteries and lives stay on the computing side. */
export type Reading = Omit<Inventory, 'batteries' | 'lives' | 'toCheck'> & {
  readonly batteryCount: number;
  readonly lifeCount: number;
  readonly findingCount: number;
  readonly groups: readonly CheckGroup[];
  readonly sites: readonly string[];
};

/** Reads an inventory and keeps it for the questions that follow. */
export function readAnswer(memory: Memory, request: ReadRequest): Outcome<Reading> {
  memory.sheet = rowsOf(request.sheet);
  memory.tests = request.tests && rowsOf(request.tests);
  memory.charges = request.charges && rowsOf(request.charges);
  return againAnswer(memory, request);
}

/** Reads the same rows anew with another as-of or other settings. */
export function againAnswer(
  memory: Memory,
  { asOf, settings }: Pick<ReadRequest, 'asOf' | 'settings'>,
): Outcome<Reading> {
  const { sheet, tests, charges } = memory;
  if (sheet === undefined) throw new Error('no sheet has been sent yet');
  memory.inventory = undefined;
  memory.plan = undefined;
  Object.assign(memory, { asOf, settings });
  const request = { sheet, ...(tests && { tests }), ...(charges && { charges }), asOf, settings };
  return andThen(readInventory(request), (inventory) => {
    memory.inventory = inventory;
    return answer(readingOf(inventory));
  });
}

function readingOf({ batteries, lives, toCheck, ...shown }: Inventory): Reading {
  return {
    ...shown,
    batteryCount: batteries.length,
    lifeCount: lives.length,
    findingCount: toCheck.length,
    groups: rowsToCheck(toCheck),
    sites: [...new Set(batteries.map(({ site }) => site))].sort(),
  };
}
