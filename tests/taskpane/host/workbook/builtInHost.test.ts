import { afterAll, describe, expect, it } from 'vitest';
import { formulaAt } from '../../../../taskpane/host/workbook/describing.ts';
import { openBook } from '../../../../taskpane/host/workbook/engine.ts';
import { withThisRow } from '../../../../taskpane/host/workbook/fillCells.ts';
import { startHeadless, stopHeadless } from '../../../../taskpane/host/workbook/headlessWorkbook.ts';
import type { BuiltIn } from '../../../../taskpane/host/workbook/builtInHost.ts';
import { builtInHost } from '../../../../taskpane/host/workbook/builtInHost.ts';
import { liveSheet } from '../../../../taskpane/host/workbook/live.ts';
import type { HostUnderTest } from '../sheetHostContract.ts';
import { sheetHostContract, START, valueOf } from '../sheetHostContract.ts';
import { startFile } from '../startFile.ts';

const started = startHeadless();
afterAll(() => stopHeadless(started));

const given: { readonly bytes: Uint8Array; readonly name: string }[] = [];
let last: BuiltIn | undefined;

function newHost(): BuiltIn {
  last?.dispose();
  last = builtInHost(started, { download: (bytes, name) => given.push({ bytes, name }) });
  return last;
}

async function make(): Promise<HostUnderTest> {
  const host = newHost();
  valueOf(await host.open(await startFile(START), 'fleet.xlsx'));
  return {
    host,
    formulaAt: async ({ sheet, row, column }) =>
      formulaAt(started, liveSheet(started, sheet)!, row, column)?.slice(1),
    numberCodeAt: async ({ sheet, row, column }) => liveSheet(started, sheet)!.numberCode(row, column),
    undo: async () => void openBook(started).undo(),
  };
}

sheetHostContract('built-in workbook', make);

describe('opening', () => {
  it('keeps what is open when a file can’t be read', async () => {
    const { host } = await make();
    const refused = await (host as BuiltIn).open(new Uint8Array([1, 2, 3]), 'broken.xlsx');
    expect(refused).toMatchObject({ ok: false, problem: { because: 'notAWorkbook' } });
    const { fileName, sheets } = valueOf(await host.workbook());
    expect([fileName, sheets.length]).toEqual(['fleet.xlsx', 3]);
  });

  it('goes on in a copy under a name that says so', async () => {
    const { host } = await make();
    expect(valueOf(await host.workInCopy())).toBe('fleet copy.xlsx');
    expect(valueOf(await host.workbook()).fileName).toBe('fleet copy.xlsx');
  });
});

describe('cells in words', () => {
  it('gives the sentence of an error where it stands and where it is spilled', async () => {
    const host = (await make()).host as BuiltIn;
    const columns = [{ head: 'Bad', format: 'share', formula: 'CRANK.STATEOFCHARGE(A2:A3,25)' }] as const;
    const request = {
      sheet: 'Store',
      as: 'spill',
      headRow: 0,
      rows: 2,
      column: 2,
      columns,
      overwrite: false,
    } as const;
    valueOf(await host.fill(request));
    for (const row of [1, 2]) {
      const at = { sheet: 'Store', row, column: 2 };
      expect(host.sentenceAt(at)).toMatch(/must be a number/);
      expect(host.describeAt(at)).toMatchObject({ address: `C${row + 1}`, shown: '#VALUE!' });
    }
    expect(host.describeAt({ sheet: 'Store', row: 2, column: 2 })?.answerOf).toBe('C2');
    expect(host.describeAt({ sheet: 'Store', row: 1, column: 2 })?.formula).toContain('CRANK.STATEOFCHARGE');
    expect(host.describeAt({ sheet: 'Fleet', row: 1, column: 2 })?.shown).toBe('2023-03-15');
  });
});

describe('structured references', () => {
  it('are written as the grid knows them, outside texts only', () => {
    expect(withThisRow('F([@Volts],[@[Rest volts]],Units[@Temp])', 'Fleet')).toBe(
      'F(Fleet[[#This Row],[Volts]],Fleet[[#This Row],[Rest volts]],Units[[#This Row],[Temp]])',
    );
    expect(withThisRow('F("[@Volts]",Fleet[[#This Row],[Volts]])', 'Fleet')).toBe(
      'F("[@Volts]",Fleet[[#This Row],[Volts]])',
    );
  });
});
