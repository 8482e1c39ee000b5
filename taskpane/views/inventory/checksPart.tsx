import type { CheckGroup } from '../../../src/inventory/rowsToCheck.ts';
import { decisionsFor } from '../../../src/inventory/decisions.ts';
import { selectExample } from '../../actions/selectExample.ts';
import { changeSettings } from '../../actions/settings.ts';
import { writeSheet } from '../../actions/writeSheets.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { CHECKS } from '../../text/inventoryText.ts';

/** Everything doubtful, by cause; what moves the answer most stands first. */
export function ChecksPart({ session }: { readonly session: Session }) {
  const reading = session.reading.value;
  if (reading === undefined) return null;
  const { groups } = reading;
  const heavy = groups.filter(({ weight }) => weight >= MOVING).length;
  const weights = [...new Set(groups.map(({ weight }) => weight))];
  return (
    <FoldedPart title={CHECKS.title} state={CHECKS.state(groups.length, heavy)} open>
      <p>{CHECKS.lead}</p>
      {groups.length > 0 && <WriteChecks session={session} />}
      {weights.map((weight) => (
        <Causes
          key={weight}
          session={session}
          weight={weight}
          groups={groups.filter((group) => group.weight === weight)}
        />
      ))}
    </FoldedPart>
  );
}

/** From this effect on a cause moves the answer as a whole. */
const MOVING = 4;

/** From this effect on causes are shown at once. */
const SHOWN_FROM = 4;

function Causes({
  session,
  weight,
  groups,
}: {
  readonly session: Session;
  readonly weight: number;
  readonly groups: readonly CheckGroup[];
}) {
  return (
    <details class="effect" open={weight >= SHOWN_FROM}>
      <summary>
        <h4>{CHECKS.effects[weight]}:</h4> {CHECKS.causes(groups.length)}
      </summary>
      <ul class="causes">
        {groups.map((group) => (
          <li key={`${group.kind} ${group.cause}`}>
            <Cause session={session} group={group} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function WriteChecks({ session }: { readonly session: Session }) {
  const write = (): Promise<void> =>
    writeSheet(session, CHECKS.writing, CHECKS.sheetName, (name, { signal }) =>
      session.computing.ask('checks', { name, tab: session.where.value?.sheet ?? '' }, signal),
    );
  return (
    <div class="action">
      <button type="button" class="secondary" aria-describedby="checksHint" onClick={() => void write()}>
        {CHECKS.write}
      </button>
      <small id="checksHint">{CHECKS.writeHint}</small>
    </div>
  );
}

type OfGroup = { readonly session: Session; readonly group: CheckGroup };

function Cause({ session, group }: OfGroup) {
  const { kind, count, ifNothing } = group;
  const about = CHECKS.about(group);
  return (
    <details class="cause">
      <summary>
        <strong>{kind}</strong>
        {about !== '' && <span>: {about}</span>}, <span class="count">{CHECKS.count(count)}</span>
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
    <fieldset class="decisions">
      <legend>{CHECKS.decide}</legend>
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
    </fieldset>
  );
}
