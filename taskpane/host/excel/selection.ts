import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import { rangeOn } from './cells.ts';
import { inExcel } from './session.ts';
import type { SheetBlock } from '../sheetHost.ts';

/** Where the user stands, or undefined: a chart or several blocks at once are no place. */
export async function selectedBlock(): Promise<SheetBlock | undefined> {
  try {
    return await Excel.run(async (context) => {
      const range = context.workbook.getSelectedRange();
      range.load('rowIndex,columnIndex,rowCount,columnCount,worksheet/name');
      await context.sync();
      const { rowIndex: row, columnIndex: column, rowCount: rows, columnCount: columns } = range;
      return { sheet: range.worksheet.name, block: { row, column, rows, columns } };
    });
  } catch {
    return undefined;
  }
}

/** Takes the user to a block. */
export function selectInExcel({ sheet, block }: SheetBlock): Promise<Outcome<void>> {
  return inExcel(async (context) => {
    const found = context.workbook.worksheets.getItemOrNullObject(sheet);
    found.load('visibility');
    await context.sync();
    if (found.isNullObject) return problem('badInput', 'sheetNotThere', 'sheet', sheet);
    if (found.visibility !== 'Visible') return problem('badInput', 'sheetHidden', 'sheet', sheet);
    found.activate();
    rangeOn(found, block).select();
    await context.sync();
    return answer(undefined);
  });
}

type Registered = { readonly remove: () => void; readonly context: OfficeExtension.ClientRequestContext };

/** Tells a listener where the user goes; the answer ends that. */
export function followSelection(listener: (at: SheetBlock) => void): () => void {
  let ended = false;
  let last = '';
  const tell = async (): Promise<void> => {
    const at = ended ? undefined : await selectedBlock();
    // Going to a cell of another sheet is told twice.
    if (at === undefined || ended || JSON.stringify(at) === last) return;
    last = JSON.stringify(at);
    listener(at);
  };
  const registered = register(tell);
  return () => {
    ended = true;
    void registered.then(unregister);
  };
}

// Going to another sheet is told apart from going to another cell.
async function register(tell: () => Promise<void>): Promise<readonly Registered[]> {
  try {
    return await Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const handlers = [worksheets.onSelectionChanged.add(tell), worksheets.onActivated.add(tell)];
      await context.sync();
      return handlers;
    });
  } catch {
    // Without it the pane still works: it asks where the user stands when it needs to know.
    return [];
  }
}

// A handler can only be taken off by the context that put it on.
async function unregister(handlers: readonly Registered[]): Promise<void> {
  const context = handlers[0]?.context;
  if (context === undefined) return;
  handlers.forEach((each) => each.remove());
  await context.sync().catch(() => undefined);
}
