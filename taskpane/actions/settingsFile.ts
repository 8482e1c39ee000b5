import { problemText } from '../../src/basics/problemText.ts';
import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer, problem } from '../../src/basics/outcome.ts';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import { settingsFrom } from '../../src/inventory/settings.ts';
import { SETTINGS_SHEET, settingsFromRows } from '../../src/inventory/settingsRows.ts';
import type { Session } from '../session.ts';
import { readAgain } from './readInventory.ts';

/** A file that the user chose. */
export type ChosenFile = { readonly name: string; readonly bytes: Uint8Array };

/** Gives the user a file of what they have said: the same that the plan command reads. */
export function saveSettingsFile({ given, workbook, saveFile }: Session): void {
  const name = (workbook.value?.fileName ?? 'crankbook').replace(/\.[^.]*$/, '');
  saveFile(`${name} settings.json`, `${JSON.stringify({ version: 1, ...given.value }, null, 2)}\n`);
}

/** Takes the settings of a settings file, or of the settings sheet of another workbook, in place of all before. */
export async function takeSettings(session: Session, file: ChosenFile): Promise<void> {
  const given = await settingsIn(session, file);
  if (!given.ok) {
    session.notice.value = { kind: 'problem', text: problemText(given.problem) };
    return;
  }
  // The sheet of this workbook stands, whatever it was called where the settings come from.
  const { tab: _, ...settings } = given.value;
  session.taken.value = { from: file.name, columns: [] };
  session.given.value = settings;
  await readAgain(session);
}

async function settingsIn(session: Session, file: ChosenFile): Promise<Outcome<GivenSettings>> {
  const raw = /\.(xlsx|xlsm)$/i.test(file.name) ? await fromSheet(session, file) : fromText(file);
  return andThen(raw, (given) => andThen(settingsFrom(given), () => answer(given as GivenSettings)));
}

function fromText({ name, bytes }: ChosenFile): Outcome<unknown> {
  try {
    return answer(JSON.parse(new TextDecoder().decode(bytes)) as unknown);
  } catch {
    return problem('badInput', 'settingsNotJson', 'settings', name);
  }
}

async function fromSheet({ sheetOfFile }: Session, file: ChosenFile): Promise<Outcome<unknown>> {
  const rows = (await sheetOfFile?.(file, SETTINGS_SHEET)) ?? answer(undefined);
  return andThen(rows, (found) =>
    found === undefined
      ? problem('missing', 'noSettingsSheet', 'settings', file.name, { more: { sheet: SETTINGS_SHEET } })
      : settingsFromRows(found),
  );
}
