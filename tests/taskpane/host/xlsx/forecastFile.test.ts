import { inflateRawSync } from 'node:zlib';
import { readXlsx } from 'hucre/xlsx';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '../../../../src/inventory/inventory.ts';
import { forecastSheets } from '../../../../src/report/forecastSheets.ts';
import { shownText } from '../../../../src/report/shownText.ts';
import { forecastFile } from '../../../../taskpane/host/xlsx/forecastFile.ts';
import { AS_OF, inventedFleet } from '../../../planning/inventedFleet.ts';
import { reportFacts } from '../../../report/reportFacts.ts';

const HOSTILE = [
  '=HYPERLINK("http://example.invalid","x")',
  "+cmd|' /C calc'!A0",
  '@SUM(1+1)',
  '-2+3',
  '🛻 مركبة ‏',
  'bell\u0007 and null\u0000',
  'x'.repeat(40_000),
  '<b>&"\'',
  '_x0041_ and _x000D_',
];

/** The parts of a .xlsx, read by nothing but the rules of its container (ZIP, APPNOTE 4.3). */
function partsOf(bytes: Uint8Array): Map<string, string> {
  const view = Buffer.from(bytes);
  const parts = new Map<string, string>();
  let at = view.readUInt32LE(view.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1')) + 16);
  while (view.readUInt32LE(at) === 0x02014b50) {
    const [method, size, name, extra, comment] = [10, 20, 28, 30, 32].map((o, i) =>
      i === 1 ? view.readUInt32LE(at + o) : view.readUInt16LE(at + o),
    ) as [number, number, number, number, number];
    const local = view.readUInt32LE(at + 42);
    const start = local + 30 + view.readUInt16LE(local + 26) + view.readUInt16LE(local + 28);
    const data = view.subarray(start, start + size);
    parts.set(
      view.toString('utf8', at + 46, at + 46 + name),
      (method === 8 ? inflateRawSync(data) : data).toString('utf8'),
    );
    at += 46 + name + extra + comment;
  }
  return parts;
}

describe('a forecast file made from hostile texts', () => {
  const fleet = inventedFleet();
  const batteries = fleet.batteries.map((each, i) => ({
    ...each,
    site: HOSTILE[i % HOSTILE.length]!,
    serial: `${HOSTILE[i % HOSTILE.length]!}${i}`,
  }));
  const toCheck = HOSTILE.map((given, i): Finding => ({
    kind: 'unreadable code',
    row: i + 2,
    column: given.slice(0, 50),
    given,
    done: 'not read',
  }));
  let bytes: Uint8Array;
  let parts: Map<string, string>;

  beforeAll(async () => {
    const facts = reportFacts({}, { ...fleet, batteries }, toCheck);
    const source = { sheetName: 'Inventory', rows: HOSTILE.map((text) => [text]) };
    bytes = await forecastFile(source, forecastSheets(facts, ['Inventory']), AS_OF);
    parts = partsOf(bytes);
  });

  it('each is plain text: no formula, no link of its own', () => {
    const own = ['HYPERLINK', 'cmd|', '@SUM'];
    const formulas = [...parts]
      .filter(([name]) => name.startsWith('xl/worksheets/'))
      .flatMap(([, xml]) => [...xml.matchAll(/<f[^>]*>([^<]*)<\/f>/g)].map((found) => found[1]!));
    expect(formulas.length).toBeGreaterThan(30);
    expect(formulas.filter((formula) => own.some((text) => formula.includes(text)))).toEqual([]);
    expect([...parts.keys()].some((name) => name.includes('hyperlink'))).toBe(false);
    expect([...parts.values()].some((xml) => xml.includes('<hyperlink '))).toBe(false);
  });

  it('holds no character that its XML forbids', () => {
    for (const xml of parts.values())
      expect(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/.test(xml)).toBe(false);
  });

  it('comes back as it was, long and forbidden text visibly marked', async () => {
    const { sheets } = await readXlsx(bytes);
    const { rows } = sheets.find(({ name }) => name === 'Rows to check')!;
    const given = rows
      .slice(rows.findIndex((row) => row[4] === 'What stands there') + 1)
      .map((row) => String(row[4]));
    expect(given.slice(0, 5)).toEqual(HOSTILE.slice(0, 5));
    expect(given[5]).toBe('bell␇ and null␀');
    expect(given[6]).toHaveLength(32_767);
    expect(given[6]).toContain('cut here');
    expect(given.slice(7)).toEqual(HOSTILE.slice(7));
  });

  it('has native charts, tables and names that only its own sheet knows', () => {
    expect([...parts.keys()].filter((name) => /xl\/charts\/chart\d+\.xml/.test(name))).toHaveLength(2);
    expect([...parts.keys()].filter((name) => /xl\/tables\/table\d+\.xml/.test(name))).toHaveLength(2);
    expect(parts.get('xl/workbook.xml')).toMatch(/<definedName name="unit_price" localSheetId="1"/);
  });

  it('prints the heads of its lists on every page and the columns that are meant for it, sheets quoted', () => {
    const names = [...parts.get('xl/workbook.xml')!.matchAll(/<definedName name="_xlnm[^>]*>([^<]*)</g)];
    expect(names.map((found) => found[1])).toEqual([
      "'Forecast units'!$A$1:$O$123",
      "'Forecast units'!$3:$3",
      "'Rows to check'!$8:$8",
      "'Store list'!$4:$4",
    ]);
  });

  it('carries texts of the source over as they are, a second time too', async () => {
    const again = await forecastFile({ bytes }, [], AS_OF);
    const first = (await readXlsx(bytes)).sheets[0]!.rows.map(([text]) => text);
    expect((await readXlsx(again)).sheets[0]!.rows.map(([text]) => text)).toEqual(first);
    expect(first).toEqual(HOSTILE.map(shownText));
  });

  it('a second forecast goes beside the first, with tables of its own', async () => {
    const again = await forecastFile(
      { bytes },
      forecastSheets(reportFacts(), [
        'Inventory',
        'Forecast',
        'Forecast units',
        'Rows to check',
        'Store list',
      ]),
      AS_OF,
    );
    const second = partsOf(again);
    const tables = [...second]
      .filter(([name]) => name.startsWith('xl/tables/'))
      .map(([, xml]) => / displayName="([^"]+)"/.exec(xml)?.[1]);
    expect(new Set(tables).size).toBe(tables.length);
    const titles = [...second.get('xl/workbook.xml')!.matchAll(/_xlnm.Print_Titles"[^>]*>([^<]*)</g)];
    expect(titles.map((found) => found[1]).sort()).toEqual([
      "'Forecast units (2)'!$3:$3",
      "'Forecast units'!$3:$3",
      "'Rows to check'!$8:$8",
      "'Store list (2)'!$4:$4",
      "'Store list'!$4:$4",
    ]);
    const { sheets } = await readXlsx(again);
    expect(sheets.map(({ name }) => name)).toEqual([
      'Inventory',
      'Forecast',
      'Forecast units',
      'Rows to check',
      'Store list',
      'Forecast (2)',
      'Forecast units (2)',
      'Rows to check (2)',
      'Store list (2)',
    ]);
  });
});
