import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { compareFiles } from '../../src/inventory/compareFiles.ts';
import type { Inventory } from '../../src/inventory/inventory.ts';
import { settingsFrom } from '../../src/inventory/settings.ts';
import type { Battery } from '../../src/service/battery.ts';
import { planFile } from '../../taskpane/headless.ts';
import { readWorkbookFile } from '../../taskpane/host/xlsx/workbookFile.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';
import type { Row } from './sheets.ts';
import { day, fleet, inventoryFrom, plain } from './sheets.ts';

const file = (...rows: Row[]): Inventory => inventoryFrom([...fleet(3), ...rows]);
const compared = (before: Inventory, now: Inventory, sites?: string[]) =>
  valueOf(compareFiles(before, now, sites));
const serials = (batteries: readonly Battery[]): string[] => batteries.map(({ serial }) => serial);

describe('last month’s file beside this month’s', () => {
  it('is unchanged where nothing happened', () => {
    const same = file();
    expect(compared(same, same)).toEqual({
      ...{ fresh: [], gone: [], moved: [], verdictChanged: [], unchanged: 3, notCompared: [] },
    });
  });

  it('tells new and gone', () => {
    const { fresh, gone, unchanged } = compared(
      file(plain({ Serial: 'OLD' })),
      file(plain({ Serial: 'NEW' })),
    );
    expect([serials(fresh), serials(gone), unchanged]).toEqual([['NEW'], ['OLD'], 3]);
  });

  it.each([
    ['site', { Site: 'East' }, 'in NF-1 at North; now in NF-1 at East'],
    ['vehicle', { Vehicle: 'NF-9' }, 'in NF-1 at North; now in NF-9 at North'],
    ['place', { Pos: 2 }, 'in NF-1 at North, place 1; now in NF-1 at North, place 2'],
    ['removal', { Removed: day('2026-06-01') }, 'in NF-1 at North; now removed from NF-1 at North'],
    [
      'shelf',
      { Status: 'in stock', Vehicle: null, Installed: null, Shelf: 'B2' },
      'in NF-1 at North; now in stock at North, B2',
    ],
  ] as const)('tells what moved: %s', (what, change, words) => {
    const place: Row = what === 'place' ? { Pos: 1 } : {};
    const { moved, unchanged } = compared(file(plain(place)), file(plain(change)));
    expect(moved.map((each) => each.what)).toEqual([words]);
    expect(unchanged).toBe(3);
  });

  it('tells a changed verdict, and one that came or went', () => {
    const read = (amps: number): Row =>
      plain({ OCV: 12.8, 'CCA meas.': amps, 'Min CCA': 880, Tested: day('2026-06-01') });
    const what = (before: Row, now: Row) =>
      compared(file(before), file(now)).verdictChanged.map((each) => each.what);
    expect(what(read(1000), read(600))).toEqual(['Serviceable; now Awaiting charge']);
    expect(what(plain(), read(1000))).toEqual(['no test; now Serviceable']);
    expect(what(read(1000), read(1001))).toEqual([]);
  });

  it('knows a serial in other letters, and two makers’ batteries of one serial apart', () => {
    expect(compared(file(plain({ Serial: 'ab1' })), file(plain({ Serial: 'AB1' }))).unchanged).toBe(4);
    const two = (site: string): Row[] => [
      plain({ Serial: 'B1', Maker: '9ZZ98' }),
      plain({ Serial: 'B1', Maker: '9ZZ97', 'Date code': '2310-117', Vehicle: 'NF-2', Site: site }),
    ];
    const { moved, notCompared } = compared(file(...two('North')), file(...two('East')));
    expect(moved.map(({ now }) => now.maker)).toEqual(['9ZZ97']);
    expect(notCompared).toEqual([]);
  });

  it('compares a serial of several batteries with nothing, and says so', () => {
    const twice = file(plain({ Serial: 'T1' }), plain({ Serial: 'T1', Vehicle: 'NF-5' }));
    const { fresh, gone, moved, notCompared } = compared(file(plain({ Serial: 'T1' })), twice);
    expect([fresh, gone, moved]).toEqual([[], [], []]);
    expect(notCompared).toEqual(['the later file has several batteries of one serial: T1 (rows 5, 6)']);
  });

  it('counts batteries without a serial', () => {
    const { notCompared } = compared(file(plain({ Serial: null })), file());
    expect(notCompared).toEqual([
      'the earlier file has 1 battery without a serial; it may be among those listed as new',
    ]);
  });

  it('refuses a file that has no battery of this inventory', () => {
    const other = inventoryFrom(fleet(3).map((row) => ({ ...row, Serial: `Q${String(row['Serial'])}` })));
    expect(refusal(compareFiles(other, file()))).toEqual([
      'badInput',
      'none of the serials in the earlier file (3 different ones) is in this inventory; choose an earlier file of this inventory',
    ]);
  });

  it('is held to the sites that the earlier file covers', () => {
    const now = file(
      plain({ Serial: 'N1', Site: 'East', Vehicle: 'E-1' }),
      plain({ Serial: 'N2', Vehicle: 'N-2' }),
    );
    expect(serials(compared(file(), now, ['north']).fresh)).toEqual(['N2']);
    // What only the earlier file covers is not gone from here.
    expect(serials(compared(now, file(), ['north']).gone)).toEqual(['N2']);
  });

  it('refuses a file without serials', () => {
    const bare = inventoryFrom(fleet(3).map((row) => ({ ...row, Serial: null })));
    expect(refusal(compareFiles(bare, file()))).toEqual([
      'missing',
      'the earlier file has no serials, by which batteries are compared',
    ]);
  });
});

describe('the demonstration’s file of May beside June', () => {
  const demo = (name: string) => new URL(`../../docs/demo/${name}`, import.meta.url);
  async function inventoryOf(name: string, asOf: string): Promise<Inventory> {
    const workbook = valueOf(await readWorkbookFile(await readFile(demo(name)), name));
    const given: unknown = JSON.parse(await readFile(demo('norrfell-settings.json'), 'utf8'));
    return valueOf(planFile(workbook, valueOf(settingsFrom(given)), day(asOf))).inventory;
  }

  it('shows what one station saw in a month, and no other station', async () => {
    const may = await inventoryOf('norrfell-isvarg-may.xlsx', '2026-05-31');
    const june = await inventoryOf('norrfell-inventory.xlsx', '2026-06-30');
    const { fresh, gone, moved, unchanged, notCompared } = compared(may, june, ['Isvarg Pass']);
    expect([serials(gone), serials(fresh)]).toEqual([[], ['F-74850', '0080298']]);
    expect(fresh.every(({ site }) => site === 'Isvarg Pass')).toBe(true);
    const what = moved.map((each) => each.what);
    expect(what).toContain('in IP-131 at Isvarg Pass; now removed from IP-131 at Isvarg Pass');
    // Two batteries that lay here in May lie on Kaldmoor's shelves now.
    const shelves = moved.filter(
      ({ before, now }) => before.whereabouts === 'inStock' && now.whereabouts === 'inStock',
    );
    expect(shelves.map((each) => each.now.site)).toEqual(['Kaldmoor', 'Kaldmoor']);
    expect(unchanged).toBeGreaterThan(150);
    expect(notCompared).toHaveLength(2);
  });
});
