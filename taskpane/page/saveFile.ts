import { problemText } from '../../src/basics/problemText.ts';
import { giveFile } from '../giveFile.ts';
import type { SaveAs, Saved } from '../host/workbook/builtInHost.ts';
import type { PageState } from './pageState.ts';
import { PAGE } from './pageText.ts';
import { duringWork, tellProblem } from './pageWork.ts';

export { giveFile };

/** Makes the file; what it would not have is shown before it is given to the user. */
export async function saveWorkbook(page: PageState, as: SaveAs): Promise<void> {
  page.question.value = undefined;
  const workbook = page.workbook.value;
  if (workbook === undefined) return;
  await duringWork(page, PAGE.saving, async (work) => {
    const made = await workbook.host.save(as, work);
    if (!made.ok) tellProblem(page, problemText(made.problem));
    else if (made.value.lost.length > 0) page.question.value = { kind: 'losses', saved: made.value, as };
    else giveSaved(page, made.value, as);
  });
}

/** Gives the finished file to the user. */
export function giveSaved(page: PageState, { bytes, fileName }: Saved, as: SaveAs): void {
  const name = savedName(fileName, as);
  giveFile(name, bytes);
  page.question.value = undefined;
  page.changed.value = false;
  page.message.value = { kind: 'done', text: `${PAGE.saved} ${name}.` };
}

/** What a saved file is called: values never take the place of the file with the formulas. */
function savedName(fileName: string, as: SaveAs): string {
  const stem = fileName.replace(/\.xlsx$/i, '');
  return as === 'formulas' || stem.endsWith(' as values') ? fileName : `${stem} as values.xlsx`;
}
