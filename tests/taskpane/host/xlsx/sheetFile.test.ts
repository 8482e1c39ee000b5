import { describe, expect, it } from 'vitest';
import {
  addHeads,
  addRow,
  addSentence,
  cell,
  finishedSheet,
  newDraft,
} from '../../../../src/report/draft.ts';
import type { DateShown } from '../../../../src/report/sheet.ts';
import { namesForFile, sheetForFile, writable } from '../../../../taskpane/host/xlsx/sheetFile.ts';

const draft = newDraft();
addSentence(draft, 'A title', 'title', 3);
addHeads(draft, ['Site', 'Enough 19 years in 20', 'Reason']);
addRow(draft, [cell('North'), cell(3, 'body', 'whole'), cell('long '.repeat(30), 'wrapped')]);
addRow(draft, [
  cell('x'.repeat(32_000)),
  cell(1234.5, 'input', 'money'),
  cell('y'.repeat(32_000), 'wrapped'),
]);
addSentence(draft, 'word '.repeat(40), 'note', 3);
const sheet = finishedSheet(draft, "It's a store", [20, 10, 30], { frozenRows: 2, repeatedRows: [1, 1] });
const file = sheetForFile(sheet);
const height = (row: number): number => file.rowDefs!.get(row)!.height!;
const styleOf = (row: number, column: number) => file.cells!.get(`${row},${column}`)!.style!;

describe('a sheet for the file', () => {
  it('gives rows the height of their wrapped heads, sentences and texts, within reason', () => {
    expect(height(1)).toBeGreaterThan(3 * 13);
    expect(height(2)).toBeGreaterThan(4 * 13);
    expect(height(4)).toBeGreaterThan(3 * 13);
    expect(height(3)).toBeLessThan(150);
  });

  it('puts heads over numbers at the right, heads over texts at the left', () => {
    expect(styleOf(1, 1).alignment).toMatchObject({ horizontal: 'right', wrapText: true });
    expect(styleOf(1, 2).alignment).toMatchObject({ horizontal: 'left', indent: 1 });
  });

  it('boxes inputs and shows money with its cents', () => {
    expect(Object.keys(styleOf(3, 1).border!).sort()).toEqual(['bottom', 'left', 'right', 'top']);
    expect(styleOf(3, 1).numFmt).toBe('#,##0.00');
  });

  it('shows dates in the order that the sheet asks for', () => {
    const dated = newDraft();
    addRow(dated, [cell(46_203, 'body', 'date')]);
    const code = (dateShown?: DateShown): unknown =>
      sheetForFile(finishedSheet(dated, 'Dates', [12], { frozenRows: 0, dateShown })).cells!.get('0,0')!
        .style!.numFmt;
    expect(code()).toBe('yyyy-mm-dd');
    expect([code('dayFirst'), code('monthFirst')]).toEqual(['dd/mm/yyyy', 'mm/dd/yyyy']);
  });

  it('prints landscape, one page wide, heads repeated under the quoted name of the sheet', () => {
    expect(file.pageSetup).toMatchObject({ orientation: 'landscape', fitToWidth: 1, fitToHeight: 0 });
    expect(namesForFile(sheet)).toEqual([
      { name: '_xlnm.Print_Titles', range: "'It''s a store'!$2:$2", scope: "It's a store" },
    ]);
  });
});

describe('writable', () => {
  it('keeps what looks like an escape of the file format', () => {
    expect(writable('_x0041_x_x00zz_')).toBe('_x005F_x0041_x_x00zz_');
    expect(writable(5)).toBe(5);
  });
});
