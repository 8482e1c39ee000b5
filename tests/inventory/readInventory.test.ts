import { describe, expect, it } from 'vitest';
import { problemText } from '../../src/basics/problemText.ts';
import type { Cell, SheetRows } from '../../src/inventory/inventory.ts';
import { readInventory } from '../../src/inventory/readInventory.ts';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import { settingsFrom } from '../../src/inventory/settings.ts';
import { accounted, AS_OF, day, fleet, inventoryFrom, sheetOf } from './sheets.ts';

const HEADS = ['Serial no', 'Date code', 'Depot', 'Veh reg', 'Installed'];
const rowOf = (number: number, site: string | null = 'North'): Cell[] => [
  `A${number}`,
  '1023-117',
  site,
  `NF-${number}`,
  day('2024-02-10'),
];

function refusal(sheet: SheetRows, given: GivenSettings = {}): string {
  const settings = settingsFrom(given);
  if (!settings.ok) throw new Error(problemText(settings.problem));
  const read = readInventory({ sheet, asOf: AS_OF, settings: settings.value });
  if (read.ok) throw new Error('was read');
  return problemText(read.problem);
}

describe('the columns', () => {
  it('are known by the headers of a list of units', () => {
    const heads =
      'unit,site,socket,install_date,first_seen_date,removed_date,reason,entry_age,exit_age,status';
    const rows = [
      heads.split(','),
      ['U00001', 'all', 0, '2019-10-04', '2022-06-30', '2026-02-04', 'failed', 32.8625, 76.0771, 'failed'],
      ['U00002', 'all', 0, '2026-02-04', '2026-02-04', null, null, '0.0000', 4.7855, 'in_service'],
      ['U00003', 'all', 1, '2021-02-04', '2022-06-30', '2024-02-04', 'other', 16.8, 35.9, 'other'],
    ];
    const { columns, rows: counts, causes, recordStart, lives } = inventoryFrom({ rows, fromText: true });
    expect(columns).toEqual({
      serial: 'unit',
      site: 'site',
      place: 'socket',
      installed: 'install_date',
      watchedSince: 'first_seen_date',
      removed: 'removed_date',
      cause: 'reason',
      status: 'status',
    });
    expect(counts).toEqual({ read: 3, used: 3, repaired: 0, ageUnknown: 0, leftOut: 0 });
    expect(causes.map(({ text, meaning }) => [text, meaning])).toEqual([
      ['failed', 'failed'],
      ['other', 'good'],
    ]);
    expect(recordStart).toEqual({ date: day('2022-06-30'), from: 'column' });
    expect(lives.map(({ meaning }) => meaning)).toEqual(['failed', undefined, 'good']);
  });

  it('are known by other wordings', () => {
    const given = {
      'S/N': 'A1',
      NSN: '6140-99-000-0123',
      'Mfg code': '1023-117',
      'In svc': day('2024-02-10'),
      'Dt removed': null,
      'Date removed': day('2025-03-04'),
      'Cause of removal': 'dead cell',
      Loc: 'North',
      'Veh reg': 'NF-12',
      OCV: 12.71,
      'CCA meas.': 1010,
      'Min CCA': 880,
      'Rated CCA': 1100,
      'Temp (°F)': 61,
      'Last tested': day('2025-02-04'),
      'Last charged': day('2025-01-04'),
      Make: '9ZZ98',
    };
    const rows = Array.from({ length: 5 }, (_, index) => ({ ...given, 'S/N': `A${index}` }));
    expect(inventoryFrom(rows).columns).toEqual({
      serial: 'S/N',
      stockNumber: 'NSN',
      maker: 'Make',
      code: 'Mfg code',
      site: 'Loc',
      vehicle: 'Veh reg',
      installed: 'In svc',
      removed: 'Date removed',
      cause: 'Cause of removal',
      restVolts: 'OCV',
      temperature: 'Temp (°F)',
      reading: 'CCA meas.',
      least: 'Min CCA',
      rating: 'Rated CCA',
      testedOn: 'Last tested',
      chargedOn: 'Last charged',
    });
  });

  it('are told apart by their cells where a header fits two fields', () => {
    const rows = Array.from({ length: 40 }, (_, index) => ({
      Unit: index < 20 ? 'Rescue' : 'Plough',
      'Battery tag': `A${index}`,
      'Date code': '1023-117',
      Tag: `A${index}`,
    }));
    expect(inventoryFrom(rows).columns).toEqual({ serial: 'Tag', code: 'Date code' });
  });

  it('are those that the settings name', () => {
    const rows = fleet().map((row) => ({ ...row, Bought: day('2023-01-05') }));
    const { columns, batteries } = inventoryFrom(rows, {
      settings: { columns: { installed: 'bought', type: '' } },
    });
    expect(columns.installed).toBe('Bought');
    expect(columns.type).toBeUndefined();
    expect(batteries[0]!.installed).toBe(day('2023-01-05'));
  });

  it('say which one was refused and why', () => {
    const rows = fleet().map((row) => ({ ...row, Removed: 'by the crew' }));
    expect(inventoryFrom(rows).notes).toEqual([
      "the column Removed is not taken as removed: its cells don't look like it",
    ]);
  });
});

describe('a column that no field wants', () => {
  it('is named', () => {
    const rows = fleet().map((row) => ({ ...row, Remarks: 'none', Colour: 'grey' }));
    expect(inventoryFrom(rows).notes).toEqual(['columns not used: Remarks, Colour']);
  });
});

describe('a workbook that counts from 1904', () => {
  const rows = fleet().map((row) => ({ ...row, Installed: day('2024-02-10') - 1462 }));

  it('has its dates converted, and says so', () => {
    const inventory = inventoryFrom(sheetOf(rows, { from1904: true }));
    expect(inventory.batteries[0]!.installed).toBe(day('2024-02-10'));
    expect(inventory.notes).toContain(
      'the workbook counts its days from 1904; its dates were converted on reading',
    );
    expect(accounted(inventory)).toBe(inventory.rows.read);
  });

  it('keeps the dates that its reader has converted already', () => {
    const sheet = sheetOf(fleet(), { from1904: true, isDateCell: (_, column) => column === 7 });
    expect(inventoryFrom(sheet).batteries[0]!.installed).toBe(day('2024-02-10'));
  });
});

describe('a sheet that is no inventory', () => {
  it.each([
    [[], 'the sheet "Units" is empty; an inventory has a header row and rows of batteries'],
    [[[null, ''], []], 'the sheet "Units" is empty; an inventory has a header row and rows of batteries'],
    [
      [HEADS],
      'the sheet "Units" has column heads, but no row of a battery under them; an inventory has one row for each battery',
    ],
    [
      [
        ['Colour', 'Taste'],
        ['red', 'sweet'],
      ],
      'no header row was recognised in the first 2 rows of the sheet "Units"; looked for at least two headers such as "Serial no", "Date code", "Installed", "Removed", "Site", "OCV"; say which row it is (in a settings file: headerRow)',
    ],
    [
      [
        ['Site', 'Vehicle'],
        ['North', 'NF-1'],
      ],
      'no column of the sheet "Units" says which battery a row is or how old it is; looked for serial, manufacture code, date made, installed, removed, rest voltage, cranking reading; say which columns hold them (in a settings file: columns)',
    ],
  ] as const)('is refused with a sentence: %j', (rows, sentence) => {
    expect(refusal({ rows, name: 'Units' })).toBe(sentence);
  });

  it('is refused where the settings name what it does not have', () => {
    const sheet = { rows: [HEADS, rowOf(1)], name: 'Units' };
    expect(refusal(sheet, { columns: { installed: 'Fitted' } })).toBe(
      'the settings (columns.installed) name the header "Fitted", which the sheet does not have; its headers are Serial no, Date code, Depot, Veh reg, Installed',
    );
    expect(refusal(sheet, { headerRow: 9 })).toBe(
      'headerRow is 9; allowed is a row of the sheet with rows under it, 1 to 1',
    );
  });
});
