import type {} from '@univerjs/sheets-table/facade';
import type { FillRequest } from '../sheetHost.ts';
import type { StartedWorkbook } from './engine.ts';
import { openBook } from './engine.ts';
import type { LiveSheet } from './live.ts';
import type { Steps } from './steps.ts';

/** Tables as plain as those of our own sheets: a grey head and hairlines, nothing that needs colour. */
export const TABLE_SETTINGS = {
  userThemes: [
    {
      name: 'plain',
      style: {
        headerRowStyle: {
          bg: { rgb: '#E9ECEF' },
          cl: { rgb: '#1F2A33' },
          bl: 1,
          bd: { b: { s: 1, cl: { rgb: '#1F2A33' } } },
        },
        secondRowStyle: { bg: { rgb: '#F6F7F8' } },
        lastRowStyle: { bd: { b: { s: 1, cl: { rgb: '#B8BFC6' } } } },
      },
    },
  ],
  defaultThemeIndex: 0,
} as const;

/** Takes those new columns into their table that stand at its right side; its filters stay. */
export function widenTable(
  started: StartedWorkbook,
  steps: Steps,
  live: LiveSheet,
  { table: name, column, columns }: FillRequest,
): void {
  const table = openBook(started)
    .getTableList()
    .find((each) => each.name === name && each.subUnitId === live.id)!;
  const end = table.range.endColumn;
  const joining = columns.slice(Math.max(0, end + 1 - column));
  if (joining.length === 0) return;
  const [unitId, tableId] = [live.bookId, table.id];
  const change = (operationType: 'insert' | 'delete') => ({
    id: 'sheet.mutation.set-sheet-table',
    params: {
      unitId,
      subUnitId: live.id,
      tableId,
      config: {
        rowColOperation: {
          operationType,
          rowColType: 'column',
          index: end + 1,
          count: joining.length,
          columnsJson: joining.map(({ head }, index) => columnJson(`${tableId}-${end + 1 + index}`, head)),
        },
      },
    },
  });
  steps.make(change('insert'), change('delete'));
}

const columnJson = (id: string, displayName: string): object => ({
  id,
  displayName,
  dataType: 'none',
  formula: '',
  meta: {},
  style: {},
});
