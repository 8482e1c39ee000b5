import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { settingsFrom } from '../../../src/inventory/settings.ts';
import { problemText } from '../../../src/basics/problemText.ts';
import type { Memory } from '../../../taskpane/computing/memory.ts';
import { compareAnswer } from '../../../taskpane/computing/storeAnswers.ts';
import { namedSheet, planFile } from '../../../taskpane/headless.ts';
import { readWorkbookFile } from '../../../taskpane/host/xlsx/workbookFile.ts';
import { sheetRows } from '../../../taskpane/sheetRows.ts';
import { valueOf } from '../../electrochemistry/outcomes.ts';
import { AS_OF } from '../paneSession.ts';

const NAME = 'norrfell-inventory.xlsx';
const demo = (name: string): URL => new URL(`../../../docs/demo/${name}`, import.meta.url);
let bytes: Uint8Array;
let memory: Memory;

beforeAll(async () => {
  bytes = await readFile(demo(NAME));
  const file = valueOf(await readWorkbookFile(bytes, NAME));
  const settings = valueOf(settingsFrom(JSON.parse(await readFile(demo('norrfell-settings.json'), 'utf8'))));
  const { inventory } = valueOf(planFile(file, settings, AS_OF));
  memory = { inventory, settings, asOf: AS_OF, tests: sheetRows(namedSheet(file, 'Tests')!, file) };
}, 60_000);

const text = (csv: string): Uint8Array => new TextEncoder().encode(csv);

describe('an earlier file beside the inventory', () => {
  it('that is the same file differs in nothing, verdicts from its tests included', async () => {
    const same = valueOf(await compareAnswer(memory, { name: NAME, bytes, tab: 'Inventory' }));
    expect([same.fresh, same.gone, same.moved, same.verdictChanged]).toEqual([[], [], [], []]);
    expect(same.unchanged).toBeGreaterThan(1300);
    expect([same.readFrom, same.lacksTests]).toEqual([undefined, false]);
  });

  it('whose sheet has another name is read all the same, and that is told', async () => {
    const other = valueOf(await compareAnswer(memory, { name: NAME, bytes, tab: 'June' }));
    expect([other.readFrom, other.unchanged > 1300]).toEqual(['Inventory', true]);
  });

  it('that has no sheet of tests says so', async () => {
    const csv = text('Batt S/N;Station;Veh;Fitted on\n0079858;Norrfell Main;NM-101;2025-10-29\n');
    const found = valueOf(await compareAnswer(memory, { name: 'may.csv', bytes: csv, tab: 'Inventory' }));
    expect([found.lacksTests, found.gone]).toEqual([true, []]);
  });

  it('of another fleet is refused', async () => {
    const csv = text(
      'Batt S/N;Station;Veh;Fitted on\nQ1;Southmark;SM-1;2025-10-29\nQ2;Southmark;SM-1;2025-10-29\n',
    );
    const refused = await compareAnswer(memory, { name: 'other.csv', bytes: csv, tab: 'Inventory' });
    expect(refused.ok ? '' : problemText(refused.problem)).toMatch(
      /^none of the serials in the earlier file \(2 different ones\) is in this inventory/,
    );
  });
});
