import type { FUniver } from '@univerjs/core/facade';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { oncePerFrame } from './oncePerFrame.ts';
import type { CellDescription } from './describing.ts';
import { nameTools } from './toolNames.ts';

/** The grid as the keyboard and a screen reader meet it. */
export type WorkbookKeyboard = {
  /** Begins to move in the grid that has been started. */
  readonly follow: (api: FUniver) => void;
  /** Moves the keyboard into the grid. */
  readonly focus: () => void;
  /** Has a screen reader speak the active cell. */
  readonly speak: (cell: CellDescription | undefined) => void;
};

/** The hidden text field that has the keyboard while a cell is active: the canvas itself takes no typing. */
const FIELD = '[id^="__editor___INTERNAL_EDITOR__DOCS_NORMAL"]';
const SHEET_CANVAS = 'canvas[id^="univer-sheet-main-canvas"]';

/**
 * Gives the canvas grid what it lacks: the keys Home, End, Page Up and Down, Ctrl+Home, Ctrl+End and Shift+Tab, a place
 * in the order of Tab, a role, a name and words for screen readers. To be called before the grid starts, so that its keys come
 * here first; it makes its canvases anew with every workbook that is opened, so they are watched for.
 */
export function workbookKeyboard(container: HTMLElement, name: string): WorkbookKeyboard {
  const live = liveRegion(container);
  const focus = (): void => container.querySelector<HTMLElement>(FIELD)?.focus();
  let api: FUniver | undefined;
  const look = (): void => {
    nameCanvases(container, name, focus);
    nameTools(container);
  };
  new MutationObserver(oncePerFrame(look)).observe(container, {
    childList: true,
    subtree: true,
  });
  window.addEventListener('keydown', (event) => takeKey(event, container, api), true);
  return {
    follow: (started) => {
      api = started;
    },
    focus,
    speak: (cell) => (live.textContent = cell === undefined ? '' : spokenCell(cell)),
  };
}

/** The sentence that a screen reader speaks for a cell. */
export function spokenCell({ address, shown, formula, answerOf, sentence }: CellDescription): string {
  const parts = [`${address}: ${shown === '' ? 'empty' : shown}`];
  if (sentence !== undefined && sentence !== '') parts.push(sentence);
  if (formula !== undefined) parts.push(`formula ${formula}`);
  if (answerOf !== undefined) parts.push(`part of the answer of ${answerOf}`);
  return parts.join('; ');
}

function liveRegion(container: HTMLElement): HTMLElement {
  const live = document.createElement('div');
  live.className = 'spokenCell';
  live.setAttribute('role', 'status');
  live.setAttribute('aria-live', 'polite');
  container.after(live);
  return live;
}

function nameCanvases(container: HTMLElement, name: string, focus: () => void): void {
  for (const canvas of container.querySelectorAll<HTMLCanvasElement>('canvas:not([data-named])')) {
    canvas.dataset['named'] = '';
    const isSheet = canvas.matches(SHEET_CANVAS);
    canvas.tabIndex = isSheet ? 0 : -1;
    if (!isSheet) {
      canvas.setAttribute('aria-hidden', 'true');
      continue;
    }
    nameAsGrid(canvas, name);
    canvas.addEventListener('focus', focus);
  }
  for (const field of container.querySelectorAll<HTMLElement>(`${FIELD}:not([role])`)) {
    nameAsGrid(field, name);
    // The canvas stands for both in the order of Tab.
    field.tabIndex = -1;
  }
}

function nameAsGrid(element: HTMLElement, name: string): void {
  element.setAttribute('role', 'application');
  element.setAttribute('aria-roledescription', 'spreadsheet');
  element.setAttribute('aria-label', name);
}

function takeKey(event: KeyboardEvent, container: HTMLElement, api: FUniver | undefined): void {
  const target = event.target as HTMLElement;
  if (!container.contains(target) || !target.matches(`${FIELD}, ${SHEET_CANVAS}`)) return;
  const book = api?.getActiveWorkbook();
  if (book === undefined || book === null || book.isCellEditing()) return;
  const sheet = book.getActiveSheet();
  const active = sheet.getSelection()?.getCurrentCell();
  const to = placeAfter(event, sheet, { row: active?.actualRow ?? 0, column: active?.actualColumn ?? 0 });
  if (to === undefined) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  sheet.getRange(to.row, to.column).activate();
  sheet.scrollToCell(...cornerToShow(sheet, to));
}

type Place = { readonly row: number; readonly column: number };

function placeAfter(event: KeyboardEvent, sheet: FWorksheet, at: Place): Place | undefined {
  if (event.altKey || event.metaKey) return undefined;
  if (event.key === 'Tab') {
    return event.shiftKey && !event.ctrlKey ? { ...at, column: Math.max(0, at.column - 1) } : undefined;
  }
  if (event.shiftKey) return undefined;
  return event.ctrlKey ? placeAtEnds(event.key, sheet) : placeAlong(event.key, sheet, at);
}

function placeAtEnds(key: string, sheet: FWorksheet): Place | undefined {
  if (key === 'Home') return { row: 0, column: 0 };
  if (key === 'End') return { row: sheet.getLastRow(), column: sheet.getLastColumn() };
  return undefined;
}

function placeAlong(key: string, sheet: FWorksheet, { row, column }: Place): Place | undefined {
  const last = sheet.getMaxRows() - 1;
  if (key === 'Home') return { row, column: 0 };
  if (key === 'End') return { row, column: lastFilled(sheet, row) };
  if (key === 'PageDown') return { row: Math.min(last, row + rowsShown(sheet)), column };
  if (key === 'PageUp') return { row: Math.max(0, row - rowsShown(sheet)), column };
  return undefined;
}

function lastFilled(sheet: FWorksheet, row: number): number {
  for (let column = sheet.getLastColumn(); column > 0; column -= 1) {
    const value = sheet.getRange(row, column).getValue();
    if (value !== null && value !== undefined && value !== '') return column;
  }
  return 0;
}

function rowsShown(sheet: FWorksheet): number {
  const shown = sheet.getVisibleRange();
  return shown === null ? 20 : Math.max(1, shown.endRow - shown.startRow - 1);
}

/** Where to scroll so that a cell is seen: not at all where it is seen already. */
function cornerToShow(sheet: FWorksheet, { row, column }: Place): [number, number] {
  const shown = sheet.getVisibleRange();
  if (shown === null) return [row, column];
  const inside = (at: number, first: number, last: number): number => (at >= first && at < last ? first : at);
  return [inside(row, shown.startRow, shown.endRow), inside(column, shown.startColumn, shown.endColumn)];
}
