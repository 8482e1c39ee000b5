import type { SavedWorkbook, WorkbookState } from './workbookState.ts';

export type { ChangedCell, ChangedTable, SavedWorkbook, SheetState, WorkbookState } from './workbookState.ts';

/**
 * The workbook as an .xlsx file: the original with the changes put in. Show `lost` to the user before the bytes are
 * given away.
 * @param original  the bytes that were opened, or undefined where the workbook was new or a .csv
 * @param state     what there is now, see workbookState.ts
 * @param as        `formulas` keeps our own functions as formulas for the add-in; `values` writes their answers in place
 */
export async function savedWorkbook(
  original: Uint8Array | undefined,
  state: WorkbookState,
  as: 'formulas' | 'values',
): Promise<SavedWorkbook> {
  throw new Error(`not there yet: ${original?.length} ${state.sheets.length} ${as}`);
}
