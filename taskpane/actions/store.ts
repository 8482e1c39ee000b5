import { answer } from '../../src/basics/outcome.ts';
import type { ShelfCount } from '../../src/inventory/countShelf.ts';
import type { Compared, CountAsked } from '../computing/storeAnswers.ts';
import type { Session } from '../session.ts';
import { COMPARE_FILES, COUNT, STORE } from '../text/storeText.ts';
import { underway } from './underway.ts';
import { writeSheet } from './writeSheets.ts';

/** Writes the storekeeper's list as a new sheet. */
export async function writeStoreList(session: Session): Promise<void> {
  const { computing, madeBy, workbook, where } = session;
  const head = { madeBy, fileName: workbook.value?.fileName ?? '', tab: where.value?.sheet ?? '' };
  await writeSheet(session, STORE.writing, STORE.listName, (name, { signal }) =>
    computing.ask('storeList', { ...head, name }, signal),
  );
}

/** Sets the scans of a shelf against the inventory; nothing is written. */
export function countOnShelf(session: Session, asked: CountAsked): Promise<ShelfCount | undefined> {
  return underway(session, COUNT.counting, ({ signal }) => session.computing.ask('count', asked, signal));
}

/** Sets an earlier file beside the inventory; nothing is written. */
export function compareWith(session: Session, file: File): Promise<Compared | undefined> {
  return underway(session, COMPARE_FILES.comparing, async ({ signal }) => {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const tab = session.where.value?.sheet ?? '';
    const compared = await session.computing.ask('compare', { name: file.name, bytes, tab }, signal);
    return compared.ok ? answer(compared.value) : compared;
  });
}
