import { readFileSync } from 'node:fs';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { SETTINGS_SHEET } from '../../../src/inventory/settingsRows.ts';
import type { FillChoice } from '../../../taskpane/actions/fillColumns.ts';
import { fillColumns } from '../../../taskpane/actions/fillColumns.ts';
import { readHere } from '../../../taskpane/actions/readInventory.ts';
import { giveAndRead } from '../../../taskpane/actions/settings.ts';
import { directComputing } from '../../../taskpane/computing/computing.ts';
import { startHeadless, stopHeadless } from '../../../taskpane/host/workbook/headlessWorkbook.ts';
import type { BuiltIn } from '../../../taskpane/host/workbook/builtInHost.ts';
import { builtInHost } from '../../../taskpane/host/workbook/builtInHost.ts';
import type { Session } from '../../../taskpane/session.ts';
import { newSession } from '../../../taskpane/session.ts';
import { startFile } from '../host/startFile.ts';
import { AS_OF, inventedRows } from '../paneSession.ts';

const started = startHeadless();
let host: BuiltIn | undefined;
afterEach(() => host?.dispose());
afterAll(() => stopHeadless(started));

const HEADS = ['Serial', 'Type', 'Site', 'Installed', 'Removed', 'Cause'];

/** A session over the built-in workbook, with an invented inventory read from it. */
async function opened(given: { table?: string; isProtected?: boolean } = {}): Promise<Session> {
  host = builtInHost(started, { download: () => undefined });
  const rows = [HEADS, ...inventedRows(40).map((row) => row.slice(0, 6))];
  const sheet = { name: 'Fleet', rows, dateColumns: [3, 4], hiddenRows: [], table: given.table };
  const bytes = await startFile([{ ...sheet, isProtected: given.isProtected === true } as never]);
  return sessionOn(bytes, 'fleet.xlsx');
}

async function sessionOn(bytes: Uint8Array, name: string): Promise<Session> {
  host ??= builtInHost(started, { download: () => undefined });
  await host.open(bytes, name);
  const session = newSession({
    ...{ host, computing: directComputing(), madeBy: 'Crankbook 0.0.0', today: AS_OF },
    ...{ timeOfDay: () => 0, saveFile: () => undefined },
  });
  await readHere(session);
  session.home.value = 'here';
  await giveAndRead(session, 'recordsSince', '2020-01-01');
  return session;
}

const CHOICE: FillChoice = {
  keys: ['monthsInService', 'chance12'],
  as: 'live',
  place: 'beside',
  problems: 'why',
};

async function cells(session: Session, column: number): Promise<unknown[]> {
  const block = { row: 0, column, rows: 41, columns: 1 };
  const read = await session.host.readBlock({ sheet: 'Fleet', block });
  if (!read.ok) throw new Error(read.problem.because);
  return read.value.rows.map(([cell]) => cell);
}

/** Answers the next question with one of its answers. */
function answering(session: Session, answer: number): string[] {
  const asked: string[] = [];
  session.question.subscribe((question) => {
    if (question === undefined) return;
    asked.push(question.text);
    queueMicrotask(() => question.answered(answer));
  });
  return asked;
}

describe.each([
  ['one spilled formula beside a block', undefined],
  ['calculated columns of a table', 'Units'],
])('%s', (_, table) => {
  it('answers in every row as values do, and finds its day on the sheet of settings', async () => {
    const session = await opened(table === undefined ? {} : { table });
    expect(session.where.value?.table).toBe(table);
    await fillColumns(session, CHOICE);
    expect(session.notice.value).toMatchObject({ kind: 'done' });
    const live = [await cells(session, 6), await cells(session, 7)];
    expect(live[0]![0]).toBe('Months in service');
    expect(session.workbook.value!.sheets.map(({ name }) => name)).toContain(SETTINGS_SHEET);

    const asked = answering(session, 1);
    await fillColumns(session, { ...CHOICE, as: 'values' });
    expect(asked[0]).toContain('Months in service, Chance of failing in 12 months');
    const values = [await cells(session, 6), await cells(session, 7)];
    const filled = values[0]!.filter((value) => typeof value === 'number');
    expect(filled.length).toBeGreaterThan(30);
    values.forEach((column, index) =>
      column.forEach((value, row) => {
        const given = live[index]![row];
        if (typeof value === 'number') expect(given).toBeCloseTo(value, 9);
        else expect(given === '' ? null : given).toBe(value);
      }),
    );
  });
});

describe('dates and numbers written as text', () => {
  const heads = ['Serial', 'Site', 'Fitted', 'Volts'];
  const rows = [heads, ...[1, 2, 3].map((at) => [`NF10000${at}`, 'Isvarg', `23.8.202${at}`, '12,57'])];

  async function filledAs(
    as: FillChoice['as'],
    answer = 2,
  ): Promise<{ session: Session; text: string; asked: string[] }> {
    const session = await sessionOn(
      await startFile([{ name: 'Fleet', rows, dateColumns: [], hiddenRows: [] } as never]),
      'text.xlsx',
    );
    session.notice.value = undefined;
    const asked = answering(session, answer);
    await fillColumns(session, { ...CHOICE, keys: ['monthsInService', 'charge'], as });
    return { session, text: session.notice.peek()?.text ?? '', asked };
  }

  it('leave live cells empty, and that is said with their number and what would help', async () => {
    const { text } = await filledAs('live');
    expect(text).toContain('In 3 rows cells stay empty; the last column says why. As values,');
  });

  it('are counted before anything is filled, and nothing is written without a yes', async () => {
    const { session, text, asked } = await filledAs('live', 0);
    expect(asked).toEqual([
      'Live formulas would leave rows empty that values answer, for dates or numbers stand there as text: Months in service in 3 of 3 rows, State of charge in 3 of 3 rows. Fill these columns as values instead?',
    ]);
    expect(text).toBe('');
    expect((await cells(session, 4)).every((cell) => cell === null)).toBe(true);
  });

  it('are filled as values once the user says so', async () => {
    expect((await filledAs('live', 1)).text).toBe('Filled: Months in service, State of charge.');
  });

  it('are taken as they were read where values are filled, and nothing is asked', async () => {
    const { session, text, asked } = await filledAs('values');
    expect(asked).toEqual([]);
    expect(text).toBe('Filled: Months in service, State of charge.');
    const [head, ...months] = (await cells(session, 4)).slice(0, 4);
    expect([head, ...months.map((each) => Math.floor(each as number))]).toEqual([
      'Months in service',
      58,
      46,
      34,
    ]);
  });
});

describe('heads of new columns', () => {
  it('have the width they need, until filling is undone', async () => {
    const session = await opened();
    const width = () =>
      started.api.getActiveWorkbook()!.getSheetByName('Fleet')!.getSheet().getColumnWidth(7);
    const before = width();
    await fillColumns(session, CHOICE);
    expect(width()).toBeGreaterThan(200);
    started.api.getActiveWorkbook()!.undo();
    await vi.waitFor(() => expect(width()).toBe(before));
  });
});

describe('columns that are there already', () => {
  it('stay as they are where the user says so', async () => {
    const session = await opened();
    await fillColumns(session, CHOICE);
    const before = await cells(session, 6);
    answering(session, 0);
    await fillColumns(session, { ...CHOICE, as: 'values' });
    expect(await cells(session, 6)).toEqual(before);
    expect(await cells(session, 9)).not.toContain('Months in service');
  });

  it('stay beside new ones under another head', async () => {
    const session = await opened({ table: 'Units' });
    await fillColumns(session, { ...CHOICE, keys: ['monthsInService'] });
    answering(session, 2);
    await fillColumns(session, { ...CHOICE, keys: ['monthsInService'], as: 'values' });
    expect((await cells(session, 7))[0]).toBe('Months in service (2)');
  });
});

describe('a protected sheet', () => {
  it('has its answers on a new one, by serial', async () => {
    const session = await opened({ isProtected: true });
    await fillColumns(session, { ...CHOICE, place: 'newSheet' });
    const block = { row: 2, column: 0, rows: 2, columns: 3 };
    const read = await session.host.readBlock({ sheet: 'Battery answers', block });
    expect(read).toMatchObject({ ok: true });
    if (read.ok) expect(read.value.rows[0]).toEqual(['Sheet row', 'Serial', 'Months in service']);
    expect(read.ok && read.value.rows[1]![1]).toBe('NF100000');
  });
});

describe('the demonstration inventory', () => {
  it('is read, filled and read again with the same batteries', async () => {
    const session = await sessionOn(readFileSync('docs/demo/norrfell-inventory.xlsx'), 'demo.xlsx');
    const before = session.reading.value!;
    await fillColumns(session, { ...CHOICE, keys: ['made', 'charge', 'verdict', 'reason'] });
    expect(session.notice.value?.text).toContain('Filled: Date made, State of charge, Verdict');
    await readHere(session);
    expect(session.reading.value!.columns.made).toBe('Date made');
    expect(session.reading.value!.batteryCount).toBe(before.batteryCount);
  });
});

describe('reading again', () => {
  it('takes in what has come beside the inventory, and fills from the same columns as before', async () => {
    const session = await opened();
    await fillColumns(session, { ...CHOICE, keys: ['monthsInService'] });
    await readHere(session);
    expect(session.reading.value!.parts.columns.map(({ head }) => head)).toContain('Months in service');
    expect(session.where.value!.block.columns).toBe(HEADS.length + 1);
    await fillColumns(session, { ...CHOICE, keys: ['chance12'] });
    expect((await cells(session, 7))[0]).toBe('Chance of failing in 12 months');
  });
});
