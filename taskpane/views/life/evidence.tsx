import type { OddGroup } from '../../../src/life/standsOut.ts';
import type { PastTrial } from '../../../src/planning/ownPast.ts';
import type { DateShown } from '../../../src/report/sheet.ts';
import { pastTold } from '../../../src/report/methodSentences.ts';
import { ODD, PAST } from '../../text/lifeText.ts';

/** The method tried on the fleet's own past, shown good or bad. */
export function OwnPast({
  trials,
  dateShown,
}: {
  readonly trials: readonly PastTrial[];
  readonly dateShown: DateShown;
}) {
  return (
    <section aria-labelledby="ownPast">
      <h3 id="ownPast">{PAST.heading}</h3>
      <p>{PAST.hint}</p>
      {trials.length === 0 && <p>{PAST.young}</p>}
      <ul>
        {trials.map((trial) => (
          <li key={trial.years}>{pastTold(trial, dateShown)}</li>
        ))}
      </ul>
    </section>
  );
}

/** Groups with more early failures than chance explains, each with what to do. */
export function StandsOut({ found }: { readonly found: readonly OddGroup[] }) {
  return (
    <section aria-labelledby="standsOut">
      <h3 id="standsOut">{ODD.heading}</h3>
      <p>{ODD.hint}</p>
      {found.length === 0 && <p>{ODD.none}</p>}
      <ul>
        {found.map(({ kind, name, failures, lives, expected }) => (
          <li key={`${kind} ${name}`}>
            <strong>{ODD.found(kind, name, failures, lives, expected.toFixed(1))}</strong> {ODD.todo[kind]}
          </li>
        ))}
      </ul>
    </section>
  );
}
