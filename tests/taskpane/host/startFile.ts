import { writeXlsx } from 'hucre/xlsx';
import type { StartSheet } from './contractWorkbook.ts';

/** The start sheets as a file that someone else might have written. */
export function startFile(sheets: readonly StartSheet[]): Promise<Uint8Array> {
  return writeXlsx({
    sheets: sheets.map(({ name, rows, dateColumns, table, hiddenRows, isProtected }) => ({
      name,
      rows: rows.map((row) => [...row]),
      cells: new Map(
        rows.flatMap((row, r) =>
          dateColumns
            .filter((c) => typeof row[c] === 'number')
            .map((c) => [`${r},${c}`, { value: row[c]!, style: { numFmt: 'yyyy-mm-dd' } }] as const),
        ),
      ),
      rowDefs: new Map(hiddenRows.map((row) => [row, { hidden: true }])),
      ...(table !== undefined && {
        tables: [
          {
            name: table,
            range: `A1:${'ABCDEF'[rows[0]!.length - 1]}${rows.length}`,
            columns: rows[0]!.map((head) => ({ name: String(head) })),
          },
        ],
      }),
      ...(isProtected && { protection: { sheet: true } }),
    })),
  });
}
