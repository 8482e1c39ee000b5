import type { Cell, CellError } from '../../functions/cell.ts';
import { isCellError } from '../../functions/cell.ts';
import type { CellFunction } from '../../functions/list.ts';

/** Calls a cell function as hosts do: single values where a range is declared, null for what is left out. */
export function call(run: CellFunction['run'], ...given: unknown[]): Cell[][] {
  return run(...given);
}

/** The error that a cell must hold. */
export function errorOf(cell: Cell | undefined): CellError {
  if (!isCellError(cell)) throw new Error(`no error but ${String(cell)}`);
  return cell;
}
