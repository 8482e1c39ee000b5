import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readXlsx } from 'hucre/xlsx';
import { beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../taskpane/commandLine/exit.ts';
import { planCommand } from '../../taskpane/commandLine/planCommand.ts';

const DEMO = fileURLToPath(new URL('../../docs/demo/norrfell-inventory.xlsx', import.meta.url));
const AS_OF = ['--as-of', '2026-06-30'];
const folder = mkdtempSync(join(tmpdir(), 'plan-'));
const inFolder = (name: string): string => join(folder, name);

/** A small inventory as text; `rows` are serial, installed, removed, reason. */
function csv(
  name: string,
  rows: readonly string[],
  head = 'Serial,Installed,Removed,Removal reason',
): string {
  writeFileSync(inFolder(name), [head, ...rows].join('\n'));
  return inFolder(name);
}

type Json = {
  rows: Record<'read' | 'used' | 'repaired' | 'ageUnknown' | 'leftOut', number>;
  life: { shape: number; scale: number; failures: number; basis: string; median: number };
  recordsSince: { date: string | null; from: string };
  years: {
    label: string;
    expected: number;
    dueNow: number;
    unitsToOrder: number;
    cost: number | null;
    low: number;
    high: number;
  }[];
  horizons: { months: number; low90: number; high90: number; expected: number }[];
  toCheck: { kind: string; row: number; column: string; given: string; done: string }[];
  columns: Record<string, string>;
};

async function planned(path: string, ...more: string[]): Promise<Json> {
  const json = inFolder(`plan-${Math.abs(hash(path + more.join()))}.json`);
  await planCommand([path, ...AS_OF, '--json', json, ...more]);
  return JSON.parse(readFileSync(json, 'utf8')) as Json;
}

const hash = (text: string): number =>
  [...text].reduce((sum, letter) => (sum * 31 + letter.charCodeAt(0)) | 0, 7);

async function refusal(...args: string[]): Promise<Refusal> {
  const before = readdirSync(folder);
  const error = await planCommand(args).then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(Refusal);
  expect(readdirSync(folder), 'nothing half-written').toEqual(before);
  return error as Refusal;
}

describe('plan on the demonstration inventory', () => {
  const out = inFolder('forecast.xlsx');
  let json: Json;
  let sheets: Awaited<ReturnType<typeof readXlsx>>['sheets'];

  beforeAll(async () => {
    json = await planned(DEMO, '--records-since', '2021-04-01', '--out', out);
    sheets = (await readXlsx(new Uint8Array(readFileSync(out)))).sheets;
  });

  it('carries the source over and adds its own sheets', () => {
    expect(sheets.map(({ name }) => name)).toEqual([
      'Inventory',
      'Tests',
      'Charges',
      'Notes',
      'Forecast',
      'Forecast units',
      'Rows to check',
      'Store list',
    ]);
  });

  it('accounts for every row', () => {
    const { read, used, repaired, ageUnknown, leftOut } = json.rows;
    expect(used + repaired + ageUnknown + leftOut).toBe(read);
    expect(read).toBeGreaterThan(1400);
  });

  it('totals of the years are those of the unit list', () => {
    const units = sheets.find(({ name }) => name === 'Forecast units')!;
    const heads = units.rows[2]!.map(String);
    for (const { label, expected } of json.years) {
      const column = heads.indexOf(`${label} expected`);
      const sum = units.rows.slice(3).reduce((all, row) => all + Number(row[column] ?? 0), 0);
      expect(sum).toBeCloseTo(expected, 6);
    }
  });

  it('shows the chance by test trend beside that by age, empty where there is none', () => {
    const rows = sheets.find(({ name }) => name === 'Forecast units')!.rows;
    const column = rows[2]!.map(String).indexOf('Chance in 12 months by test trend');
    const shown = rows.slice(3).map((row) => row[column] ?? '');
    expect(rows[2]![column - 2]).toBe('Chance in 12 months');
    expect(shown.every((each) => each === '' || (Number(each) >= 0 && Number(each) <= 1))).toBe(true);
    expect(shown).toContain('');
    expect(shown.filter((each) => each !== '').length).toBeGreaterThanOrEqual(10);
    const crossing = rows[2]!.map(String).indexOf('Tests reach the least accepted in');
    expect(rows.slice(3).some((row) => /^\d{4}-\d\d \(/.test(String(row[crossing])))).toBe(true);
  });

  it('finds the life that the generator drew from, within its own error', () => {
    expect(json.life.shape).toBeGreaterThan(1.9);
    expect(json.life.shape).toBeLessThan(2.9);
    expect(json.life.scale).toBeGreaterThan(48);
    expect(json.life.scale).toBeLessThan(68);
  });

  it('leaves money open without a price', () => {
    expect(json.years.every(({ cost }) => cost === null)).toBe(true);
    const text = sheets.find(({ name }) => name === 'Forecast')!.rows.flat();
    expect(text).toContain('enter a price');
  });

  it('gives the same bytes for the same input', async () => {
    const again = inFolder('again.xlsx');
    await planned(DEMO, '--records-since', '2021-04-01', '--out', again);
    expect(Buffer.compare(readFileSync(out), readFileSync(again))).toBe(0);
  });
});

describe('plan on small inventories', () => {
  it('survivors only: the rule of thumb carries the answer and the record start says never', async () => {
    const path = csv('survivors.csv', ['A1,2022-01-15,,', 'A2,2023-05-01,,', 'A3,2024-02-01,,']);
    const json = await planned(path, '--records-since', 'never');
    expect(json.life).toMatchObject({ failures: 0, basis: 'prior and data' });
    expect(json.recordsSince.from).toBe('never');
    const [year] = json.horizons;
    expect(year!.low90).toBeLessThanOrEqual(1);
    expect(year!.high90, 'a wide band: little is known').toBeGreaterThanOrEqual(2);
  });

  it('no failures', async () => {
    const path = csv('none.csv', [
      'A1,2022-01-15,,',
      'A2,2021-05-01,2025-03-01,vehicle sold',
      'A3,2024-02-01,,',
    ]);
    expect((await planned(path, '--records-since', '2021-01-01')).life).toMatchObject({
      failures: 0,
      basis: 'prior and data',
    });
  });

  it('all failed: nothing in service, so nothing to plan', async () => {
    const path = csv('failed.csv', ['A1,2020-01-15,2024-01-15,failed', 'A2,2021-05-01,2025-03-01,failed']);
    const { code, message } = await refusal(path, ...AS_OF, '--records-since', '2020-01-01');
    expect(code).toBe(1);
    expect(message).toMatch(/in service/);
  });

  it('one row', async () => {
    const json = await planned(csv('one.csv', ['A1,2022-01-15,,']), '--records-since', '2021-01-01');
    expect(json.rows).toMatchObject({ read: 1, used: 1, leftOut: 0 });
    expect(json.horizons.map(({ months }) => months)).toEqual([12, 24, 36]);
  });

  it('a price makes money: units times price', async () => {
    const path = csv('price.csv', ['A1,2019-01-15,,', 'A2,2020-05-01,,', 'A3,2021-02-01,2025-02-01,failed']);
    writeFileSync(inFolder('settings.json'), JSON.stringify({ money: { unitPrice: 400, currency: 'EUR' } }));
    const json = await planned(
      path,
      '--records-since',
      '2019-01-01',
      '--settings',
      inFolder('settings.json'),
    );
    for (const { unitsToOrder, cost } of json.years) expect(cost).toBeCloseTo(unitsToOrder * 400, 6);
  });
});

describe('plan refuses', () => {
  it('a file that is not there', async () => {
    expect(await refusal('nowhere.xlsx', ...AS_OF)).toMatchObject({
      code: 1,
      message: expect.stringContaining('no such file'),
    });
  });

  it('a file of another kind, with the way out', async () => {
    writeFileSync(inFolder('old.xls'), 'x');
    expect(await refusal(inFolder('old.xls'), ...AS_OF)).toMatchObject({
      code: 1,
      message: expect.stringContaining('.xlsx'),
    });
  });

  it('an empty sheet', async () => {
    writeFileSync(inFolder('empty.csv'), '');
    expect((await refusal(inFolder('empty.csv'), ...AS_OF)).code).toBe(1);
  });

  it('a sheet without a recognisable column', async () => {
    const path = csv('strange.csv', ['1,2', '3,4'], 'alpha,beta');
    expect((await refusal(path, ...AS_OF)).code).toBe(1);
  });

  it('no as-of, a wrong as-of, an unknown option, two files: wrong usage', async () => {
    expect((await refusal(DEMO)).code).toBe(2);
    expect((await refusal(DEMO, '--as-of', '30/06/2026')).code).toBe(2);
    expect((await refusal(DEMO, ...AS_OF, '--what')).code).toBe(2);
    expect((await refusal(DEMO, DEMO, ...AS_OF)).code).toBe(2);
  });

  it('records that begin after as-of, or at no date', async () => {
    const late = await refusal(DEMO, ...AS_OF, '--records-since', '2030-01-01');
    expect(late).toMatchObject({ code: 1, message: expect.stringContaining('later than as-of') });
    expect((await refusal(DEMO, ...AS_OF, '--records-since', 'spring')).code).toBe(2);
  });

  it('a setting that is not known, naming it', async () => {
    writeFileSync(inFolder('wrong.json'), JSON.stringify({ yeers: 3 }));
    const { message } = await refusal(DEMO, ...AS_OF, '--settings', inFolder('wrong.json'));
    expect(message).toContain('yeers');
  });

  it('a tab that is not there, naming those that are', async () => {
    const { code, message } = await refusal(DEMO, ...AS_OF, '--tab', 'Nope');
    expect(code).toBe(1);
    expect(message).toContain('Inventory');
  });
});

describe('plan tells about itself', () => {
  it('help and version', async () => {
    expect(await planCommand(['--help'])).toContain('--as-of');
    expect(await planCommand(['--version'])).toMatch(/^Crankbook \d+\.\d+\.\d+\n$/);
  });
});
