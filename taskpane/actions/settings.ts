import { problemText } from '../../src/basics/problemText.ts';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import { settingsFrom } from '../../src/inventory/settings.ts';
import { changedSettings, SETTINGS_SHEET } from '../../src/inventory/settingsRows.ts';
import { AS_OF_CELL, AS_OF_NAME, settingsSheet } from '../../src/report/settingsSheet.ts';
import type { Outcome } from '../../src/basics/outcome.ts';
import { answer } from '../../src/basics/outcome.ts';
import type { SettingPath } from '../givenSettings.ts';
import type { Session } from '../session.ts';
import { settingsInForce } from '../session.ts';
import { giveSetting } from './giveSetting.ts';
import { stillThere } from './stillThere.ts';
import { readAgain } from './readInventory.ts';

/** Puts a change over what the user has said, and counts the inventory anew; what is not allowed changes nothing. */
export async function changeSettings(session: Session, change: GivenSettings): Promise<void> {
  const next = changedSettings(session.given.value, change);
  const checked = settingsFrom(next);
  if (!checked.ok) {
    session.notice.value = { kind: 'problem', text: problemText(checked.problem) };
    return;
  }
  session.given.value = next;
  await readAgain(session);
}

/** Gives one setting and counts the inventory anew. */
export async function giveAndRead(session: Session, path: SettingPath, value: unknown): Promise<void> {
  const wrong = giveSetting(session, path, value);
  if (wrong === undefined) await readAgain(session);
  else session.notice.value = { kind: 'problem', text: problemText(wrong) };
}

/** The sheet of settings, as sentences call it. */
export const SETTINGS_NAMED = `the sheet “${SETTINGS_SHEET}”`;

/** Whether the workbook has a sheet of settings. */
export function hasSettingsSheet({ workbook }: Session): boolean {
  return workbook.value?.sheets.some(({ name }) => name === SETTINGS_SHEET) === true;
}

/** Writes the settings on their sheet of the open workbook, with the cell that formulas take as-of from. */
export async function writeSettingsSheet(session: Session): Promise<Outcome<void>> {
  const sheet = settingsSheet(settingsInForce(session), session.asOf.value);
  const before = await session.host.workbook();
  const written = await session.host.replaceSheet(sheet);
  if (!written.ok) return written;
  const named = await session.host.nameCell({ name: AS_OF_NAME, at: { sheet: sheet.name, ...AS_OF_CELL } });
  if (!named.ok) return stillThere(named.problem, [SETTINGS_NAMED]);
  // The user stays where they were.
  if (before.ok && before.value.selected !== undefined) await session.host.select(before.value.selected);
  const info = await session.host.workbook();
  if (info.ok) session.workbook.value = info.value;
  return answer(undefined);
}
