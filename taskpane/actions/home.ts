import { problemText } from '../../src/basics/problemText.ts';
import type { Home, Session } from '../session.ts';

const HOMES: readonly Home[] = ['here', 'copy', 'own'];

/** Where the pane can write: Excel would open a copy in another window and leave the pane behind. */
export function homesOf({ host }: Session): readonly Home[] {
  return host.kind === 'excel' ? HOMES.filter((home) => home !== 'copy') : HOMES;
}

/**
 * Where what the pane writes goes: what the user said before, else they are asked now and may decline. A copy is
 * made at once, so that nothing of theirs is touched from then on.
 * @returns their choice, or undefined where they decline or no copy can be made
 */
export async function homeChosen(session: Session): Promise<Home | undefined> {
  if (session.home.value !== undefined) return session.home.value;
  const home = await asked(session);
  if (home === 'copy' && !(await copied(session))) return undefined;
  session.home.value = home;
  return home;
}

/** Puts the question; whoever asked before is told that it was declined. */
async function asked({ homeAsked }: Session): Promise<Home | undefined> {
  homeAsked.value?.(undefined);
  let answered: (home: Home | undefined) => void = () => undefined;
  const home = await new Promise<Home | undefined>((resolve) => {
    answered = resolve;
    homeAsked.value = answered;
  });
  // Asked again meanwhile, as after a double click: that question must stay.
  if (homeAsked.value === answered) homeAsked.value = undefined;
  return home;
}

async function copied({ host, notice, workbook }: Session): Promise<boolean> {
  const copy = await host.workInCopy();
  if (!copy.ok) notice.value = { kind: 'problem', text: problemText(copy.problem) };
  const info = await host.workbook();
  if (info.ok) workbook.value = info.value;
  return copy.ok;
}
