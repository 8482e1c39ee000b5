import { useEffect, useRef } from 'preact/hooks';
import type { Session } from '../session.ts';
import { homesOf } from '../actions/home.ts';
import { COPY_BY_HAND, DECLINE_HOME, HOME_HINT, HOME_QUESTION, HOME_WORDS } from '../text/paneText.ts';
import { firstClick } from './firstClick.ts';

/** Asked once, before anything is added to the user's workbook. */
export function HomeQuestion({ session }: { readonly session: Session }) {
  const answered = session.homeAsked.value;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [answered]);
  if (answered === undefined) return null;
  return (
    <section class="homeQuestion" aria-labelledby="homeQuestion">
      <h2 id="homeQuestion" tabIndex={-1} ref={heading}>
        {HOME_QUESTION}
      </h2>
      <p>{HOME_HINT}</p>
      {!homesOf(session).includes('copy') && <p>{COPY_BY_HAND}</p>}
      {homesOf(session).map((home) => (
        <button key={home} type="button" onClick={firstClick(() => answered(home))}>
          {HOME_WORDS[home]}
        </button>
      ))}
      <button type="button" class="secondary" onClick={firstClick(() => answered(undefined))}>
        {DECLINE_HOME}
      </button>
    </section>
  );
}
