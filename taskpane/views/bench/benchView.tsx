import './bench.css';
import { problemText } from '../../../src/basics/problemText.ts';
import { useEffect, useRef } from 'preact/hooks';
import { benchTest } from '../../../src/cranking/benchTest.ts';
import type { BenchQuestion } from '../../../src/cranking/benchEntry.ts';
import type { Caution } from '../../../src/cranking/cautions.ts';
import { doneBefore, nextBattery } from '../../actions/bench.ts';
import { entryOf } from '../../bench/benchForm.ts';
import type { Session } from '../../session.ts';
import { VIEW_NAMES } from '../../text.ts';
import { Answer } from './answer.tsx';
import { CautionList } from './cautionList.tsx';
import { Charge } from './charge.tsx';
import { Readings } from './fields.tsx';
import { Identity } from './identity.tsx';
import { moveOn, moveToStart } from './moveOn.ts';
import { Question } from './question.tsx';
import { BENCH } from './text.ts';

/** One battery on the bench, in the order of the work. */
export function BenchView({ session }: { readonly session: Session }) {
  const { bench } = session;
  const work = useRef<HTMLDivElement>(null);
  const entry = entryOf(bench.form.value, bench.found.value, doneBefore(bench));
  const test = entry.ok ? benchTest(entry.value) : entry;
  const asksFrost = test.ok && test.value.asksFrost;
  useEffect(() => moveToStart(work.current), []);
  const next = (): void => {
    nextBattery(session);
    moveToStart(work.current);
  };
  return (
    <div class="bench" ref={work} onKeyDown={enterMovesOn}>
      <h2>{VIEW_NAMES.bench}</h2>
      <p>{BENCH.about}</p>
      <Step session={session} heading={BENCH.look} asks={['case', 'posts', 'heat']} cautions={['acid']} />
      <Step
        session={session}
        heading={BENCH.alone}
        asks={['alone']}
        cautions={['groundCable', 'shortCircuit', 'lifting']}
      />
      <section class="step">
        <h3>{BENCH.readings}</h3>
        <Identity session={session} />
        <CautionList cautions={['loadTest']} />
        <Readings bench={bench} />
      </section>
      {asksFrost && <Step session={session} heading={BENCH.frost} asks={['frost']} cautions={['frozen']} />}
      <section class="step">
        <h3>{BENCH.answer}</h3>
        {!test.ok && <p class="wrong">{problemText(test.problem)}</p>}
        {test.ok && test.value.answer === undefined && <p>{BENCH.open}</p>}
        {test.ok && entry.ok && test.value.answer !== undefined && (
          <Answer session={session} entry={entry.value} found={test.value.answer} />
        )}
        <button type="button" data-stop class="secondary" onClick={next}>
          {BENCH.next}
        </button>
      </section>
      <Charge session={session} />
      <p>{BENCH.count(bench.recorded.value.tests, bench.recorded.value.charges)}</p>
    </div>
  );
}

function Step({
  session,
  heading,
  asks,
  cautions,
}: {
  readonly session: Session;
  readonly heading: string;
  readonly asks: readonly BenchQuestion[];
  readonly cautions: readonly Caution[];
}) {
  return (
    <section class="step">
      <h3>{heading}</h3>
      <CautionList cautions={cautions} />
      {asks.map((ask) => (
        <Question key={ask} bench={session.bench} ask={ask} />
      ))}
    </section>
  );
}

/** Enter ends a field; buttons keep it for themselves, and a question that is open stays. */
function enterMovesOn(event: KeyboardEvent): void {
  const target = event.target as HTMLElement;
  if (event.key !== 'Enter' || target.tagName === 'BUTTON' || target.tagName === 'SUMMARY') return;
  event.preventDefault();
  if (target instanceof HTMLInputElement && target.type === 'radio') {
    if (target.checked) moveOn(target);
    return;
  }
  // What was typed counts as finished: a scanner ends with Enter and never leaves the field.
  target.dispatchEvent(new Event('change', { bubbles: true }));
  moveOn(target);
}
