import type { CellDescription } from '../host/workbook/describing.ts';
import type { BuiltIn } from '../host/workbook/builtInHost.ts';

/** What the page needs of the workbook on its left. */
export type PageWorkbook = {
  /** The same workbook as the pane sees it. */
  readonly host: BuiltIn;
  /** Calls `listener` with the active cell, now and whenever it is another or has changed. */
  readonly onCell: (listener: (cell: CellDescription | undefined) => void) => void;
  /** Looks at the active cell anew: another file is open. */
  readonly lookAgain: () => void;
  readonly setDark: (dark: boolean) => void;
  /** Moves the keyboard into the grid. */
  readonly focus: () => void;
};
