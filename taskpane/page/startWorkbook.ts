import type { BuiltIn } from '../host/workbookHost.ts';
import { builtInHost } from '../host/workbookHost.ts';
import { startBrowser } from '../host/workbookBrowser.ts';
import type { CellDescription } from '../host/workbookDescribing.ts';
import type { StartedWorkbook } from '../host/workbookEngine.ts';
import { selectedBlock } from '../host/workbookInfo.ts';
import { workbookKeyboard } from '../host/workbookKeyboard.ts';
import type { PageWorkbook } from './pageWorkbook.ts';
import { giveFile } from './saveFile.ts';

/** Starts the grid in an element, with its keys and its words for screen readers. */
export function startPageWorkbook(container: HTMLElement, name: string): PageWorkbook {
  const keyboard = workbookKeyboard(container, name);
  const grid = startBrowser(container);
  keyboard.follow(grid.api);
  const host = builtInHost(grid, { download: (bytes, fileName) => giveFile(fileName, bytes) });
  const cell = (): CellDescription | undefined => activeCell(grid, host);
  return {
    host,
    onCell: (listener) => {
      const tell = oncePerTurn(() => {
        const seen = cell();
        keyboard.speak(seen);
        listener(seen);
      });
      host.onSelect(tell);
      host.onChange(tell);
      tell();
    },
    setDark: (dark) => grid.api.toggleDarkMode(dark),
    focus: keyboard.focus,
  };
}

function activeCell(grid: StartedWorkbook, host: BuiltIn): CellDescription | undefined {
  const at = selectedBlock(grid);
  return at && host.describeAt({ sheet: at.sheet, row: at.block.row, column: at.block.column });
}

/** Many changes come at once: the last of them is looked at. */
function oncePerTurn(act: () => void): () => void {
  let waits = false;
  return () => {
    if (waits) return;
    waits = true;
    requestAnimationFrame(() => {
      waits = false;
      act();
    });
  };
}
