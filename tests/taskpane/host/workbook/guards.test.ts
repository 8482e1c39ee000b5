import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { startHeadless, stopHeadless } from '../../../../taskpane/host/workbook/headlessWorkbook.ts';
import type { BuiltIn } from '../../../../taskpane/host/workbook/builtInHost.ts';
import { builtInHost } from '../../../../taskpane/host/workbook/builtInHost.ts';
import { openBook } from '../../../../taskpane/host/workbook/engine.ts';
import { reportSheet, START, valueOf } from '../contractWorkbook.ts';
import { startFile } from '../startFile.ts';

const started = startHeadless();
const host: BuiltIn = builtInHost(started, { download: () => undefined });
afterAll(() => {
  host.dispose();
  stopHeadless(started);
});
beforeEach(async () => {
  valueOf(await host.open(await startFile(START), 'fleet.xlsx'));
});

const cellsOf = async (sheet: string) =>
  valueOf(await host.readBlock({ sheet, block: { row: 0, column: 0, rows: 3, columns: 3 } })).rows;

/** Work that is given up as soon as it tells how far it is. */
function givenUpSoon() {
  const control = new AbortController();
  const progress = (): void => control.abort(new DOMException('given up', 'AbortError'));
  return { signal: control.signal, progress };
}

describe('a text that reads like an error', () => {
  const lines = [['#N/A', '#1', 'plain']];
  const sheet = () => {
    const drawn = reportSheet('Codes');
    const cells = lines[0]!.map((value) => ({ value, meaning: 'body', format: 'text' }) as const);
    return { ...drawn, rows: [cells], names: [], tables: [], charts: [], spans: [], frozenRows: 0 };
  };

  it('stays a text on a sheet of ours, for it is what someone wrote', async () => {
    valueOf(await host.addSheets([sheet()]));
    expect((await cellsOf('Codes'))[0]).toEqual(lines[0]);
  });

  it('stays one in the file and when that is opened again', async () => {
    valueOf(await host.addSheets([sheet()]));
    const { bytes } = valueOf(await host.save('formulas'));
    valueOf(await host.open(bytes, 'again.xlsx'));
    expect((await cellsOf('Codes'))[0]).toEqual(lines[0]);
  });

  it('gives way to the error of a formula that takes its place', async () => {
    valueOf(await host.addSheets([sheet()]));
    const column = { head: '#N/A', format: 'number0', formula: 'CRANK.STATEOFCHARGE("none",25)' } as const;
    const place = { sheet: 'Codes', as: 'spill', headRow: 0, rows: 1, column: 0, overwrite: true } as const;
    valueOf(await host.fill({ ...place, columns: [column as never] }));
    const [heads, answers] = await cellsOf('Codes');
    expect(heads![0]).toBe('#N/A');
    expect(answers![0]).toMatchObject({ error: '#VALUE!' });
  });
});

describe('a sheet that its file protects', () => {
  const permission = (name: string) => openBook(started).getSheetByName(name)!.getWorksheetPermission();

  it('lets nobody type, and lets everyone look and copy', () => {
    const locked = START.find(({ isProtected }) => isProtected)!;
    expect(permission(locked.name).canEdit()).toBe(false);
    expect(permission(locked.name).canView()).toBe(true);
    const open = START.find(({ isProtected }) => !isProtected)!;
    expect(permission(open.name).canEdit()).toBe(true);
  });
});

describe('work that is given up', () => {
  it('leaves what is open as it was, when it was opening a file', async () => {
    const control = new AbortController();
    control.abort(new DOMException('given up', 'AbortError'));
    const work = { signal: control.signal, progress: () => undefined };
    await expect(host.open(await startFile(START.slice(0, 1)), 'other.xlsx', work)).rejects.toThrow(
      'given up',
    );
    expect(valueOf(await host.workbook())).toMatchObject({ fileName: 'fleet.xlsx', sheets: { length: 3 } });
  });

  it('saves nothing', async () => {
    await expect(host.save('formulas', givenUpSoon())).rejects.toThrow('given up');
  });
});

describe('sheets that were undone', () => {
  it('come back when they are done again', async () => {
    valueOf(await host.addSheets([reportSheet('Forecast'), reportSheet('Forecast units')]));
    const names = async () => valueOf(await host.workbook()).sheets.map(({ name }) => name);
    const all = await names();
    openBook(started).undo();
    expect(await names()).toEqual(['Fleet', 'Store', 'Locked']);
    openBook(started).redo();
    expect(await names()).toEqual(all);
  });
});
