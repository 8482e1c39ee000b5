import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/inventory/inventory.ts';
import { DEFAULT_SETTINGS } from '../../src/inventory/settings.ts';
import { rowsToCheckSheet } from '../../src/report/rowsToCheckSheet.ts';
import { rowHeights } from '../../taskpane/host/rowHeights.ts';

const finding = (row: number, more: Partial<Finding> = {}): Finding => ({
  ...{ kind: 'unreadable code', row, column: 'Date code', given: `1x-${row}`, done: 'not read' },
  ...more,
});
const found: readonly Finding[] = [
  ...[9, 5, 7, 11].map((row) => finding(row, { group: 'codes of maker 9ZZ98: unreadable code' })),
  finding(2, {
    kind: 'temperature must be Fahrenheit',
    group: 'temperature: Pass',
    count: 40,
    given: 'x'.repeat(90),
  }),
  finding(3, { kind: 'number with its unit', given: '12.6V', sheet: 'Tests' }),
];
const sheet = rowsToCheckSheet({ toCheck: found, tab: 'Stock', settings: DEFAULT_SETTINGS }, 'Rows to check');
const texts = sheet.rows.map((row) => row.map((cell) => cell?.value ?? ''));

const facts = (kind: Finding['kind']) => ({
  toCheck: [finding(4, { kind })],
  tab: 'Stock',
  settings: DEFAULT_SETTINGS,
});

describe('rows to check', () => {
  it('stand by cause first: how many, where, an example, and what happens if nothing is done', () => {
    const causes = texts.slice(4, 7).map(([kind, tab, count, , cause]) => [kind, tab, count, cause]);
    expect(causes).toEqual([
      ['unreadable code', 'Stock', 4, 'codes of maker 9ZZ98; rows 9, 5, 7 and 1 more; such as 1x-9'],
      [
        'temperature must be Fahrenheit',
        'Stock',
        40,
        `temperature: Pass; rows 2 and 39 more; such as ${'x'.repeat(60)} …`,
      ],
      ['number with its unit', 'Tests', 1, 'row 3; such as 12.6V'],
    ]);
    expect(texts.slice(4, 7).every((row) => row[5] !== '')).toBe(true);
  });

  it('say where a decision is made, with the pane and without it', () => {
    const one = finding(4, { kind: 'code reads two ways', done: 'say which is right', setting: 'layouts' });
    const { rows } = rowsToCheckSheet({ ...facts('placeholder'), toCheck: [one] }, 'Rows to check');
    const said = rows.flatMap((row) => row.map((cell) => String(cell?.value ?? '')));
    expect(said).toContain(
      'say which is right; decide it in the pane, under “Rows to check”, or in a settings file, by “layouts”',
    );
  });

  it('leave the kind of every finding on one line', () => {
    const longest = 'reading and least in different units';
    const high = rowHeights(rowsToCheckSheet(facts(longest), 'Rows to check'));
    const plain = rowHeights(rowsToCheckSheet(facts('placeholder'), 'Rows to check'));
    expect(high).toEqual(plain);
  });

  it('then row by row, on a page of their own, as a table', () => {
    const [table] = sheet.tables;
    expect(texts[table!.row]).toEqual(table!.heads);
    expect(table!.rows).toBe(found.length);
    expect(texts.slice(table!.row + 1).map((row) => row[4])).toEqual(found.map(({ given }) => given));
    expect(sheet.pageBreaks).toEqual([table!.row - 1]);
  });

  it('says so where there is nothing to check', () => {
    const empty = rowsToCheckSheet({ toCheck: [], tab: 'Stock', settings: DEFAULT_SETTINGS }, 'Rows');
    expect(empty.rows.flat().map((cell) => cell!.value)).toContain('Nothing to check.');
    expect(empty.tables).toEqual([]);
  });
});
