import type { CellFunction } from './list.ts';
import { functions } from './list.ts';
import { isCellError } from './cell.ts';
import type { Cell } from './cell.ts';

/** The two errors that carry a sentence in Excel, by the code that a cell shows. */
const ERROR_CODES: Readonly<Record<string, CustomFunctions.ErrorCode>> = {
  '#VALUE!': '#VALUE!' as CustomFunctions.ErrorCode,
  '#N/A': '#N/A' as CustomFunctions.ErrorCode,
};

type ExcelError = { readonly code: string; readonly message?: string };

const isExcelError = (value: unknown): value is ExcelError =>
  typeof value === 'object' && value !== null && 'code' in value;

/** A value as Excel hands it over, in the functions' own terms: errors keep their code. */
function fromExcel(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(fromExcel);
  return isExcelError(value) ? { error: value.code, message: value.message ?? '' } : value;
}

/** An answer in Excel's terms: only #VALUE! and #N/A carry their sentence. */
function toExcel(cell: Cell): unknown {
  if (!isCellError(cell)) return cell;
  const code = ERROR_CODES[cell.error] ?? (cell.error as CustomFunctions.ErrorCode);
  return new CustomFunctions.Error(code, cell.message === '' ? undefined : cell.message);
}

/** A cell function as Excel calls it. Excel puts one object of its own behind the arguments, which none declares. */
export function forExcel({ run }: CellFunction): (...given: unknown[]) => unknown[][] {
  return (...given) => run(...given.map(fromExcel)).map((row) => row.map(toExcel));
}

for (const each of functions) CustomFunctions.associate(each.id, forExcel(each));
