import type { Engine } from './functions.ts';
import { PATCHED_RELEASE } from './indexPatch.ts';

type CellLike = { readonly f?: string | null; readonly si?: string | null } | null | undefined;
type Rows = Readonly<Record<number, Readonly<Record<number, CellLike>> | null | undefined>>;
type Sheet = { readonly getCellRaw: (row: number, column: number) => CellLike };
type Book = { readonly getSheetBySheetId: (id: string) => Sheet | null | undefined };
type Model = {
  readonly _univerInstanceService: { readonly getUnit: (id: string) => Book | null | undefined };
  updateFormulaData: (book: string, sheet: string, cells: Rows) => object;
};

const mended = new WeakSet<object>();

/**
 * Mends what the engine does before cells are written. It looks through every cell of every sheet for formulas, even
 * where plain values come in place of plain values: writing a long column in blocks took a time that grew with its
 * square, and held up whoever wanted to give it up. Touches a private field: a test holds it.
 */
export function patchFormulaData(engine: Engine): void {
  const model = (engine.FormulaDataModel as unknown as { readonly prototype: Model }).prototype;
  const { version } = engine.UniverFormulaEnginePlugin as unknown as { readonly version: string };
  if (version !== PATCHED_RELEASE || mended.has(model)) return;
  mended.add(model);
  const whole = model.updateFormulaData;
  model.updateFormulaData = function (this: Model, book, sheet, cells) {
    const standing = this._univerInstanceService.getUnit(book)?.getSheetBySheetId(sheet);
    return standing && !touchFormula(standing, cells) ? {} : whole.call(this, book, sheet, cells);
  };
}

const isFormula = (cell: CellLike): boolean => Boolean(cell?.f) || Boolean(cell?.si);

/** Whether a formula is among the cells that come, or among those in whose place they come. */
function touchFormula(standing: Sheet, cells: Rows): boolean {
  for (const [row, columns] of Object.entries(cells)) {
    for (const [column, cell] of Object.entries(columns ?? {}))
      if (isFormula(cell) || isFormula(standing.getCellRaw(Number(row), Number(column)))) return true;
  }
  return false;
}
