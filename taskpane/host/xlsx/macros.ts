import type { Package } from './package.ts';
import { removeRelations, setFullType, workbookPath } from './parts.ts';

const PLAIN_WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml';

/** Kinds of relations that hold programs, or signatures of a file that is about to change. */
const PROGRAMS = ['vbaProject', 'xlMacrosheet', 'wordVbaData'];
const SIGNATURES = ['origin', 'digital-signature/origin'];

/** Takes out what an .xlsx may not hold: macros, and signatures that would not be true any more. */
export async function withoutMacros(parts: Package): Promise<void> {
  const book = await workbookPath(parts);
  await removeRelations(parts, book, ({ kind }) => PROGRAMS.includes(kind));
  await removeRelations(parts, '', ({ kind, target }) => SIGNATURES.includes(kind) && /sig/i.test(target));
  await setFullType(parts, book, PLAIN_WORKBOOK);
}
