import { describe, expect, it } from 'vitest';
import {
  addGap,
  addPageBreak,
  addSentence,
  keepTogether,
  newDraft,
  totalCell,
} from '../../src/report/draft.ts';

describe('keepTogether', () => {
  it('begins a page only where a block would be split', () => {
    const draft = newDraft();
    addGap(draft, 10);
    keepTogether(draft, 20);
    expect(draft.pageBreaks).toEqual([]);
    keepTogether(draft, 35);
    expect(draft.pageBreaks).toEqual([10]);
    addGap(draft, 5);
    keepTogether(draft, 30);
    expect(draft.pageBreaks).toEqual([10]);
  });

  it('counts from the last page that was begun', () => {
    const draft = newDraft();
    addGap(draft, 30);
    addPageBreak(draft);
    keepTogether(draft, 38);
    expect(draft.pageBreaks).toEqual([30]);
  });
});

describe('cells of a draft', () => {
  it('a total is a sum with the value that it has today', () => {
    expect(totalCell({ row: 4, rows: 3 }, 2, 0.1 + 0.2, 'oneDecimal')).toEqual({
      formula: 'SUM(C5:C7)',
      value: 0.3,
      format: 'oneDecimal',
      meaning: 'total',
    });
  });

  it('a sentence holds no control character', () => {
    const draft = newDraft();
    addSentence(draft, 'bell \u0007', 'label', 3);
    expect(draft.rows[0]![0]!.value).toBe('bell \u2407');
    expect(draft.spans).toEqual([{ row: 0, column: 0, columns: 3 }]);
  });
});
