import type { Session } from '../session.ts';
import { REPAIR } from '../text/inventoryText.ts';
import { underway } from './underway.ts';

/** Writes our formulas anew wherever the workbook shows that it does not know them, and says how many. */
export async function repairFormulas(session: Session): Promise<void> {
  const count = await underway(session, REPAIR.repairing, (work) => session.host.repairFormulas(work));
  if (count !== undefined) session.notice.value = { kind: 'done', text: REPAIR.repaired(count) };
}
