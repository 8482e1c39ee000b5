import { expect, it } from 'vitest';
import { textWidth } from '../../../taskpane/host/textWidth.ts';
import { rowHeights } from '../../../taskpane/host/rowHeights.ts';
import { addRow, cell, finishedSheet, newDraft } from '../../../src/report/draft.ts';

const height = (text: string, width: number): number => {
  const draft = newDraft();
  addRow(draft, [null, cell(text, 'wrapped')]);
  return rowHeights(finishedSheet(draft, 'Sheet', [10, width], { frozenRows: 0 })).get(0)!.height;
};

it('narrow letters take less room than wide ones, a digit a little more than the measure', () => {
  expect(textWidth('illilli')).toBeLessThan(textWidth('mmm'));
  expect(textWidth('0123456789')).toBeCloseTo(10.6, 6);
  expect(textWidth('電池')).toBeGreaterThan(textWidth('nn'));
});

it('a cause of 105 characters takes two lines of fifty, and one of capitals takes three', () => {
  const cause =
    'rows 108, 153, 246 and 36 more; such as made 2016-08-01, installed 2019-07-24: 36 months on a full shelf';
  expect(cause.length).toBeGreaterThan(103);
  expect(height(cause, 52)).toBe(15.5 + 13);
  expect(height(cause.toUpperCase(), 52)).toBe(15.5 + 2 * 13);
});

it('a word wider than its column is broken, not lost', () => {
  expect(height('x'.repeat(100), 32)).toBe(15.5 + 3 * 13);
});
