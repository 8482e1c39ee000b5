import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import type { Sheet } from '../../src/report/sheet.ts';
import { freeSheetName } from '../../src/report/sheetName.ts';
import type { Work } from '../host/sheetHost.ts';
import type { Home, Session } from '../session.ts';
import { writtenApart, writtenSentence } from '../text/paneText.ts';
import { homeChosen } from './home.ts';
import { underway } from './underway.ts';

/**
 * Writes a sheet under a name that is free, where the user wants it: into what is open, or a workbook of its own.
 * @param what  said while it is under way
 * @param wanted  the name that it has where it is free
 * @param made  makes the sheet under the name that it gets
 */
export async function writeSheet(
  session: Session,
  what: string,
  wanted: string,
  made: (name: string, work: Work) => Promise<Outcome<Sheet>>,
): Promise<void> {
  const home = await homeChosen(session);
  if (home === undefined) return;
  const said = await underway(session, what, (work) => written(session, home, wanted, made, work));
  if (said !== undefined) session.notice.value = { kind: 'done', text: said };
}

async function written(
  { host }: Session,
  home: Home,
  wanted: string,
  made: (name: string, work: Work) => Promise<Outcome<Sheet>>,
  work: Work,
): Promise<Outcome<string>> {
  const info = await host.workbook();
  if (!info.ok) return info;
  const { sheets, fileName } = info.value;
  const taken = home === 'own' ? [] : sheets.map(({ name }) => name);
  const sheet = await made(freeSheetName(wanted, taken), work);
  if (!sheet.ok) return sheet;
  const file = `${fileName.replace(/\.[^.]*$/, '')} ${wanted.toLowerCase()}.xlsx`;
  const done =
    home === 'own' ? await host.newWorkbook(file, [sheet.value]) : await host.addSheets([sheet.value], work);
  const names = [sheet.value.name];
  return andThen(done, () => answer(home === 'own' ? writtenApart(file, names) : writtenSentence(names)));
}
