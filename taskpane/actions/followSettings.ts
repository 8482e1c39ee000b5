import { effect } from '@preact/signals';
import { problemText } from '../../src/basics/problemText.ts';
import type { Session } from '../session.ts';
import { hasSettingsSheet, writeSettingsSheet } from './settings.ts';

/** A change often comes with another: the sheet is written when the user rests for so long [ms]. */
const REST = 400;

/**
 * Keeps the workbook's sheet of settings as the pane has them, where the user has said that it may be written.
 * @returns what ends it
 */
export function followSettings(session: Session, rest = REST): () => void {
  let last: readonly [unknown, unknown] = [session.given.value, session.asOf.value];
  let timer: ReturnType<typeof setTimeout> | undefined;
  const end = effect(() => {
    const now = [session.given.value, session.asOf.value] as const;
    if (now[0] === last[0] && now[1] === last[1]) return;
    last = now;
    clearTimeout(timer);
    timer = setTimeout(() => void keep(session), rest);
  });
  return () => {
    clearTimeout(timer);
    end();
  };
}

async function keep(session: Session): Promise<void> {
  const home = session.home.value;
  if ((home !== 'here' && home !== 'copy') || !hasSettingsSheet(session) || !session.settings.value.ok)
    return;
  const written = await writeSettingsSheet(session);
  if (!written.ok) session.notice.value = { kind: 'problem', text: problemText(written.problem) };
}
