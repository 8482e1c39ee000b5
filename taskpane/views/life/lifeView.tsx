import './life.css';
import { useEffect } from 'preact/hooks';
import { showLife } from '../../actions/showLife.ts';
import { giveSetting } from '../../actions/giveSetting.ts';
import type { LifeShown } from '../../computing/lifeAnswer.ts';
import { recordStartOpen } from '../../actions/recordStart.ts';
import { RecordStartLine } from '../../parts/recordStartLine.tsx';
import { RecordStartQuestion } from '../../parts/recordStartQuestion.tsx';
import { ViewHelp } from '../../parts/viewHelp.tsx';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { VIEW_NAMES } from '../../text/paneText.ts';
import { Causes } from './causes.tsx';
import { Claims } from './claims.tsx';
import { OwnPast, StandsOut } from './evidence.tsx';
import { Groups } from './groups.tsx';
import { LifePlot } from './lifePlot.tsx';
import { LifeWords } from './lifeWords.tsx';
import { RuleOfThumb } from './ruleOfThumb.tsx';
import { Steady } from './steady.tsx';
import { NO_INVENTORY, TO_INVENTORY, USE } from '../../text/lifeText.ts';

/** How long batteries last here, and why that can be believed. Nothing is fitted before the first question is answered. */
export function LifeView({ session }: { readonly session: Session }) {
  const reading = session.reading.value;
  const open = recordStartOpen(session);
  const answered = reading !== undefined && !open;
  useEffect(() => {
    if (answered) void showLife(session);
  }, [reading, answered]);
  return (
    <>
      <h2>{VIEW_NAMES.life}</h2>
      <ViewHelp of="life" />
      {reading === undefined && <NothingRead session={session} />}
      {reading !== undefined && open && <RecordStartQuestion session={session} />}
      {answered && <Answered session={session} />}
    </>
  );
}

function NothingRead({ session }: { readonly session: Session }) {
  return (
    <>
      <p>{NO_INVENTORY}</p>
      <button type="button" onClick={() => (session.view.value = 'inventory')}>
        {TO_INVENTORY}
      </button>
    </>
  );
}

function Answered({ session }: { readonly session: Session }) {
  const shown = session.life.value;
  return (
    <>
      <RecordStartLine session={session} />
      {session.reading.value?.recordStart.from === 'never' && <Steady session={session} />}
      {shown && <LifeWords life={shown.life} />}
      {shown && <LifePlot picture={shown.picture} />}
      <Causes session={session} />
      {shown && <Shown session={session} shown={shown} />}
    </>
  );
}

function Shown({ session, shown }: { readonly session: Session; readonly shown: LifeShown }) {
  return (
    <>
      <RuleOfThumb session={session} />
      <Groups groups={shown.groups} />
      <OwnPast trials={shown.ownPast} dateShown={settingsInForce(session).dateShown} />
      <StandsOut found={shown.standsOut} />
      <Claims session={session} />
      <Use session={session} shown={shown} />
    </>
  );
}

function Use({ session, shown }: { readonly session: Session; readonly shown: LifeShown }) {
  const use = (groupBy: string | null): void => {
    giveSetting(session, 'groupBy', groupBy);
    session.view.value = 'plan';
  };
  return (
    <section aria-labelledby="useForPlanning">
      <h3 id="useForPlanning">{USE.heading}</h3>
      <p>{USE.hint}</p>
      <button type="button" onClick={() => use(null)}>
        {USE.pooled}
      </button>
      {shown.groups.map(({ by }) => (
        <button key={by} type="button" class="secondary" onClick={() => use(by)}>
          {USE.by[by]}
        </button>
      ))}
    </section>
  );
}
