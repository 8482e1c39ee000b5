import type { BuiltIn } from '../host/workbook/builtInHost.ts';
import { builtInHost } from '../host/workbook/builtInHost.ts';
import { startBrowser } from '../host/workbook/browserWorkbook.ts';
import type { CellDescription } from '../host/workbook/describing.ts';
import type { StartedWorkbook } from '../host/workbook/engine.ts';
import { selectedBlock } from '../host/workbook/info.ts';
import { workbookKeyboard } from '../host/workbook/keyboard.ts';
import { oncePerFrame } from '../host/workbook/oncePerFrame.ts';
import type { PageWorkbook } from './pageWorkbook.ts';
import { giveFile } from './saveFile.ts';
import { workerFileWork } from './workerFileWork.ts';

/** Starts the grid in an element, with its keys and its words for screen readers. */
export function startPageWorkbook(container: HTMLElement, name: string): PageWorkbook {
  const keyboard = workbookKeyboard(container, name);
  const grid = startBrowser(container);
  keyboard.follow(grid.api);
  const host = builtInHost(grid, {
    download: (bytes, fileName) => giveFile(fileName, bytes),
    fileWork: workerFileWork(
      () => new Worker(/* webpackChunkName: "fileWorker" */ new URL('./fileWorker.ts', import.meta.url)),
    ),
  });
  const listeners: ((cell: CellDescription | undefined) => void)[] = [keyboard.speak];
  const lookAgain = oncePerFrame(() => {
    const cell = activeCell(grid, host);
    listeners.forEach((tell) => tell(cell));
  });
  host.onSelect(lookAgain);
  host.onChange(lookAgain);
  return {
    host,
    lookAgain,
    onCell: (listener) => {
      listeners.push(listener);
      lookAgain();
    },
    setDark: (dark) => grid.api.toggleDarkMode(dark),
    focus: keyboard.focus,
  };
}

function activeCell(grid: StartedWorkbook, host: BuiltIn): CellDescription | undefined {
  const at = selectedBlock(grid);
  return at && host.describeAt({ sheet: at.sheet, row: at.block.row, column: at.block.column });
}
