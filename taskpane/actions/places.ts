import type { SheetBlock, WorkbookInfo } from '../host/sheetHost.ts';
import { SETTINGS_SHEET } from '../../src/inventory/settingsRows.ts';
import type { Session, Where } from '../session.ts';
import { inventoryPlace, readHere } from './readInventory.ts';

/** A place where an inventory can stand. */
export type Place = { readonly key: string; readonly where: Where };

/** Every sheet that holds anything, and every table on it, in the order of the workbook. */
export function placesIn({ sheets }: WorkbookInfo): readonly Place[] {
  return sheets.flatMap(({ name, used, tables, hidden }) => {
    if (used === undefined || hidden || name === SETTINGS_SHEET) return [];
    const whole = place({ sheet: name, block: used });
    return [whole, ...tables.map((table) => place({ sheet: name, block: table.block, table: table.name }))];
  });
}

const place = (where: Where): Place => ({ key: placeKey(where), where });

/** Tells places apart. */
export function placeKey({ sheet, table, wholeSheet }: Where): string {
  if (wholeSheet === false) return 'cursor';
  return table === undefined ? `sheet ${sheet}` : `table ${table}`;
}

/** Reads the block under the cursor: what is selected, or where one cell is, the table or sheet around it. */
export async function readAtCursor(session: Session): Promise<void> {
  const info = await session.host.workbook();
  const at = info.ok ? cursorPlace(info.value) : undefined;
  await readHere(session, at);
}

function cursorPlace(info: WorkbookInfo): Where | undefined {
  const { selected } = info;
  return selected !== undefined && isBlock(selected)
    ? { ...selected, wholeSheet: false }
    : inventoryPlace(info);
}

const isBlock = ({ block }: SheetBlock): boolean => block.rows > 1 && block.columns > 1;
