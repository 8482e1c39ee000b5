import type { CellStyle } from 'hucre/xlsx';
import { writeXlsx } from 'hucre/xlsx';
import type { Package } from './package.ts';
import { openPackage, partText, putText } from './package.ts';
import { addRelation, relationsOf, setContentType } from './parts.ts';
import type { WorkbookState } from './workbookState.ts';
import type { StylesPart } from './stylesPart.ts';

const PATH = 'xl/styles.xml';

/** Where the looks of a workbook are kept, and its text. A workbook without any gets the plainest there are. */
export async function openStyles(
  parts: Package,
  book: string,
): Promise<StylesPart & { readonly path: string }> {
  const path = (await relationsOf(parts, book)).find(({ kind }) => kind === 'styles')?.target;
  const text = path && (await partText(parts, path));
  if (path && text) return { path, text };
  const plain = openPackage(await writeXlsx({ sheets: [{ name: 'Empty', rows: [] }] }));
  await putText(parts, PATH, (await partText(plain, PATH))!);
  await setContentType(parts, PATH, 'styles');
  await addRelation(parts, book, 'styles', PATH);
  return { path: PATH, text: (await partText(parts, PATH))! };
}

const keys = new WeakMap<CellStyle, string>();

/** What a look is told from others by. */
export function lookKey(look: CellStyle): string {
  const known = keys.get(look);
  if (known !== undefined) return known;
  const key = JSON.stringify(look);
  keys.set(look, key);
  return key;
}

/** The looks of all changed cells, each once. */
export function looksOf({ sheets }: WorkbookState): Map<string, CellStyle> {
  const looks = new Map<string, CellStyle>();
  for (const { cells } of sheets)
    for (const { look } of cells) if (look !== undefined) looks.set(lookKey(look), look);
  return looks;
}
