import type { Sheet, SheetCell } from '../../src/report/sheet.ts';

const HEAD_WIDTH = 16;

/** A sheet of records that has its heads only. */
export function emptyRecords(name: string, heads: readonly string[]): Sheet {
  const head = (value: string): SheetCell => ({ value, meaning: 'columnHead', format: 'text' });
  const widths = heads.map((text) => Math.max(HEAD_WIDTH, Math.min(40, text.length + 2)));
  const none = { names: [], tables: [], charts: [], pageBreaks: [], spans: [] };
  return { name, rows: [heads.map(head)], widths, frozenRows: 1, ...none };
}
