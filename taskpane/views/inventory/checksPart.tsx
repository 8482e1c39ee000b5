import type { CheckGroup } from '../../../src/inventory/rowsToCheck.ts';
import { decisionsFor } from '../../../src/inventory/decisions.ts';
import { selectExample } from '../../actions/selectExample.ts';
import { changeSettings } from '../../actions/settings.ts';
import { writeSheet } from '../../actions/writeSheets.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { CHECKS } from './text.ts';

/** Everything doubtful, by cause; what moves the answer most stands first. */
export function ChecksPart({ session }: { readonly session: Session }) {
  const reading = session.reading.value;
  if (reading === undefined) return null;
  const { groups } = reading;
  const rows = groups.reduce((sum, { count }) => sum + count, 0);
  const weights = [...new Set(groups.map(({ weight }) => weight))];
  return (
    <FoldedPart title={CHECKS.title} state={CHECKS.state(rows, groups.length)} open>
      <p>{CHECKS.lead}</p>
      {groups.length > 0 && <WriteChecks session={session} />}
      {weights.map((weight) => (
        <section key={weight} aria-label={CHECKS.effects[weight]}>
          <h4>{CHECKS.effects[weight]}</h4>
          <ul class="causes">
            {groups
              .filter((group) => group.weight === weight)
              .map((group) => (
                <li key={`${group.kind} ${group.cause}`}>
                  <Cause session={session} group={group} />
                </li>
              ))}
          </ul>
        </section>
      ))}
    </FoldedPart>
  );
}

function WriteChecks({ session }: { readonly session: Session }) {
  const write = (): Promise<void> =>
    writeSheet(session, CHECKS.writing, CHECKS.sheetName, (name, { signal }) =>
      session.computing.ask('checks', { name, tab: session.where.value?.sheet ?? '' }, signal),
    );
  return (
    <>
      <button type="button" class="secondary" aria-describedby="checksHint" onClick={() => void write()}>
        {CHECKS.write}
      </button>
      <small id="checksHint">{CHECKS.writeHint}</small>
    </>
  );
}

type OfGroup = { readonly session: Session; readonly group: CheckGroup };

function Cause({ session, group }: OfGroup) {
  const { kind, cause, count, ifNothing } = group;
  return (
    <details class="cause">
      <summary>
        <strong>{kind}</strong>
        {cause !== kind && <span> · {cause}</span>} <span class="count">{CHECKS.count(count)}</span>
      </summary>
      <p>
        {CHECKS.ifNothing} {ifNothing}.
      </p>
      <Examples session={session} group={group} />
      <Decisions session={session} group={group} />
    </details>
  );
}

function Examples({ session, group }: OfGroup) {
  return (
    <ul class="examples" aria-label={CHECKS.examples}>
      {group.examples.map((finding) => (
        <li key={`${finding.sheet} ${finding.row} ${finding.given}`}>
          <button type="button" class="inline outline" onClick={() => void selectExample(session, finding)}>
            {CHECKS.go(finding.row, finding.sheet)}
          </button>{' '}
          {finding.column !== '' && `${finding.column}: `}
          {finding.given}
          {finding.done !== group.ifNothing && <span class="done"> ({finding.done})</span>}
        </li>
      ))}
    </ul>
  );
}

function Decisions({ session, group }: OfGroup) {
  const decisions = decisionsFor(group);
  if (decisions.length === 0) return null;
  return (
    <div role="group" aria-label={CHECKS.decide} class="decisions">
      <p>{CHECKS.decide}</p>
      {decisions.map(({ label, change }) => (
        <button
          key={label}
          type="button"
          class="outline"
          onClick={() => void changeSettings(session, change)}
        >
          {label}
        </button>
      ))}
    </div>
  );
}
