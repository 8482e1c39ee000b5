import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import type { Sheet } from '../../../src/report/sheet.ts';
import { excelProblem } from './problems.ts';
import { requirementsMet } from './requirements.ts';

/** Opens a workbook of its own, made from sheets; the writer of files is loaded when it is needed. */
export async function newExcelWorkbook(sheets: readonly Sheet[]): Promise<Outcome<void>> {
  const met = requirementsMet();
  if (!met.ok) return met;
  const { sheetsFile } = await import('../xlsx/newFile.ts');
  try {
    await Excel.createWorkbook(base64(await sheetsFile(sheets)));
    return answer(undefined);
  } catch (error) {
    return excelProblem(error);
  }
}

/** Excel would open a copy in another window, with the pane left behind at the original. */
export function copyByHand(): Outcome<never> {
  return problem('badInput', 'copyByHand', 'workbook');
}

function base64(bytes: Uint8Array): string {
  let text = '';
  // A call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 8_192)
    text += String.fromCharCode(...bytes.subarray(at, at + 8_192));
  return btoa(text);
}
