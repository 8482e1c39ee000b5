import { render } from 'preact';
import './pane.css';
import { followSettings } from './actions/followSettings.ts';
import { readAgain } from './actions/readInventory.ts';
import { AsOfField } from './parts/asOfField.tsx';
import { HomeQuestion } from './parts/homeQuestion.tsx';
import { NoticeLine } from './parts/noticeLine.tsx';
import { ProgressLine } from './parts/progressLine.tsx';
import { QuestionBox } from './parts/questionBox.tsx';
import { ViewLinks } from './parts/viewLinks.tsx';
import type { Session } from './session.ts';
import { VIEW_NAMES } from './text/paneText.ts';
import { openView } from './views/laterViews.ts';

function Pane({ session }: { readonly session: Session }) {
  const view = session.view.value;
  const Open = openView(session);
  return (
    <div class="pico pane">
      <ViewLinks session={session} />
      <AsOfField session={session} onChange={() => void readAgain(session)} />
      <ProgressLine session={session} />
      <NoticeLine session={session} />
      <HomeQuestion session={session} />
      <QuestionBox session={session} />
      <section aria-label={VIEW_NAMES[view]} class={`view ${view}`}>
        {Open && <Open session={session} />}
      </section>
    </div>
  );
}

/** Draws the pane into an element; it follows the session from then on. */
export function mountPane(element: Element, session: Session): void {
  followSettings(session);
  render(<Pane session={session} />, element);
}
