import { readFileSync } from 'node:fs';
import { readWorkbookFile } from '../../taskpane/host/xlsx/workbookFile.ts';
import type { Program } from '../excel/program.ts';
import type { Value } from '../excel/workbookModel.ts';
import { ROOT } from '../house/sourceFiles.ts';

const NAME = 'norrfell-inventory.xlsx';
const ROWS = 300;

/** What types the first rows of the demonstration inventory into the first sheet. */
export async function demoTyper(): Promise<(program: Program) => void> {
  const file = await readWorkbookFile(readFileSync(`${ROOT}docs/demo/${NAME}`), NAME);
  if (!file.ok) throw new Error(`${NAME} can’t be read`);
  const { rows, dateCells } = file.value.sheets[0]!;
  const typed = rows.slice(0, ROWS).map((row) => row.map((cell) => (cell ?? '') as Value));
  return ({ workbook }) => {
    const sheet = workbook.sheets[0]!;
    typed.forEach((row, index) => (sheet.cells[index] = [...row]));
    for (const column of dateCells.keys()) {
      const block = { row: 0, column, rows: ROWS, columns: 1 };
      sheet.looks.push({ property: 'numberFormat', block, value: 'yyyy-mm-dd' });
    }
  };
}
