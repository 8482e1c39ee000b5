import '@picocss/pico/css/pico.conditional.min.css';
import { readHere } from './actions/readInventory.ts';
import type { SheetHost } from './host/sheetHost.ts';
import { mountPane } from './pane.tsx';
import type { Session } from './session.ts';
import { newSession } from './session.ts';
import { surroundingsOf } from './surroundings.ts';

/** Draws the pane beside a workbook that is open, and reads the inventory where the user stands. */
export function openPane(element: Element, host: SheetHost): Session {
  const session = newSession(surroundingsOf(host));
  host.onSelect((at) => (session.selected.value = at));
  mountPane(element, session);
  void readHere(session);
  return session;
}
