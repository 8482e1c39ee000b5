import type { Work } from '../host/sheetHost.ts';
import { GIVEN_UP } from '../text/paneText.ts';
import type { PageState } from './pageState.ts';
import { faultText, PAGE } from './pageText.ts';

/** Does a piece of the page's own work, one at a time: shows that it is under way and lets the user give it up. */
export async function duringWork(
  page: PageState,
  what: string,
  step: (work: Work) => Promise<void>,
): Promise<void> {
  const busy = page.underway.value;
  if (busy !== undefined) return tellProblem(page, `${busy.what}: ${PAGE.busy}`);
  const control = new AbortController();
  const giveUp = (): void => control.abort(new DOMException(GIVEN_UP, 'AbortError'));
  const progress = (share?: number): void => {
    page.underway.value = { what, share, giveUp };
  };
  progress();
  page.message.value = undefined;
  try {
    await step({ signal: control.signal, progress });
  } catch (error) {
    if (control.signal.aborted) page.message.value = { kind: 'done', text: `${what}: ${GIVEN_UP}` };
    else tellProblem(page, faultText(error));
  } finally {
    page.underway.value = undefined;
  }
}

/** Says what is wrong, in the page's own place for it. */
export function tellProblem(page: PageState, text: string): void {
  page.message.value = { kind: 'problem', text };
}
