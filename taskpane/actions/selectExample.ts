import { problemText } from '../../src/basics/problemText.ts';
import type { Finding } from '../../src/inventory/inventory.ts';
import type { Session } from '../session.ts';

/** Goes to the cell that a finding is about; to the first cell of its row where no column is meant. */
export async function selectExample(session: Session, { row, column, sheet }: Finding): Promise<void> {
  const { where, reading, host, notice } = session;
  if (where.value === undefined) return;
  const { block, sheet: own } = where.value;
  const found = reading.value?.parts.columns.find(({ head }) => head === column && column !== '');
  const at = sheet === undefined ? block.column + (found?.column ?? 0) : 0;
  const cell = { row: row - 1, column: at, rows: 1, columns: 1 };
  const selected = await host.select({ sheet: sheet ?? own, block: cell });
  if (!selected.ok) notice.value = { kind: 'problem', text: problemText(selected.problem) };
}
