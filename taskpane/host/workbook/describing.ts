import { address } from '../../../src/report/sheet.ts';
import { isCellError } from '../../../functions/cell.ts';
import type { CellAt } from '../sheetHost.ts';
import type { StartedWorkbook } from './engine.ts';
import type { LiveSheet } from './live.ts';
import { anchorOf, liveSheet } from './live.ts';

/** A cell in words. */
export type CellDescription = {
  readonly address: string;
  /** What is shown, with its number format. */
  readonly shown: string;
  /** With its "="; left out where there is none. */
  readonly formula?: string;
  /** The cell whose formula answers here, where that is another one. */
  readonly answerOf?: string;
  /** What its error says. */
  readonly sentence?: string;
};

/** What the error in a cell says; empty where there is none, or none is known. */
export function sentenceLive(started: StartedWorkbook, { sheet, row, column }: CellAt): string {
  const value = liveSheet(started, sheet)?.value(row, column);
  return isCellError(value) ? value.message : '';
}

/** A cell in words, or undefined where its sheet is gone. */
export function describeLive(started: StartedWorkbook, at: CellAt): CellDescription | undefined {
  const live = liveSheet(started, at.sheet);
  if (live === undefined) return undefined;
  const { row, column } = at;
  const formula = formulaAt(started, live, row, column);
  const anchor = formula === undefined ? anchorOf(live.ranges, row, column) : { row, column };
  const sentence = sentenceLive(started, at);
  return {
    address: address(row, column),
    shown: live.facade.getRange(row, column).getDisplayValue(),
    ...(formula !== undefined && { formula }),
    ...((anchor.row !== row || anchor.column !== column) && { answerOf: address(anchor.row, anchor.column) }),
    ...(sentence !== '' && { sentence }),
  };
}

/** The formula of a cell with its "=", one that it shares with others included. */
export function formulaAt(
  { univer, engine }: StartedWorkbook,
  { sheet, id, bookId }: LiveSheet,
  row: number,
  column: number,
): string | undefined {
  const own = sheet.getCellRaw(row, column);
  if (own?.f === undefined && own?.si === undefined) return undefined;
  const model = univer.__getInjector().get(engine.FormulaDataModel);
  return model.getFormulaStringByCell(row, column, id, bookId) ?? undefined;
}
