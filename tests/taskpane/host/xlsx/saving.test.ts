import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { calculated } from '../../../../taskpane/host/workbook/calculation.ts';
import { readWorkbookFile } from '../../../../taskpane/host/xlsx/workbookFile.ts';
import { startHeadless, stopHeadless } from '../../../../taskpane/host/workbook/headlessWorkbook.ts';
import type { BuiltIn } from '../../../../taskpane/host/workbook/builtInHost.ts';
import { builtInHost } from '../../../../taskpane/host/workbook/builtInHost.ts';
import { liveSheet } from '../../../../taskpane/host/workbook/live.ts';
import { cell, reportSheet, START, valueOf } from '../contractWorkbook.ts';
import { startFile } from '../startFile.ts';

const started = startHeadless();
let host: BuiltIn;
const given: { readonly bytes: Uint8Array; readonly name: string }[] = [];
beforeAll(() => {
  host = builtInHost(started, { download: (bytes, name) => given.push({ bytes, name }) });
});
afterAll(() => {
  host.dispose();
  stopHeadless(started);
});

const rowsOf = async (sheet: string, rows: number, columns: number) =>
  valueOf(await host.readBlock({ sheet, block: { row: 0, column: 0, rows, columns } })).rows;

/** Opens the start, changes it as an afternoon's work would, saves it, and opens what was saved. */
async function throughFile(as: 'formulas' | 'values'): Promise<readonly string[]> {
  valueOf(await host.open(await startFile(START), 'fleet.xlsx'));
  const spilled = [{ head: 'Charge', format: 'share', formula: 'CRANK.STATEOFCHARGE(B2:B3,25)' }] as const;
  const beside = [{ head: 'Double', format: 'thousandths', formula: '[@Volts]*2' }] as const;
  const more = { headRow: 0, overwrite: false } as const;
  valueOf(await host.fill({ ...more, sheet: 'Store', as: 'spill', rows: 2, column: 2, columns: spilled }));
  valueOf(
    await host.fill({
      ...more,
      sheet: 'Fleet',
      as: 'tableColumn',
      table: 'Units',
      rows: 5,
      column: 3,
      columns: beside,
    }),
  );
  valueOf(await host.addSheets([reportSheet('Forecast')]));
  valueOf(
    await host.appendRow(
      'Tests',
      ['Serial', 'Volts'],
      [
        { value: '0514', format: 'text' },
        { value: 12.6, format: 'thousandths' },
      ],
    ),
  );
  valueOf(await host.nameCell({ name: 'CrankAsOf', at: { sheet: 'Forecast', row: 1, column: 1 } }));
  const { bytes, fileName, lost } = valueOf(await host.save(as));
  expect(fileName).toBe('fleet.xlsx');
  valueOf(await host.open(bytes, fileName));
  return lost;
}

describe('saving and opening again', () => {
  it('keeps the filled columns, the forecast, the records and the name, formulas live', async () => {
    expect(await throughFile('formulas')).toEqual([]);
    const names = valueOf(await host.workbook()).sheets.map((sheet) => sheet.name);
    expect(names).toEqual(['Fleet', 'Store', 'Locked', 'Forecast', 'Tests']);
    expect((await rowsOf('Fleet', 3, 4)).map((row) => row[3])).toEqual(['Double', 25.2, 24.8]);
    const [heads, first, second] = await rowsOf('Store', 3, 3);
    expect(heads).toEqual(['Serial', 'Volts', 'Charge']);
    expect(first![2]).toBeGreaterThan(second![2] as number);
    expect(host.describeAt({ sheet: 'Store', row: 1, column: 2 })?.formula).toBe(
      '=CRANK.STATEOFCHARGE(B2:B3,25)',
    );
    expect(host.describeAt({ sheet: 'Store', row: 2, column: 2 })?.answerOf).toBe('C2');
    const store = liveSheet(started, 'Store')!;
    expect([1, 2].map((row) => store.numberCode(row, 2))).toEqual(['0%', '0%']);
    expect((await rowsOf('Forecast', 3, 2))[2]).toEqual(['twice', 400]);
    expect(await rowsOf('Tests', 2, 2)).toEqual([
      ['Serial', 'Volts'],
      ['0514', 12.6],
    ]);
    expect(valueOf(await host.namedCell('CrankAsOf'))).toEqual({ sheet: 'Forecast', row: 1, column: 1 });
    const [table] = valueOf(await host.workbook()).sheets[0]!.tables;
    expect(table!.heads).toEqual(['Serial', 'Volts', 'Fitted', 'Double']);
  });

  it('writes answers in place of our functions for people without the add-in', async () => {
    await throughFile('values');
    expect(host.describeAt({ sheet: 'Store', row: 1, column: 2 })?.formula).toBeUndefined();
    const [, first, second] = await rowsOf('Store', 3, 3);
    expect(first![2]).toBeGreaterThan(second![2] as number);
  });

  it('keeps what the user wrote, undid and deleted', async () => {
    valueOf(await host.open(await startFile(START), 'fleet.xlsx'));
    const book = started.api.getActiveWorkbook()!;
    const store = book.getSheetByName('Store')!;
    store.getRange('A2').setValue('typed');
    store.getRange('B2').setValue(11);
    book.undo();
    book.deleteSheet(book.getSheetByName('Locked')!);
    const { bytes } = valueOf(await host.save('formulas'));
    valueOf(await host.open(bytes, 'again.xlsx'));
    expect(valueOf(await host.workbook()).sheets.map((sheet) => sheet.name)).toEqual(['Fleet', 'Store']);
    expect((await rowsOf('Store', 2, 2))[1]).toEqual(['typed', 12.6]);
  });

  it('saves what formulas answer after an input has changed, also where nobody touched them', async () => {
    await throughFile('formulas');
    const book = started.api.getActiveWorkbook()!;
    const change = (): void => void book.getSheetByName('Forecast')!.getRange('B2').setValue(300);
    await calculated(started, change);
    const { bytes } = valueOf(await host.save('formulas'));
    const file = valueOf(await readWorkbookFile(bytes, 'again.xlsx'));
    expect(file.sheets.find(({ name }) => name === 'Forecast')!.rows[2]![1]).toBe(600);
  });

  it('gives a workbook of its own as a file', async () => {
    const sheet = reportSheet('Plan', { rows: [[cell('alone')]], names: [], tables: [], spans: [] });
    valueOf(await host.newWorkbook('plan', [sheet]));
    const { bytes, name } = given.at(-1)!;
    expect(name).toBe('plan.xlsx');
    valueOf(await host.open(bytes, name));
    expect(await rowsOf('Plan', 1, 1)).toEqual([['alone']]);
  });
});
