import type { Outcome } from '../../../src/basics/outcome.ts';
import { problemText } from '../../../src/basics/problemText.ts';
import type { BenchEntry } from '../../../src/cranking/benchEntry.ts';
import { BENCH_QUESTIONS } from '../../../src/cranking/benchEntry.ts';
import type { BenchTest } from '../../../src/cranking/benchTest.ts';
import type { Session } from '../../session.ts';
import { Answer } from './answer.tsx';
import { BENCH } from '../../text/benchText.ts';

/** The answer where it is reached, else why not. */
export function AnswerPart({
  session,
  entry,
  test,
}: {
  readonly session: Session;
  readonly entry: Outcome<BenchEntry>;
  readonly test: Outcome<BenchTest>;
}) {
  if (session.bench.isLooking.value) return <p>{BENCH.looking}</p>;
  if (!entry.ok) return <NotYet isWrong lines={[problemText(entry.problem)]} />;
  if (!test.ok) return <NotYet isWrong lines={[problemText(test.problem)]} />;
  const { answer, asks } = test.value;
  if (answer !== undefined) return <Answer session={session} entry={entry.value} found={answer} />;
  const open = asks.map((ask) => BENCH_QUESTIONS[ask]);
  return <NotYet lines={open.length > 0 ? [BENCH.open, ...open] : [BENCH.nothingRead]} />;
}

/** Why there is no answer; the work stops here, so that Enter does not go past a battery that was not judged. */
function NotYet({
  lines,
  isWrong = false,
}: {
  readonly lines: readonly string[];
  readonly isWrong?: boolean;
}) {
  return (
    <div class={isWrong ? 'notYet wrong' : 'notYet'} data-stop tabIndex={-1}>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}
