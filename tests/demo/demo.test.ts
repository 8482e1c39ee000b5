import { readFile } from 'node:fs/promises';
import type { Workbook } from 'hucre';
import { readXlsx } from 'hucre/xlsx';
import { describe, expect, it } from 'vitest';
import { FIRST_DAY, isoDay } from '../../src/basics/calendar.ts';
import { settingsFrom } from '../../src/inventory/settings.ts';
import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import { ROWS_ABOVE } from '../../docs/demo/arrange.ts';
import { grownByItself, truthOf } from '../../docs/demo/census.ts';
import { COLUMNS } from '../../docs/demo/columns.ts';
import { makeDemo } from '../../docs/demo/demo.ts';
import { simulateFleet } from '../../docs/demo/fleet.ts';
import { codeLayouts } from '../../docs/demo/labels.ts';
import { readmeOf } from '../../docs/demo/readme.ts';
import { recordedStints, watchedFrom } from '../../docs/demo/register.ts';
import { AS_OF, FIRST_INSTALL, SITES, TRUTH } from '../../docs/demo/service.ts';
import { demoSettings } from '../../docs/demo/settings.ts';
import { writeDemo, writeLastMonth } from '../../docs/demo/workbook.ts';

const demo = makeDemo();
const committed = (name: string): Promise<Buffer> =>
  readFile(new URL(`../../docs/demo/${name}`, import.meta.url));

// Only what a reader of the file can see: values, formats, formulas, hidden rows.
async function contentOf(bytes: Uint8Array): Promise<unknown> {
  const book: Workbook = await readXlsx(bytes, { readStyles: true });
  return book.sheets.map(({ name, rows, cells, rowDefs, merges }) => ({
    name,
    rows,
    cells,
    rowDefs,
    merges,
  }));
}

describe('the demonstration inventory', () => {
  it('is made again with the same bytes', async () => {
    expect(Buffer.from(await writeDemo(makeDemo())).equals(Buffer.from(await writeDemo(demo)))).toBe(true);
  });

  it('is the committed workbook, last month’s file and page, cell for cell', async () => {
    expect(await contentOf(await writeDemo(demo))).toEqual(
      await contentOf(await committed('norrfell-inventory.xlsx')),
    );
    expect(await contentOf(await writeLastMonth(demo.lastMonth))).toEqual(
      await contentOf(await committed('norrfell-isvarg-may.xlsx')),
    );
    expect(readmeOf(demo)).toBe((await committed('README.md')).toString('utf8'));
  });

  it('has about 1,400 lives over nine stations', () => {
    const [lives] = truthOf(demo.batteries);
    expect(lives!.count).toBeGreaterThanOrEqual(1300);
    expect(lives!.count).toBeLessThanOrEqual(1500);
    const stations = new Set(
      demo.register.flatMap(
        ({ cells }) =>
          String(cells.site ?? '')
            .trim()
            .toLowerCase() || [],
      ),
    );
    expect([...stations].sort()).toEqual(SITES.map(({ name }) => name.toLowerCase()).sort());
  });

  it('has each kind of dirt at least twice, planted or grown', () => {
    const scarce = demo.planted.filter(({ rows }) => rows.length < 2).map(({ kind }) => kind);
    const grown = grownByItself(demo.register, demo.stories.tests).filter(({ count }) => count < 2);
    expect([scarce, grown]).toEqual([[], []]);
  });

  it('throws one kind of dirt on a row', () => {
    const hit = demo.planted.flatMap(({ rows }) => rows);
    expect(new Set(hit).size).toBe(hit.length);
  });

  it('names only invented makers, stock numbers and vehicles', () => {
    const makers = codeLayouts.map(([maker]) => maker);
    for (const { kind, cells, spoiled } of demo.register) {
      if (kind !== 'battery' || spoiled !== undefined) continue;
      expect(makers).toContain(cells.maker);
      expect(cells.stockNumber).toMatch(/^6140-99-000-0\d{3}$/);
      expect(cells.vehicle ?? 'none').toMatch(/^(none|[A-Z]{2}-\d{3})$/);
    }
  });

  it('has true dates within the years of the service', () => {
    for (const battery of demo.batteries) {
      for (const { from, to = AS_OF, vehicle } of recordedStints(battery)) {
        expect([isoDay(from), from >= FIRST_INSTALL, to >= from, to <= AS_OF]).toEqual([
          isoDay(from),
          true,
          true,
          true,
        ]);
        expect(to).toBeGreaterThanOrEqual(watchedFrom(vehicle.site));
      }
      expect(battery.made).toBeLessThan(battery.stints[0]?.from ?? AS_OF);
      expect(battery.made).toBeGreaterThan(FIRST_DAY);
    }
  });

  it('writes dates as date cells, unless they are dirt', () => {
    const index = COLUMNS.findIndex(({ key }) => key === 'installed');
    const odd = demo.register.filter(
      ({ cells, spoiled }) =>
        cells.installed !== undefined && typeof cells.installed !== 'object' && !spoiled,
    );
    expect([COLUMNS[index]!.header, odd]).toEqual(['Fitted on', []]);
  });

  it('carries the note that nothing in it is real', async () => {
    const { sheets } = await readXlsx(await committed('norrfell-inventory.xlsx'));
    expect(sheets.map(({ name }) => name)).toEqual(['Inventory', 'Tests', 'Charges', 'Notes']);
    expect(sheets[0]!.rows[1]![0]).toBe(
      'Norrfell winter-road and rescue service – fictional demo data, invented numbers',
    );
    expect(sheets[0]!.rows[ROWS_ABOVE - 1]).toEqual(COLUMNS.map(({ header }) => header));
  });

  it('comes with settings that the tool takes', async () => {
    const given: unknown = JSON.parse((await committed('norrfell-settings.json')).toString('utf8'));
    expect(given).toEqual(demoSettings);
    const taken = settingsFrom(given);
    expect(taken.ok && Object.keys(taken.value.sites)).toEqual(SITES.map(({ name }) => name));
  });

  it('draws lives by the law it tells: the scale of many fleets, found by its own likelihood, is near the truth', () => {
    const scale = scaleAtTrueShape([11, 12, 13].flatMap((seed) => simulateFleet(seed)));
    expect(scale).toBeGreaterThan(TRUTH.scale * 0.96);
    expect(scale).toBeLessThan(TRUTH.scale * 1.04);
  });
});

// With the shape known, the likeliest scale is (time at risk to the power of the shape / failures)^(1/shape). Every
// stay counts in the battery's own months, so that stations, kinds and the bad lot make no difference.
function scaleAtTrueShape(batteries: ReturnType<typeof simulateFleet>): number {
  let exposure = 0;
  let failures = 0;
  for (const battery of batteries) {
    if (battery.kind !== '6T AGM' || battery.lot === '417' || battery.stints.length === 0) continue;
    let age = 0;
    for (const { from, to = AS_OF, vehicle } of battery.stints)
      age += (to - from) / DAYS_PER_MONTH / (vehicle.site.lifeFactor * vehicle.lifeFactor);
    exposure += age ** TRUTH.shape;
    if (battery.stints.at(-1)!.cause === 'failed') failures += 1;
  }
  return (exposure / failures) ** (1 / TRUTH.shape);
}
