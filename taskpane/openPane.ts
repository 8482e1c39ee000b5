import '@picocss/pico/css/pico.conditional.min.css';
import './taskpane.css';
import { readHere } from './actions/readInventory.ts';
import { giveFile } from './giveFile.ts';
import type { SheetHost } from './host/sheetHost.ts';
import { mountPane } from './pane.tsx';
import type { Session } from './session.ts';
import { newSession } from './session.ts';
import { surroundingsOf } from './surroundings.ts';
import { FILE_GIVEN } from './text/paneText.ts';

/** Draws the pane beside a workbook that is open, and reads the inventory where the user stands. */
export function openPane(element: Element, host: SheetHost): Session {
  const session: Session = newSession({
    ...surroundingsOf(host),
    saveFile: (name, contents) => {
      giveFile(name, contents);
      session.notice.value = { kind: 'done', text: FILE_GIVEN(name) };
    },
  });
  host.onSelect((at) => (session.selected.value = at));
  mountPane(element, session);
  void readHere(session);
  return session;
}
