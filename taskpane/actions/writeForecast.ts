import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import type { Sheet } from '../../src/report/sheet.ts';
import type { Work, WorkbookInfo } from '../host/sheetHost.ts';
import type { Home, Session } from '../session.ts';
import { FORECAST_FILE, WRITING_FORECAST, writtenApart, writtenSentence } from '../text/paneText.ts';
import { homeChosen } from './home.ts';
import { askPlan } from './makePlan.ts';
import { underway } from './underway.ts';

/** Writes the forecast's sheets under names of their own, where the user wants them. */
export async function writeForecast(session: Session): Promise<void> {
  const home = await homeChosen(session);
  if (home === undefined) return;
  const said = await underway(session, WRITING_FORECAST, (work) => written(session, home, work));
  if (said !== undefined) session.notice.value = { kind: 'done', text: said };
}

async function written(session: Session, home: Home, work: Work): Promise<Outcome<string>> {
  const info = await session.host.workbook();
  if (!info.ok) return info;
  const plan = await askPlan(session, work.signal);
  if (!plan.ok) return plan;
  const sheets = await forecast(session, info.value, home, work);
  if (!sheets.ok) return sheets;
  const names = sheets.value.map(({ name }) => name);
  const file = FORECAST_FILE(info.value.fileName);
  const done =
    home === 'own'
      ? await session.host.newWorkbook(file, sheets.value)
      : await session.host.addSheets(sheets.value, work);
  return andThen(done, () => answer(home === 'own' ? writtenApart(file, names) : writtenSentence(names)));
}

function forecast(
  { computing, madeBy, where }: Session,
  { sheets, fileName, warnings }: WorkbookInfo,
  home: Home,
  { signal }: Work,
): Promise<Outcome<Sheet[]>> {
  const source = { madeBy, fileName, tab: where.value?.sheet ?? '', warnings };
  const taken = home === 'own' ? [] : sheets.map(({ name }) => name);
  return computing.ask('forecast', { taken, source }, signal);
}
