import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import type { HostCell } from './sheetHost.ts';
import { readWorkbookFile } from './workbookFile.ts';

/** The rows of a sheet of another workbook file, by its name; undefined where it has no such sheet. */
export async function sheetOfFile(
  file: { readonly name: string; readonly bytes: Uint8Array },
  sheet: string,
): Promise<Outcome<readonly (readonly HostCell[])[] | undefined>> {
  return andThen(await readWorkbookFile(file.bytes, file.name), ({ sheets }) =>
    answer(sheets.find(({ name }) => name.trim().toLowerCase() === sheet.toLowerCase())?.rows),
  );
}
