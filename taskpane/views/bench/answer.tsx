import type { BenchAnswer } from '../../../src/cranking/benchAnswer.ts';
import type { BenchEntry } from '../../../src/cranking/benchEntry.ts';
import { caseLineOf } from '../../bench/benchState.ts';
import type { Session } from '../../session.ts';
import { CautionList } from './cautionList.tsx';
import { MatesOf } from './mates.tsx';
import { BENCH, FACTS } from '../../text/benchText.ts';

const perCent = (share: number): string => `${Math.round(100 * share)} %`;

/** The answer: a word with its reason and its next step, what the acid says, its set, and the line for the case. */
export function Answer({
  session,
  entry,
  found,
}: {
  readonly session: Session;
  readonly entry: BenchEntry;
  readonly found: BenchAnswer;
}) {
  const { word, reason, nextStep, charge, frostAtPlace, freezesAt, notes, cautions } = found;
  const known = session.bench.found.value;
  const line = caseLineOf(session.bench, session.asOf.value, entry, found);
  return (
    <>
      <div role="status" class="verdict">
        <p class="word">{word}</p>
        <p>{reason}.</p>
        <p>
          <strong>{FACTS.next}:</strong> {nextStep}.
        </p>
        {charge !== undefined && (
          <p>
            {FACTS.charge}: {perCent(charge.best)} ({perCent(charge.low)} to {perCent(charge.high)}).
          </p>
        )}
        {frostAtPlace !== undefined && <p>{frostAtPlace}.</p>}
        {frostAtPlace === undefined && freezesAt !== undefined && (
          <p>
            {FACTS.freezes}: {Math.round(freezesAt)} C.
          </p>
        )}
        {notes.map((note) => (
          <p key={note}>{note}.</p>
        ))}
      </div>
      <CautionList cautions={cautions} />
      {known !== undefined && <MatesOf found={known} isCondemned={word === 'Condemned'} />}
      <p class="caseLine">
        <strong>{BENCH.caseLine}:</strong> <code>{line}</code>
      </p>
    </>
  );
}
