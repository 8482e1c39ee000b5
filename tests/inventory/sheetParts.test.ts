import { describe, expect, it } from 'vitest';
import { dayFrom } from '../../src/basics/calendar.ts';
import { decisionsFor } from '../../src/inventory/decisions.ts';
import type { Cell, Inventory } from '../../src/inventory/inventory.ts';
import { readInventory } from '../../src/inventory/readInventory.ts';
import { rowsToCheck } from '../../src/inventory/rowsToCheck.ts';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import { settingsFrom } from '../../src/inventory/settings.ts';
import { changedSettings, jointSettings } from '../../src/inventory/settingsRows.ts';
import { fieldsShown, namableHeads } from '../../src/inventory/sheetParts.ts';
import { unmatchedSettings, withoutColumn } from '../../src/inventory/unmatchedSettings.ts';
import { settingsSheet } from '../../src/report/settingsSheet.ts';

const day = (text: string): number => {
  const read = dayFrom(text, 'day');
  if (!read.ok) throw new Error(text);
  return read.value;
};
const asOf = day('2026-06-30');

const ROWS: Cell[][] = [
  ['Batteries of the north'],
  ['Serial', 'Type', 'Code', 'Maker', 'Installed', 'Removed', 'Reason', 'Volts'],
  ['Depot Kaldmoor'],
  ['N1', '6T AGM', '2403-1', '9ZZ98', day('2024-05-01'), null, null, 12.8],
  ['N2', '6T old', '2405-2', '9ZZ98', '03/04/2025', null, null, 12.6],
  ['N3', '6T old', '2411-3', '9ZZ98', day('2024-12-01'), day('2025-06-01'), 'quirk', 12.4],
  ['Total', null, null, null, null, null, null, 3],
];

function read(given: GivenSettings = {}): Inventory {
  const settings = settingsFrom(given);
  if (!settings.ok) throw new Error(settings.problem.because);
  const inventory = readInventory({
    sheet: {
      rows: ROWS,
      name: 'Fleet',
      firstRow: 3,
      isDateCell: (_, column) => column === 4 || column === 5,
    },
    asOf,
    settings: settings.value,
  });
  if (!inventory.ok) throw new Error(inventory.problem.because);
  return inventory.value;
}

describe('what was recognised of a sheet', () => {
  const { parts, constructions } = read({ columns: { restVolts: 'Volts' } });

  it("is told with the sheet's own row numbers", () => {
    expect(parts).toMatchObject({ titleRows: 1, headerRows: [4, 4], dataRows: [5, 9] });
    expect(parts.siteHeadings).toEqual(['Depot Kaldmoor']);
  });

  it('shows each column with its field, how it came to it, and two values', () => {
    const of = (head: string) => parts.columns.find((column) => column.head === head);
    expect(of('Serial')).toMatchObject({ column: 0, field: 'serial', source: 'head', samples: ['N1', 'N2'] });
    expect(of('Volts')).toMatchObject({ field: 'restVolts', source: 'named' });
    expect(of('Installed')!.samples).toEqual(['2024-05-01', '03/04/2025']);
    expect(namableHeads(parts)).toContain('Reason');
    expect(fieldsShown(parts)[0]).toBe('serial');
    expect(fieldsShown(parts).at(-1)).toBe('pricePaid');
  });

  it('counts each text that tells a construction once', () => {
    expect(constructions).toEqual([
      { text: '6T old', field: 'type', count: 2, construction: 'AGM', from: 'assumed' },
      { text: '6T AGM', field: 'type', count: 1, construction: 'AGM', from: 'words' },
    ]);
    const said = read({ constructions: { '6T old': 'flooded' } }).constructions;
    expect(said[0]).toMatchObject({ construction: 'flooded', from: 'settings' });
  });
});

describe('one decision for all rows of a cause', () => {
  const groups = (given?: GivenSettings) => rowsToCheck(read(given).toCheck);
  const kinds = (given?: GivenSettings): string[] => groups(given).map(({ kind }) => kind);

  it.each([
    ['code reads two ways', 0],
    ['removal cause not understood', 0],
    ['construction unknown', 1],
    ['text date that reads two ways', 0],
    ['record start assumed', 0],
  ] as const)('%s: taking it settles them', (kind, index) => {
    const group = groups().find((one) => one.kind === kind)!;
    const decision = decisionsFor(group)[index]!;
    expect(decision.label).not.toBe('');
    expect(kinds(changedSettings({}, decision.change))).not.toContain(kind);
  });

  it('names the maker and the layouts in question', () => {
    const group = groups().find(({ kind }) => kind === 'code reads two ways')!;
    expect(decisionsFor(group).map(({ label }) => label)).toEqual([
      'Read codes of maker 9ZZ98 as yyMM-lot: 2403-1 is March 2024',
      'Read codes of maker 9ZZ98 as kkWW-lot: 2403-1 is the week from 15 January 2024',
    ]);
  });

  it('is not offered where each row needs its own look', () => {
    expect(decisionsFor({ kind: 'age unknown' })).toEqual([]);
  });
});

describe('settings of another month', () => {
  it('that no longer match are listed', () => {
    const settings = settingsFrom({
      sites: { Kaldmoor: {}, Gone: {} },
      layouts: { '*': 'MMyy-lot', '0ZZ00': 'yyMM-lot' },
      causes: { Quirk: 'failed', shot: 'good' },
      constructions: { '6T old': 'AGM', '4HN': 'flooded' },
    });
    if (!settings.ok) throw new Error('refused');
    const unmatched = unmatchedSettings(settings.value, { ...read(), sites: ['Kaldmoor'] });
    expect(unmatched.map(({ name }) => name)).toEqual(['Gone', '0ZZ00', 'shot', '4HN']);
    expect(withoutColumn({ columns: { serial: 'S/N', type: 'Kind' } }, 'serial')).toEqual({
      given: { columns: { type: 'Kind' } },
      unmatched: { setting: 'columns', name: 'S/N', what: 'column for serial' },
    });
  });

  it('read back from their sheet as they were', () => {
    const settings = settingsFrom({
      columns: { serial: 'S/N', least: '' },
      causes: { '': 'notSaid', 'a.b': 'good' },
      layouts: { '': 'yyMM-lot' },
      sites: { 'St. Olav': { coldest: -30, parked: true } },
      recordsSince: '2022-06-30',
      visibleOnly: true,
      onOrder: [{ month: '2026-09', count: 6 }],
    });
    if (!settings.ok) throw new Error('refused');
    const sheet = settingsSheet(settings.value, asOf);
    // A host gives an empty text back as an empty cell.
    const rows = sheet.rows.map((row) => row.map((cell) => (cell?.value === '' ? null : cell?.value)));
    expect(jointSettings(undefined, rows)).toEqual(settings);
    expect(rows[1]).toEqual(['asOf', asOf]);
  });
});
