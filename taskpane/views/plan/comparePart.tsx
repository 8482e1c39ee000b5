import { useState } from 'preact/hooks';
import type { ShownPlan } from '../../computing/planAnswer.ts';
import { LabelledControl } from '../../parts/settingField.tsx';
import { WideTable } from '../../parts/wideTable.tsx';
import type { Session } from '../../session.ts';
import { compareTable } from './comparePlans.ts';
import { besideNow, COMPARE, keptSentence, RESULT } from '../../text/planText.ts';

/** Keeps a plan under a name, and shows it beside the one that stands now. */
export function ComparePart({ session, plan }: { readonly session: Session; readonly plan: ShownPlan }) {
  const kept = session.kept.value;
  return (
    <>
      <h3>{RESULT.compare}</h3>
      <KeepForm session={session} plan={plan} />
      <p role="status">{kept && `${keptSentence(kept.name)} ${kept.plan === plan ? COMPARE.change : ''}`}</p>
      {kept && kept.plan !== plan && (
        <WideTable caption={besideNow(kept.name)} {...compareTable(kept.name, kept.plan, plan)} />
      )}
      {kept && (
        <button type="button" class="secondary" onClick={() => (session.kept.value = undefined)}>
          {COMPARE.drop}
        </button>
      )}
    </>
  );
}

function KeepForm({ session, plan }: { readonly session: Session; readonly plan: ShownPlan }) {
  const [name, setName] = useState<string>(COMPARE.usual);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        session.kept.value = { name: name.trim() || COMPARE.usual, plan };
      }}
    >
      <LabelledControl label={COMPARE.name} hint={undefined} wrong={undefined}>
        {(props) => (
          <input
            {...props}
            type="text"
            value={name}
            onInput={({ currentTarget }) => setName(currentTarget.value)}
          />
        )}
      </LabelledControl>
      <button type="submit" class="secondary">
        {COMPARE.keep}
      </button>
    </form>
  );
}
