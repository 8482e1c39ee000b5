import './bench.css';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { benchTest } from '../../../src/cranking/benchTest.ts';
import type { BenchEntry, BenchQuestion } from '../../../src/cranking/benchEntry.ts';
import type { Caution } from '../../../src/cranking/cautions.ts';
import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer } from '../../../src/basics/outcome.ts';
import { nextBattery } from '../../actions/bench.ts';
import { entryOf } from '../../bench/benchForm.ts';
import type { BenchState } from '../../bench/benchState.ts';
import { doneBefore } from '../../bench/benchState.ts';
import { firstClick } from '../../parts/firstClick.ts';
import { ViewHelp } from '../../parts/viewHelp.tsx';
import type { Session } from '../../session.ts';
import { VIEW_NAMES } from '../../text/paneText.ts';
import { AnswerPart } from './answerPart.tsx';
import { CautionList } from './cautionList.tsx';
import { Charge } from './charge.tsx';
import { Readings, Tested } from './fields.tsx';
import { guardKeptRecords } from './guardKeptRecords.ts';
import { Identity } from './identity.tsx';
import { KeptRecords } from './keptRecords.tsx';
import { moveOn, moveToStart } from './moveOn.ts';
import { Question } from './question.tsx';
import { RecordTestButton } from './recordTestButton.tsx';
import { BENCH } from '../../text/benchText.ts';

/** One battery on the bench, in the order of the work. What ends it early takes the later steps away. */
export function BenchView({ session }: { readonly session: Session }) {
  const { bench } = session;
  const work = useRef<HTMLDivElement>(null);
  useEffect(() => {
    moveToStart(work.current);
    guardKeptRecords(session);
  }, []);
  const next = async (button: HTMLElement): Promise<void> => {
    if (await nextBattery(session)) moveToStart(work.current);
    else button.focus();
  };
  const { case: cracked, posts, heat, alone, frost } = bench.form.value.answers;
  const endedByLook = [cracked, posts, heat].includes('yes');
  const isRead = !endedByLook && alone !== 'no';
  const entry = entryNow(bench);
  const test = entry.ok ? benchTest(entry.value) : entry;
  const found = test.ok ? test.value.answer : undefined;
  const asksFrost = isRead && (frost !== undefined || (test.ok && test.value.asksFrost));
  return (
    <div class="bench" ref={work} onKeyDownCapture={passOverHeldKeys} onKeyDown={enterMovesOn}>
      <h2>{VIEW_NAMES.bench}</h2>
      <ViewHelp of="bench" />
      <Step session={session} heading={BENCH.look} asks={['case', 'posts', 'heat']} cautions={['acid']}>
        <LastLine bench={bench} />
      </Step>
      {!endedByLook && (
        <Step
          session={session}
          heading={BENCH.alone}
          asks={['alone']}
          cautions={['groundCable', 'shortCircuit', 'lifting']}
        />
      )}
      <section class="step">
        <h3>{isRead ? BENCH.readings : BENCH.which}</h3>
        <Identity session={session} />
        {isRead && <CautionList cautions={['loadTest']} />}
        {isRead && <Readings bench={bench} />}
        <Tested bench={bench} />
      </section>
      {asksFrost && <Step session={session} heading={BENCH.frost} asks={['frost']} cautions={['frozen']} />}
      <section class="step">
        <h3>{BENCH.answer}</h3>
        <AnswerPart session={session} entry={entry} test={test} />
        <div class="answers">
          {(found !== undefined || bench.isLooking.value) && (
            <RecordTestButton session={session} entry={entry.ok ? entry.value : undefined} found={found} />
          )}
          <NextButton onPress={next} />
        </div>
      </section>
      <Charge session={session} />
      <p>{BENCH.count(bench.recorded.value.tests, bench.recorded.value.charges)}</p>
      <KeptRecords session={session} />
    </div>
  );
}

function NextButton({ onPress }: { readonly onPress: (button: HTMLElement) => Promise<void> }) {
  const button = useRef<HTMLButtonElement>(null);
  return (
    <button
      type="button"
      data-stop
      class="next secondary"
      ref={button}
      onClick={firstClick(() => void onPress(button.current!))}
    >
      {BENCH.next}
    </button>
  );
}

/** What is to be chalked on the last battery, where its answer has gone and no other is named yet; beside the focus. */
function LastLine({ bench }: { readonly bench: BenchState }) {
  const last = bench.last.value;
  if (last === undefined || bench.onRecord.value !== undefined) return null;
  return (
    <p class="caseLine">
      <strong>{BENCH.last(last.serial)}:</strong> <code>{last.line}</code>
    </p>
  );
}

/** What is judged: the fields as they are, or what was put on record while they have not been touched since. */
function entryNow(bench: BenchState): Outcome<BenchEntry> {
  const { onRecord, isRecorded, form, found } = bench;
  if (isRecorded.value && onRecord.value !== undefined) return answer(onRecord.value.entry);
  return entryOf(form.value, found.value, doneBefore(bench));
}

function Step({
  session,
  heading,
  asks,
  cautions,
  children,
}: {
  readonly session: Session;
  readonly heading: string;
  readonly asks: readonly BenchQuestion[];
  readonly cautions: readonly Caution[];
  readonly children?: ComponentChildren;
}) {
  return (
    <section class="step">
      <h3>{heading}</h3>
      <CautionList cautions={cautions} />
      {children}
      {asks.map((ask) => (
        <Question key={ask} bench={session.bench} ask={ask} />
      ))}
    </section>
  );
}

/** A key that is held down answers, records and moves on once only. */
function passOverHeldKeys(event: KeyboardEvent): void {
  const isText = event.target instanceof HTMLInputElement && event.target.type === 'text';
  if (!event.repeat || (event.key !== 'Enter' && (isText || !/^[ yn]$/i.test(event.key)))) return;
  event.preventDefault();
  event.stopPropagation();
}

/** Enter ends a field and moves on; buttons keep it for themselves, and a question that is open stays. */
function enterMovesOn(event: KeyboardEvent): void {
  const target = event.target as HTMLElement;
  if (event.key !== 'Enter' || target.closest('[data-stop], .passed') === null) return;
  if (target.tagName === 'BUTTON') return;
  event.preventDefault();
  const isOpen = target instanceof HTMLInputElement && target.type === 'radio' && !isAnswered(target);
  if (!isOpen) moveOn(target);
}

const isAnswered = (radio: HTMLInputElement): boolean =>
  radio.closest('fieldset')?.querySelector('input:checked') !== null;
