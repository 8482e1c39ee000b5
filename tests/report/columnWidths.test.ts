import { describe, expect, it } from 'vitest';
import { fittedWidths, shownLength } from '../../src/report/columnWidths.ts';
import { cell } from '../../src/report/draft.ts';

describe('shownLength', () => {
  it.each([
    [1234567.891, 'money', '1,234,567.89'],
    [-42.25, 'oneDecimal', '-42.3'],
    [999, 'whole', '999'],
    [46203, 'date', '2026-06-30'],
    [0.5295, 'chance', '53.0%'],
    [0.2, 'share', '20%'],
    [123456, 'plain', '123456'],
    [0.1234, 'thousandths', '0.123'],
  ] as const)('is at least that of %d as %s: %s', (value, format, shown) => {
    expect(shownLength(cell(value, 'body', format))).toBeGreaterThanOrEqual(shown.length - 1);
  });
});

describe('fittedWidths', () => {
  const rows = [
    [cell('A heading that runs on over many columns', 'heading')],
    [cell('Site', 'columnHead'), cell('Net, year of order', 'columnHead')],
    [cell('Norrfell Main'), cell(12345678.9, 'body', 'money')],
  ];

  it('hold the longest value and leave headings out', () => {
    const [site, net] = fittedWidths(rows, [
      [5, 40],
      [5, 40],
    ]);
    expect(site).toBeGreaterThan('Norrfell Main'.length);
    expect(site).toBeLessThan(18);
    expect(net).toBeGreaterThan('12,345,678.90'.length);
  });

  it('keep within the limits', () => {
    const limits: [number, number][] = [
      [20, 40],
      [3, 6],
    ];
    expect(fittedWidths(rows, limits)).toEqual([20, 6]);
  });
});
