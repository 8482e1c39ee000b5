import { recordStartOpen } from '../../actions/recordStart.ts';
import { RecordStartLine } from '../../parts/recordStartLine.tsx';
import { RecordStartQuestion } from '../../parts/recordStartQuestion.tsx';
import { ViewHelp } from '../../parts/viewHelp.tsx';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { VIEW_NAMES } from '../../text/paneText.ts';
import { ComparePart } from './comparePart.tsx';
import { PlanInputs } from './inputs.tsx';
import { useLivePlan } from './livePlan.ts';
import './plan.css';
import { PlanProblem } from './planProblem.tsx';
import { PlanRequest, PlanResult } from './planResult.tsx';
import { NO_INVENTORY, TO_INVENTORY } from '../../text/planText.ts';
import { WritePart } from './writePart.tsx';

/** The plan view: what to order next, when, and what it costs. */
export function PlanView({ session }: { readonly session: Session }) {
  useLivePlan(session);
  return (
    <>
      <h2>{VIEW_NAMES.plan}</h2>
      <ViewHelp of="plan" />
      <Planned session={session} />
    </>
  );
}

function Planned({ session }: { readonly session: Session }) {
  if (session.reading.value === undefined) return <NothingRead session={session} />;
  if (recordStartOpen(session)) return <RecordStartQuestion session={session} />;
  const plan = session.plan.value;
  const { dateShown } = settingsInForce(session);
  return (
    <div class="planned">
      <RecordStartLine session={session} />
      <div class="planRequest">
        <PlanProblem session={session} />
        {plan && <PlanRequest plan={plan} dateShown={dateShown} />}
      </div>
      <PlanInputs session={session} />
      <div class="planResult">
        {plan && <PlanResult plan={plan} dateShown={dateShown} />}
        {plan && <ComparePart session={session} plan={plan} />}
        {plan && <WritePart session={session} />}
      </div>
    </div>
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
