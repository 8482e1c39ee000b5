import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { SheetBlock } from '../sheetHost.ts';
import type { StartedWorkbook } from './engine.ts';
import { openBook } from './engine.ts';
import { selectedBlock } from './info.ts';
import { liveSheet } from './live.ts';

/** Shows a block and puts the user there. */
export function selectLive(started: StartedWorkbook, { sheet, block }: SheetBlock): Outcome<void> {
  const live = liveSheet(started, sheet);
  if (live === undefined) return problem('badInput', 'sheetNotThere', 'sheet', sheet);
  openBook(started).setActiveSheet(live.id);
  live.facade.getRange(block.row, block.column, block.rows, block.columns).activate();
  scrollTo(live.facade, block);
  return answer(undefined);
}

// Without a screen there is nothing to scroll.
function scrollTo(facade: object, { row, column }: SheetBlock['block']): void {
  const { scrollToCell } = facade as { scrollToCell?: (row: number, column: number) => unknown };
  scrollToCell?.call(facade, row, column);
}

const MOVES = new Set(['sheet.operation.set-selections', 'sheet.operation.set-worksheet-active']);

/** Tells a listener where the user goes, through whatever is opened; the answer ends that. */
export function watchSelection(started: StartedWorkbook, listener: (at: SheetBlock) => void): () => void {
  const commands = started.univer.__getInjector().get(started.core.ICommandService);
  let told = '';
  const watching = commands.onCommandExecuted(({ id }) => {
    if (!MOVES.has(id) || started.api.getActiveWorkbook() === null) return;
    const at = selectedBlock(started);
    const place = JSON.stringify(at);
    if (at === undefined || place === told) return;
    told = place;
    listener(at);
  });
  return () => watching.dispose();
}
