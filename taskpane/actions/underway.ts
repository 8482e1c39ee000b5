import { batch } from '@preact/signals';
import type { Outcome } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';
import type { Work } from '../host/sheetHost.ts';
import type { Notice, Session } from '../session.ts';
import { FAULT, GIVEN_UP, GIVING_UP } from '../text/paneText.ts';

/** One step of an action: it may be followed and given up. */
type Step<T> = (work: Work) => Promise<Outcome<T>>;

/**
 * Does a piece of work: shows that it is under way, lets the user give it up, and says what went wrong.
 * @returns what came of it, or undefined where it was refused, given up or failed: the notice says which
 */
export async function underway<T>(session: Session, what: string, step: Step<T>): Promise<T | undefined> {
  session.underway.value?.giveUp();
  const control = new AbortController();
  const giveUp = (): void => {
    control.abort(new DOMException(GIVEN_UP, 'AbortError'));
    // What was written is taken back piece by piece: the click must be seen before that is done.
    if (session.underway.value?.giveUp === giveUp)
      session.underway.value = { what: GIVING_UP, share: undefined, giveUp };
  };
  const show = (share?: number): void => {
    if (!control.signal.aborted) session.underway.value = { what, share, giveUp };
  };
  show();
  session.notice.value = undefined;
  try {
    const outcome = await step({ signal: control.signal, progress: show });
    if (outcome.ok) return outcome.value;
    session.notice.value = { kind: 'problem', text: problemText(outcome.problem) };
  } catch (error) {
    // Work that another has taken the place of has nothing more to say.
    if (session.underway.value?.giveUp === giveUp) session.notice.value = faultNotice(what, error, control);
  } finally {
    // Work that another has taken the place of must not hide it.
    batch(() => {
      if (session.underway.value?.giveUp === giveUp) session.underway.value = undefined;
    });
  }
  return undefined;
}

function faultNotice(what: string, error: unknown, { signal }: AbortController): Notice {
  if (signal.aborted) return { kind: 'done', text: `${what}: ${GIVEN_UP}` };
  return { kind: 'problem', text: `${FAULT} (${error instanceof Error ? error.message : String(error)})` };
}
