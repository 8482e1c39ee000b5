import { useEffect } from 'preact/hooks';
import { showLife } from '../../actions/showLife.ts';
import { giveSetting } from '../../actions/giveSetting.ts';
import type { LifeShown } from '../../computing/lifeAnswer.ts';
import { RecordStartQuestion } from '../../parts/recordStartQuestion.tsx';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { VIEW_NAMES } from '../../text.ts';
import { Causes } from './causes.tsx';
import { Claims } from './claims.tsx';
import { OwnPast, StandsOut } from './evidence.tsx';
import { Groups } from './groups.tsx';
import { LifePlot } from './lifePlot.tsx';
import { LifeWords } from './lifeWords.tsx';
import { RuleOfThumb } from './ruleOfThumb.tsx';
import { Steady } from './steady.tsx';
import { NO_INVENTORY, USE } from './text.ts';

/** How long batteries last here, and why that can be believed. */
export function LifeView({ session }: { readonly session: Session }) {
  const reading = session.reading.value;
  const answered = reading !== undefined && isAnswered(session);
  useEffect(() => {
    if (answered) void showLife(session);
  }, [reading, answered]);
  return (
    <>
      <h2>{VIEW_NAMES.life}</h2>
      {reading === undefined && <p>{NO_INVENTORY}</p>}
      {reading !== undefined && <RecordStartQuestion session={session} />}
      {answered && <Causes session={session} />}
      {answered && reading.recordStart.from === 'never' && <Steady session={session} />}
      {answered && session.life.value && <Shown session={session} shown={session.life.value} />}
    </>
  );
}

/** Nothing is fitted before it is known since when removals are on record. */
function isAnswered(session: Session): boolean {
  const from = session.reading.value?.recordStart.from;
  return settingsInForce(session).recordsSince !== undefined || from === 'column';
}

function Shown({ session, shown }: { readonly session: Session; readonly shown: LifeShown }) {
  return (
    <>
      <LifeWords life={shown.life} />
      <LifePlot picture={shown.picture} />
      <RuleOfThumb session={session} />
      <Groups groups={shown.groups} />
      <OwnPast trials={shown.ownPast} />
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
