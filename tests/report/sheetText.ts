import type { Sheet, SheetCell } from '../../src/report/sheet.ts';
import { address } from '../../src/report/sheet.ts';

function shownCell(cell: SheetCell, row: number, column: number): string {
  const value =
    cell.value === null
      ? ''
      : String(typeof cell.value === 'number' ? Number(cell.value.toFixed(6)) : cell.value);
  return `${address(row, column)} ${value}${cell.formula === undefined ? '' : ` =${cell.formula}`}`;
}

/** A sheet as text: a line for each row, address, value and formula of each cell. */
export function sheetText(sheet: Sheet): string {
  const lines = sheet.rows.map((row, r) =>
    row
      .flatMap((cell, c) =>
        cell === null || (cell.value === null && cell.formula === undefined) ? [] : [shownCell(cell, r, c)],
      )
      .join(' | '),
  );
  const names = sheet.names.map(({ name, row, column }) => `name ${name} ${address(row, column)}`);
  const charts = sheet.charts.map(
    ({ kind, title, series }) => `chart ${kind} "${title}": ${series.map(({ name }) => name).join(', ')}`,
  );
  return [`sheet ${sheet.name}`, ...lines.filter((line) => line !== ''), ...names, ...charts, ''].join('\n');
}
